import { createContext } from 'preact';

/** The key that opened the report, with which its pictures are fetched too. `ofSite`: it is of a site. */
export const ReportKey = createContext<{ readonly token: string; readonly ofSite: boolean }>({
  token: '',
  ofSite: false,
});
