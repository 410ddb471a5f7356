import type { Worker } from 'node:worker_threads';
import type { Enclosure } from '../../src/log/enclosure.ts';
import type { ChainFault } from '../../src/log/fault.ts';
import type { SignedHead } from '../../src/log/signed-head.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Head, JobId, MessageId, Seq } from '../../src/model/ids.ts';
import { startThread } from '../process/thread.ts';
import { rowOf } from './audit.ts';
import type { KeptRead, ReadChange } from './reads.ts';
import type { SqliteStore, Warn, Write, WriteResult } from './sqlite.ts';
import {
  type Appended,
  type CodeGrant,
  type Digest,
  type Enclosing,
  type GivenPass,
  type HeldPass,
  type KeptStamp,
  type KeptSummary,
  type KeyChange,
  type LoggedHead,
  type NamedEntry,
  type Pass,
  type Store,
  StoreFailure,
} from './store.ts';
import type { Answer, Asked, Call, FromStore } from './store-worker.ts';

const PROGRAM = { source: 'server/store/store-worker.ts', built: 'store-worker.js' };

type WithoutId<C> = C extends unknown ? Omit<C, 'id'> : never;

interface Waiting {
  resolve(value: unknown): void;
  reject(error: Error): void;
}

/**
 * The store of a data folder in a thread of its own, so that nobody's socket waits for the disk. As `openDataFolder`; rejects
 * with `StoreFailure` where that throws.
 */
export function openInThread(folder: string, warn: Warn): Promise<ThreadedStore> {
  const worker = startThread(PROGRAM, { workerData: folder });
  return new Promise((resolve, reject) => {
    const store = new ThreadedStore(worker);
    worker.on('message', (message: FromStore) => {
      if ('answers' in message) store.take(message.answers);
      else if ('warn' in message) warn(message.warn);
      else if ('cannot' in message) reject(new StoreFailure(message.cannot));
      else resolve(store);
    });
    worker.on('error', (error) => {
      reject(error);
      store.breakDown(error);
    });
    worker.on('exit', () => store.breakDown(new Error('its thread has ended')));
  });
}

export class ThreadedStore implements Store {
  readonly name = 'sqlite';
  private readonly waiting = new Map<number, Waiting>();
  /** Calls of this turn of the event loop: they go to the thread together. */
  private leaving: Call[] = [];
  private calls = 0;
  private broken: StoreFailure | undefined;
  private closing: Promise<void> | undefined;

  constructor(private readonly worker: Worker) {}

  append(job: JobId, entries: readonly Entry[], keys?: KeyChange, enclosing?: Enclosing): Promise<Appended> {
    return this.write({ to: 'log', job, rows: entries.map(rowOf), keys, enclosing });
  }

  keepSummary(job: JobId, kept: KeptSummary): Promise<void> {
    return this.write({ to: 'summaries', job, kept });
  }

  addSignedHeads(heads: readonly LoggedHead[]): Promise<void> {
    return this.write({ to: 'signed heads', heads });
  }

  addStamp(stamp: KeptStamp): Promise<void> {
    return this.write({ to: 'stamps', stamp });
  }

  changeReads(change: ReadChange): Promise<void> {
    return this.write({ to: 'reads', change });
  }

  readsAfter(after: number, limit: number): Promise<KeptRead[]> {
    return this.ask('readsAfter', after, limit);
  }

  readsBefore(before: number, limit: number, log?: JobId): Promise<KeptRead[]> {
    return this.ask('readsBefore', before, limit, log);
  }

  readers(): Promise<string[]> {
    return this.ask('readers');
  }

  read(job: JobId, after: number, limit: number): Promise<Entry[]> {
    return this.ask('read', job, after, limit);
  }

  enclosure(job: JobId, seq: Seq): Promise<Enclosure | undefined> {
    return this.ask('enclosure', job, seq);
  }

  enclosed(): Promise<{ job: JobId; seq: Seq }[]> {
    return this.ask('enclosed');
  }

  named(): Promise<NamedEntry[]> {
    return this.ask('named');
  }

  head(job: JobId): Promise<Head> {
    return this.ask('head', job);
  }

  seqOf(job: JobId, ref: MessageId): Promise<Seq | undefined> {
    return this.ask('seqOf', job, ref);
  }

  audit(job: JobId): Promise<ChainFault | undefined> {
    return this.ask('audit', job);
  }

  jobs(): Promise<Head[]> {
    return this.ask('jobs');
  }

  logs(): Promise<JobId[]> {
    return this.ask('logs');
  }

  pass(token: Digest): Promise<Pass | undefined> {
    return this.ask('pass', token);
  }

  passes(job: JobId): Promise<HeldPass[]> {
    return this.ask('passes', job);
  }

  everyPass(job: JobId): Promise<GivenPass[]> {
    return this.ask('everyPass', job);
  }

  grant(code: Digest, now: number): Promise<CodeGrant | undefined> {
    return this.ask('grant', code, now);
  }

  summary(job: JobId): Promise<KeptSummary | undefined> {
    return this.ask('summary', job);
  }

  signedHeads(after: number, limit: number): Promise<LoggedHead[]> {
    return this.ask('signedHeads', after, limit);
  }

  signedHeadsOf(job: JobId): Promise<(SignedHead & { number: number })[]> {
    return this.ask('signedHeadsOf', job);
  }

  stampOver(number: number): Promise<KeptStamp | undefined> {
    return this.ask('stampOver', number);
  }

  lastStamp(): Promise<KeptStamp | undefined> {
    return this.ask('lastStamp');
  }

  health(): Promise<void> {
    return this.ask('health');
  }

  /** Copies everything to a new file. What was acknowledged before is in it. Rejects with `StoreFailure`. */
  copyTo(file: string): Promise<void> {
    return this.ask('copyTo', file);
  }

  close(): Promise<void> {
    this.closing ??= this.ask('close').then(() => {
      this.broken = new StoreFailure('the database is closed');
    });
    return this.closing;
  }

  /** Answers of the thread. */
  take(answers: readonly Answer[]): void {
    for (const answer of answers) {
      const { resolve, reject } = this.waiting.get(answer.id) as Waiting;
      this.waiting.delete(answer.id);
      if ('value' in answer) resolve(answer.value);
      else reject(answer.ofStore ? new StoreFailure(answer.failed) : new Error(answer.failed));
    }
  }

  /** Nothing can be stored or read any more: what waits fails, and all that comes. */
  breakDown(why: Error): void {
    this.broken ??= new StoreFailure(`the database failed: ${why.message}`, { cause: why });
    for (const { reject } of this.waiting.values()) reject(this.broken);
    this.waiting.clear();
  }

  private write<W extends Write>(write: W): Promise<WriteResult<W>> {
    return this.call({ write }) as Promise<WriteResult<W>>;
  }

  private ask<M extends Asked>(ask: M, ...args: Parameters<SqliteStore[M]>): ReturnType<SqliteStore[M]> {
    return this.call({ ask, args }) as ReturnType<SqliteStore[M]>;
  }

  private call(what: WithoutId<Call>): Promise<unknown> {
    if (this.broken) return Promise.reject(this.broken);
    const id = this.calls++;
    if (this.leaving.length === 0) setImmediate(() => this.send());
    this.leaving.push({ id, ...what });
    return new Promise((resolve, reject) => this.waiting.set(id, { resolve, reject }));
  }

  private send(): void {
    const calls = this.leaving;
    this.leaving = [];
    this.worker.postMessage(calls);
  }
}
