import { parentPort } from 'node:worker_threads';
import type { CheckedLog } from '../../src/log/fault.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { ReportOptions } from '../../src/report/build.ts';
import type { ReportPhoto } from '../../src/report/report.ts';
import { jobPdf, sitePdf } from './make.ts';

/** What a report is made from. */
export type Wanted =
  | { job: CheckedLog; zone: string; at: number }
  | { site: CheckedLog; options: ReportOptions };

/** A log or a picture that is needed on the way. */
export type Want = { log: JobId } | { picture: ReportPhoto };

/** To this thread: make a report, one at a time, or what it asked for. */
export type ToThread =
  | { make: Wanted }
  | { log: CheckedLog }
  | { picture: Uint8Array | undefined }
  | { unread: string };

/** From this thread. `done`: so many pairs. */
export type FromThread = { want: Want } | { done: number } | { file: Uint8Array } | { failed: string };

if (!parentPort) throw new Error('The report worker runs as a worker thread only.');
const port = parentPort;
const tell = (message: FromThread): void => port.postMessage(message);

type Answer = Exclude<ToThread, { make: Wanted }>;
let answered: (answer: Answer) => void = () => {};

const ask = (want: Want): Promise<Answer> =>
  new Promise((resolve, reject) => {
    answered = (answer) => ('unread' in answer ? reject(new Error(answer.unread)) : resolve(answer));
    tell({ want });
  });

async function readLog(job: JobId): Promise<CheckedLog> {
  const answer = await ask({ log: job });
  if (!('log' in answer)) throw new Error('another log was asked for');
  return answer.log;
}

async function pictureOf(photo: ReportPhoto): Promise<Uint8Array | undefined> {
  const answer = await ask({ picture: photo });
  if (!('picture' in answer)) throw new Error('another picture was asked for');
  return answer.picture;
}

async function make(wanted: Wanted): Promise<void> {
  try {
    const file =
      'site' in wanted
        ? await sitePdf(wanted.site, wanted.options, readLog, pictureOf).make((done) => tell({ done }))
        : await jobPdf(wanted.job, wanted.zone, wanted.at, pictureOf);
    tell({ file });
  } catch (error) {
    tell({ failed: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
}

port.on('message', (message: ToThread) => {
  if ('make' in message) void make(message.make);
  else answered(message);
});
