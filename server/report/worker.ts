import { parentPort } from 'node:worker_threads';
import type { CheckedLog } from '../../src/log/fault.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { ReportOptions } from '../../src/report/build.ts';
import { jobPdf, sitePdf } from './make.ts';

/** What a report is made from. */
export type Wanted =
  | { job: CheckedLog; zone: string; at: number }
  | { site: CheckedLog; options: ReportOptions };

/** To this thread: make a report, one at a time, or the log that it asked for. */
export type ToThread = { make: Wanted } | { log: CheckedLog } | { unread: string };

/** From this thread. `want`: this log; `done`: so many pairs. */
export type FromThread = { want: JobId } | { done: number } | { file: Uint8Array } | { failed: string };

if (!parentPort) throw new Error('The report worker runs as a worker thread only.');
const port = parentPort;
const tell = (message: FromThread): void => port.postMessage(message);

let answered: (answer: Exclude<ToThread, { make: Wanted }>) => void = () => {};

const ask = (job: JobId): Promise<CheckedLog> =>
  new Promise((resolve, reject) => {
    answered = (answer) => ('log' in answer ? resolve(answer.log) : reject(new Error(answer.unread)));
    tell({ want: job });
  });

async function make(wanted: Wanted): Promise<void> {
  try {
    const file =
      'site' in wanted
        ? await sitePdf(wanted.site, wanted.options, ask).make((done) => tell({ done }))
        : await jobPdf(wanted.job, wanted.zone, wanted.at);
    tell({ file });
  } catch (error) {
    tell({ failed: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
}

port.on('message', (message: ToThread) => {
  if ('make' in message) void make(message.make);
  else answered(message);
});
