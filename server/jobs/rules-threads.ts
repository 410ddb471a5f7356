import { createHash } from 'node:crypto';
import type { Worker } from 'node:worker_threads';
import type { Input } from '../../src/conversation/input.ts';
import type { JobId } from '../../src/model/ids.ts';
import { flat } from '../../src/visit/flat-state.ts';
import type { JobState } from '../../src/visit/state.ts';
import { startThread } from '../process/thread.ts';
import { type Decision, type Rules, RulesFailed } from './rules.ts';
import type { Asked, FromRules, ToRules } from './rules-messages.ts';

const PROGRAM = { source: 'server/jobs/rules-worker.ts', built: 'rules-worker.js' };
/** Most of what a decision makes lives short. MB; what is given here is used when it is needed. */
const YOUNG_MB = 96;

/** What a thread knows of a job: the state it decided from last, and whether that decision is stored since. */
interface Known {
  readonly from: JobState;
  readonly after?: JobState;
}

interface Waiting {
  resolve(decision: Decision): void;
  reject(error: Error): void;
}

/** The rules in threads of their own: a hard decision delays the jobs of its thread, and no socket. A job stays with its thread. */
export class RulesInThreads implements Rules {
  private readonly threads: readonly RulesThread[];

  constructor(count: number) {
    this.threads = Array.from({ length: count }, () => new RulesThread());
  }

  respond(job: JobId, state: JobState, input: Input, now: number): Promise<Decision> {
    return this.threadOf(job).respond(job, state, input, now);
  }

  stored(job: JobId, state: JobState): void {
    this.threadOf(job).stored(job, state);
  }

  forget(job: JobId): void {
    this.threadOf(job).forget(job);
  }

  async close(): Promise<void> {
    await Promise.all(this.threads.map((thread) => thread.close()));
  }

  private threadOf(job: JobId): RulesThread {
    const place = createHash('sha256').update(job).digest().readUInt32BE(0) % this.threads.length;
    return this.threads[place] as RulesThread;
  }
}

/** Started when it is first asked; started anew after it has failed. */
class RulesThread {
  private worker: Worker | undefined;
  private readonly waiting = new Map<number, Waiting>();
  private readonly known = new Map<JobId, Known>();
  private asks: Asked[] = [];
  private forgotten: JobId[] = [];
  private count = 0;

  respond(job: JobId, state: JobState, input: Input, now: number): Promise<Decision> {
    const known = this.known.get(job);
    const from = known?.after === state ? 'decided' : known?.from === state ? 'same' : flat(state);
    this.known.set(job, { from: state });
    const id = this.count++;
    if (this.asks.length === 0) setImmediate(() => this.send());
    this.asks.push({ id, job, input, now, from });
    return new Promise((resolve, reject) => this.waiting.set(id, { resolve, reject }));
  }

  stored(job: JobId, state: JobState): void {
    const known = this.known.get(job);
    if (known) this.known.set(job, { ...known, after: state });
  }

  forget(job: JobId): void {
    if (this.known.delete(job)) this.forgotten.push(job);
  }

  async close(): Promise<void> {
    await this.worker?.terminate();
  }

  /** What came in this turn of the event loop goes together. */
  private send(): void {
    this.worker ??= this.start();
    this.worker.postMessage({ asks: this.asks, forget: this.forgotten } satisfies ToRules);
    this.asks = [];
    this.forgotten = [];
  }

  private start(): Worker {
    const worker = startThread(PROGRAM, { resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB } });
    worker.on('message', (answer: FromRules) => {
      const waiting = this.waiting.get(answer.id);
      this.waiting.delete(answer.id);
      if ('decision' in answer) waiting?.resolve(answer.decision);
      else waiting?.reject(new RulesFailed(answer.failed));
    });
    const ended = (error: Error) => {
      if (this.worker !== worker) return;
      this.worker = undefined;
      this.known.clear();
      for (const { reject } of this.waiting.values()) reject(error);
      this.waiting.clear();
    };
    worker.on('error', ended);
    worker.on('exit', () => ended(new Error('the thread of the rules has ended')));
    return worker;
  }
}
