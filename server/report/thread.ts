import type { Worker } from 'node:worker_threads';
import { startThread } from '../process/thread.ts';
import type { ReadLog, ReadPicture } from './make.ts';
import type { FromThread, ToThread, Want, Wanted } from './worker.ts';

const PROGRAM = { source: 'server/report/worker.ts', built: 'report-worker.js' };

/** A report that needs more ends with an error, and not the server. */
const MOST_MEGABYTES = 2_048;
/** Printing makes much that lives short: with the usual 48 MB, one part in seven of the time goes into collecting it. */
const YOUNG_MEGABYTES = 192;
/** Without work for so long, the thread ends and gives its memory back, ms. */
const IDLE_MS = 60_000;

/** How a report under way reads what it needs and says how far it is. */
interface Ways {
  readLog: ReadLog;
  pictureOf: ReadPicture;
  tell?(done: number): void;
}

/** The report under way. */
interface UnderWay {
  readonly ways: Ways;
  resolve(file: Buffer): void;
  reject(error: Error): void;
}

/**
 * Makes reports in a thread of its own, so that crews do not wait for it: printing takes the processor for seconds. Give
 * it one report at a time. Begun when it is first needed, and again after it broke down.
 */
export class ReportThread {
  private worker: Worker | undefined;
  private current: UnderWay | undefined;
  private idle: NodeJS.Timeout | undefined;
  private closed = false;

  /** Rejects when the report cannot be made, or not within this time. */
  async make(wanted: Wanted, withinMs: number, ways: Ways): Promise<Buffer> {
    if (this.closed) throw new Error('the server is stopping');
    clearTimeout(this.idle);
    this.worker ??= this.start();
    const { worker } = this;
    let late: NodeJS.Timeout | undefined;
    try {
      return await new Promise<Buffer>((resolve, reject) => {
        this.current = { ways, resolve, reject };
        late = setTimeout(
          () => this.breakDown(new Error(`a report took more than ${withinMs / 1000} s`)),
          withinMs,
        );
        post(worker, { make: wanted });
      });
    } finally {
      clearTimeout(late);
      this.current = undefined;
      this.idle = setTimeout(() => this.breakDown(new Error('nothing is to be made')), IDLE_MS).unref();
    }
  }

  private start(): Worker {
    const begun = startThread(PROGRAM, {
      resourceLimits: { maxOldGenerationSizeMb: MOST_MEGABYTES, maxYoungGenerationSizeMb: YOUNG_MEGABYTES },
    });
    begun.on('message', (message: FromThread) => this.take(begun, message));
    begun.on('error', (error) => {
      if (this.worker === begun)
        this.breakDown(new Error('the thread of reports broke down', { cause: error }));
    });
    begun.on('exit', () => {
      if (this.worker === begun) this.breakDown(new Error('the thread of reports has ended'));
    });
    begun.unref();
    return begun;
  }

  private take(worker: Worker, message: FromThread): void {
    const { current } = this;
    if (!current || this.worker !== worker) return;
    if ('file' in message) current.resolve(Buffer.from(message.file));
    else if ('failed' in message) current.reject(new Error(message.failed));
    else if ('done' in message) current.ways.tell?.(message.done);
    else void give(worker, message.want, current.ways);
  }

  /** Ends the thread, which may be at work for ever, and the report with it. */
  private breakDown(why: Error): void {
    clearTimeout(this.idle);
    const { worker } = this;
    this.worker = undefined;
    this.current?.reject(why);
    void worker?.terminate();
  }

  async close(): Promise<void> {
    this.closed = true;
    this.breakDown(new Error('the server is stopping'));
  }
}

const post = (worker: Worker, message: ToThread): void => worker.postMessage(message);

async function give(worker: Worker, want: Want, { readLog, pictureOf }: Ways): Promise<void> {
  try {
    if ('log' in want) post(worker, { log: await readLog(want.log) });
    else post(worker, { picture: await pictureOf(want.picture) });
  } catch (error) {
    post(worker, { unread: String(error) });
  }
}
