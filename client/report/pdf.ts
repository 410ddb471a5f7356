import type { PairId } from '../../src/model/pair-plan.ts';
import { ReportBegun, ReportProgress } from '../../src/protocol/report.ts';
import { ask, request } from '../browser/requests.ts';
import { ownZone } from '../browser/times.ts';

const LOOK_EVERY_MS = 500;

/** The PDF of a single job. @throws {ApiError} */
export const jobPdf = async (token: string): Promise<Blob> =>
  (await ask(`/api/report.pdf?zone=${encodeURIComponent(ownZone())}`, { token })).blob();

/** The PDF of a site's pairs. `onProgress` gets the server's progress. @throws {ApiError} */
export async function sitePdf(
  token: string,
  pairs: readonly PairId[],
  onProgress: (progress: ReportProgress) => void,
): Promise<Blob> {
  const body = { ...(pairs.length > 0 && { pairs }), zone: ownZone() };
  const { report } = await request('/api/site/report', ReportBegun, { token, body });
  for (;;) {
    const progress = await request(`/api/site/report?id=${report}`, ReportProgress, { token });
    onProgress(progress);
    if (progress.ready) break;
    await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
  }
  return (await ask(`/api/site/report.pdf?id=${report}`, { token })).blob();
}
