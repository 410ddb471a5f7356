import type { Log } from '../../src/model/entry.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { PairId } from '../../src/model/pair-plan.ts';
import { JobRecord } from '../../src/protocol/jobs.ts';
import { isSiteLog, jobReport, SiteReport } from '../../src/report/build.ts';
import type { Page } from '../../src/report/report.ts';
import { ApiError, ask } from '../browser/requests.ts';
import { ZONE } from '../browser/times.ts';

/** What a token opens, and which of it is wanted. */
export interface Wanted {
  readonly token: string;
  /** A visit of the token's site: its pair alone. */
  readonly job?: JobId;
}

export interface LoadedReport {
  readonly pages: readonly Page[];
  /** Undefined for a single job. */
  readonly pairs?: readonly PairId[];
}

/** Reads all logs of a report and builds its pages here. `tell`: how far it is. @throws {ApiError} */
export async function loadReport(
  { token, job }: Wanted,
  tell: (done: number, total: number) => void,
): Promise<LoadedReport> {
  const own = await readLog('/api/record', token);
  if (!isSiteLog(own)) return { pages: jobReport(own, ZONE) };
  const all = new SiteReport(own, { zone: ZONE, at: Date.now() });
  const only =
    job === undefined ? undefined : all.pairs.find(({ visits }) => visits.some((v) => v.job === job));
  if (job !== undefined && !only) throw new ApiError('There is no such visit on this site.');
  const report = only ? new SiteReport(own, { zone: ZONE, at: Date.now(), only: [only.plan.id] }) : all;
  for (const [index, pair] of report.pairs.entries()) {
    const visits: Log[] = [];
    for (const visit of pair.visits) {
      visits.push(await readLog(`/api/site/record?job=${encodeURIComponent(visit.job)}`, token));
    }
    report.add(pair, visits);
    tell(index + 1, report.pairs.length);
  }
  return { pages: report.pages(), pairs: report.pairs.map(({ plan }) => plan.id) };
}

/** As it was sent: a field this page does not know is covered by the hash, and must not be dropped. */
async function readLog(path: string, token: string): Promise<Log> {
  const raw: unknown = await (await ask(path, { token })).json().catch(() => undefined);
  if (!JobRecord.safeParse(raw).success) {
    throw new ApiError('This page cannot read what the server sends. Load the page again.');
  }
  return raw as Log;
}
