import type { JobId } from '../../src/model/ids.ts';
import { follow, linkTo } from '../browser/route.ts';

/** To the printable report of what a token opens: a job, or a whole site; with `job`, one pair of it. */
export const ReportButton = ({ token, job }: { token: string; job?: JobId }) => (
  <a class="button" href={linkTo('report', { token, job })} onClick={follow}>
    Report
  </a>
);
