import type { JobId } from '../../src/model/ids.ts';
import { follow } from '../browser/route.ts';

/** Leads to the printable report of what a token opens: a job, a whole site, or with `job` one pair of it. */
export const ReportButton = ({ token, job }: { token: string; job?: JobId }) => (
  <a class="button" href={reportLink(token, job)} onClick={follow}>
    Report
  </a>
);

export const reportLink = (token: string, job?: JobId): string =>
  `/report#${token}${job === undefined ? '' : `/${job}`}`;
