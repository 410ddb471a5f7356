/** A page that stands where no page of ours does. */
export interface Notice {
  readonly title: string;
  readonly text: string;
  /** Of the link to the first page, where that helps. */
  readonly start?: string;
}

export const NOT_BUILT: Notice = {
  title: 'The pages are not built yet',
  text: 'Run "npm run build" on the server, then load this page again.',
};

export const NO_PAGE: Notice = {
  title: 'There is nothing here',
  text: 'Scan the code again, or begin at the start.',
  start: 'Go to the start',
};

export const UNKNOWN_HOST: Notice = {
  title: 'This server does not know that name',
  text: 'Open it by an address that it printed when it started. If the name in the address bar is right, whoever runs the server can add it with --name.',
};
