import type { Logger } from 'pino';
import type { TreeHead } from '../../src/log/signed-head.ts';
import { type Stamping, stampText } from '../../src/log/time-stamp.ts';
import type { Clock } from '../process/clock.ts';
import type { Store } from '../store/store.ts';
import type { Telemetry } from '../telemetry/telemetry.ts';
import type { AskForStamp } from './ask.ts';

export interface StamperDeps {
  readonly store: Store;
  readonly clock: Clock;
  readonly log: Logger;
  readonly telemetry: Telemetry;
  readonly ask: AskForStamp;
  /** Where it is asked for, as people know it. */
  readonly from: string;
  /** What has changed is stamped at least this long after the stamp before, ms. */
  readonly everyMs: number;
}

/** A signature of a person is stamped at once, but for a stamp that is younger, ms. */
export const LEAST_GAP_MS = 60_000;
/** After a failure, ms; twice as long after each more, up to `everyMs` or an hour. */
export const RETRY_MS = 60_000;
const RETRY_MOST_MS = 60 * 60_000;
/** So far the two clocks may be apart before it is said, ms. Common practice, no source. */
const CLOCKS_APART_MS = 60_000;

/**
 * Has the head of the tree over all signed heads stamped by an authority when it has changed: each `everyMs`, and at each signature of
 * a person. Nobody waits for it. What it could not get it asks for again, later and later, and says since when.
 */
export class Stamper {
  /** The newest tree, as far as we were told. */
  private size = 0;
  private headNow: (() => TreeHead) | undefined;
  private stamped: { readonly size: number; readonly at?: number } = { size: 0 };
  private failing: { readonly since: number; readonly count: number } | undefined;
  private isHurried = false;
  private isUnderWay = false;
  /** When the last was asked for, by `performance.now`: a clock that jumps must not hold it up. */
  private askedAt = Number.NEGATIVE_INFINITY;
  private timer: NodeJS.Timeout | undefined;
  private readonly closing = new AbortController();
  private readonly begun: Promise<void>;

  constructor(private readonly deps: StamperDeps) {
    this.begun = this.begin();
    deps.telemetry.watchStamps(() => ({
      behind: Math.max(0, this.size - this.stamped.size),
      isFailing: this.failing !== undefined,
      lastAt: this.stamped.at,
    }));
  }

  /** The tree has `size` heads now. `atOnce`: a person has signed. */
  moved(size: number, head: () => TreeHead, atOnce: boolean): void {
    if (size < this.size) return;
    this.size = size;
    this.headNow = head;
    if (atOnce) this.isHurried = true;
    void this.begun.then(() => this.plan());
  }

  /** For people. */
  get state(): Stamping {
    const { from } = this.deps;
    return {
      from,
      ...(this.stamped.at !== undefined && { last: this.stamped.at }),
      ...(this.failing && { failingSince: this.failing.since }),
      isBehind: this.size > this.stamped.size,
    };
  }

  async close(): Promise<void> {
    this.closing.abort();
    clearTimeout(this.timer);
    await this.begun;
  }

  /** Never rejects. */
  private async begin(): Promise<void> {
    const { store, clock, log, everyMs } = this.deps;
    try {
      const last = await store.lastStamp();
      if (!last) return;
      this.stamped = { size: last.size, at: last.at };
      // One that was made shortly before a restart counts.
      const age = clock.now() - last.at;
      if (age >= 0 && age < everyMs) this.askedAt = performance.now() - age;
    } catch (err) {
      log.error({ err }, 'the last time stamp could not be read');
    }
  }

  private plan(): void {
    if (this.closing.signal.aborted || this.isUnderWay || this.size <= this.stamped.size) return;
    const { everyMs } = this.deps;
    const wait = this.failing
      ? retryAfter(this.failing.count, everyMs)
      : this.isHurried
        ? Math.min(LEAST_GAP_MS, everyMs)
        : everyMs;
    clearTimeout(this.timer);
    this.timer = setTimeout(
      () => void this.stamp(),
      Math.max(0, this.askedAt + wait - performance.now()),
    ).unref();
  }

  /** Never rejects. */
  private async stamp(): Promise<void> {
    const { store, clock, log, telemetry, ask, from } = this.deps;
    const head = this.headNow?.();
    if (!head) return;
    this.isUnderWay = true;
    this.isHurried = false;
    this.askedAt = performance.now();
    try {
      const { checked, nonce, token } = await ask(stampText(head), this.closing.signal);
      await store.addStamp({ ...head, nonce, token });
      this.stamped = { size: head.size, at: head.at };
      this.failing = undefined;
      telemetry.stamped(head.size, from);
      const apart = checked.at - clock.now();
      if (Math.abs(apart) > CLOCKS_APART_MS)
        log.warn({ apartMs: apart, from }, 'the clock of this server and that of the time stamps are apart');
    } catch (err) {
      if (this.closing.signal.aborted) return;
      this.failing = { since: this.failing?.since ?? clock.now(), count: (this.failing?.count ?? 0) + 1 };
      telemetry.notStamped(from, this.failing.count, err);
    } finally {
      this.isUnderWay = false;
      this.plan();
    }
  }
}

/** How long after the `count`-th failure in a row, ms. */
export const retryAfter = (count: number, everyMs: number): number =>
  Math.min(RETRY_MS * 2 ** Math.min(count - 1, 20), Math.max(RETRY_MS, Math.min(everyMs, RETRY_MOST_MS)));
