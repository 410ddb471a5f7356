import { checked } from '../../src/log/chain.ts';
import type { CheckedLog } from '../../src/log/fault.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { PairId } from '../../src/model/pair-plan.ts';
import { NO_SUCH_VISIT } from '../../src/phrases/requests.ts';
import { ServerKey } from '../../src/protocol/heads.ts';
import { isSiteLog, jobReport, SiteReport } from '../../src/report/build.ts';
import type { Part } from '../../src/report/report.ts';
import { readLog } from '../browser/logs.ts';
import { ApiError, request } from '../browser/requests.ts';
import { ownZone } from '../browser/times.ts';

/** What a token opens, and which part of it to report. */
export interface Wanted {
  readonly token: string;
  /** A visit of the token's site: only its pair. */
  readonly job?: JobId;
}

export interface LoadedReport {
  readonly parts: readonly Part[];
  /** Undefined for a single job. */
  readonly pairs?: readonly PairId[];
}

/** Reads all logs of a report and builds its parts here. `onProgress`: logs read so far. @throws {ApiError} */
export async function loadReport(
  { token, job }: Wanted,
  onProgress: (progress: { done: number; total: number }) => void,
): Promise<LoadedReport> {
  const { fingerprint: key } = await request('/api/key', ServerKey);
  const { log } = await readLog('/api/record', token);
  const own = { ...checked(log), key };
  if (!isSiteLog(own)) return { parts: jobReport(own, ownZone()) };
  const all = new SiteReport(own, { zone: ownZone(), at: Date.now() });
  const only =
    job === undefined ? undefined : all.pairs.find(({ visits }) => visits.some((v) => v.job === job));
  if (job !== undefined && !only) throw new ApiError(NO_SUCH_VISIT);
  const report = only ? new SiteReport(own, { zone: ownZone(), at: Date.now(), only: [only.plan.id] }) : all;
  for (const [index, pair] of report.pairs.entries()) {
    const visits: CheckedLog[] = [];
    for (const visit of pair.visits) {
      const { log } = await readLog(`/api/site/record?job=${encodeURIComponent(visit.job)}`, token);
      visits.push({ ...checked(log), key });
    }
    report.add(pair, visits);
    onProgress({ done: index + 1, total: report.pairs.length });
  }
  return { parts: report.parts(), pairs: report.pairs.map(({ plan }) => plan.id) };
}
