import { RECORD_AT_SERVER } from '../../src/phrases/meeting.ts';
import { JobBrought } from '../../src/protocol/jobs.ts';
import { ApiError, ask, request } from '../browser/requests.ts';
import { browserStorage } from '../browser/storage.ts';
import { type JobHere, removeJobHere } from '../saved/jobs-here.ts';
import { knownJobs, rememberJob } from '../saved/known-jobs.ts';
import { savedSeat, saveSeat } from '../saved/saved-seats.ts';
import { closeLog, removeLog, reopenLog } from './log-store.ts';
import { endRoom } from './open-rooms.ts';

/**
 * Gives the log of a job to the server, and with it the job. Nothing comes to the log meanwhile. Where the answer is lost,
 * the server may have it: then it stays closed until it is brought again. @throws {ApiError} @throws {NotKept}
 */
export async function bringHere({ job, token, title }: JobHere): Promise<void> {
  // Where nobody answers, the job goes on here.
  await ask('/api/health');
  const entries = await closeLog(job);
  let watch: string;
  try {
    ({ watch } = await request('/api/jobs/brought', JobBrought, { body: { token, entries } }));
  } catch (error) {
    if (error instanceof ApiError && error.reason !== undefined) await reopenLog(job);
    throw error;
  }
  const seat = savedSeat(browserStorage, 'panel');
  if (seat?.job === job) saveSeat(browserStorage, { seat: 'panel', job, token, watch, title });
  const known = knownJobs(browserStorage).find((each) => each.job === job);
  rememberJob(browserStorage, { job, title, stand: known?.stand ?? 'open', seenAt: Date.now(), watch });
  removeJobHere(browserStorage, job);
  await endRoom(job, 'revoked', RECORD_AT_SERVER);
  await removeLog(job);
}
