import type { TurnLimits } from './limits.ts';

/** Who asks for heavy work: the job or site that it is for, and the block of addresses that it is asked from. */
export interface Asker {
  readonly key: string;
  readonly place: string;
}

/** Told of each piece that is done or failed: how long it waited for its turn, and how long it took then, ms. */
type Worked = (waitedMs: number, tookMs: number) => void;

/**
 * Heavy work of one kind, some pieces at once. Jobs have their turns one after the other, whatever the number of pieces
 * that each of them waits for: nobody waits behind the many of another.
 */
export class Turns {
  /** The job whose turn is next is first. */
  private readonly waiting = new Map<string, (() => void)[]>();
  /** Under way or waiting. */
  private readonly ofKey = new Map<string, number>();
  private readonly ofPlace = new Map<string, number>();
  private all = 0;
  private running = 0;

  constructor(
    private readonly limits: TurnLimits,
    private readonly worked: Worked = () => {},
  ) {}

  get underWay(): number {
    return this.running;
  }

  get queued(): number {
    return this.all - this.running;
  }

  /** Undefined when too much waits already, of this asker or in all; then nothing is done. */
  take<T>({ key, place }: Asker, work: () => Promise<T>): Promise<T> | undefined {
    const { perKey, perPlace, all } = this.limits;
    const isFull =
      (this.ofKey.get(key) ?? 0) >= perKey || (this.ofPlace.get(place) ?? 0) >= perPlace || this.all >= all;
    if (isFull) return undefined;
    this.count(key, place, 1);
    const asked = performance.now();
    let began = asked;
    return new Promise<void>((begin) => {
      this.waiting.set(key, [...(this.waiting.get(key) ?? []), begin]);
      this.next();
    })
      .then(() => {
        began = performance.now();
        return work();
      })
      .finally(() => {
        this.worked(began - asked, performance.now() - began);
        this.running -= 1;
        this.count(key, place, -1);
        this.next();
      });
  }

  private next(): void {
    if (this.running >= this.limits.atOnce) return;
    const [turn] = this.waiting;
    if (!turn) return;
    const [key, [begin, ...others]] = turn;
    this.waiting.delete(key);
    if (others.length > 0) this.waiting.set(key, others);
    this.running += 1;
    begin?.();
    this.next();
  }

  private count(key: string, place: string, change: 1 | -1): void {
    this.all += change;
    add(this.ofKey, key, change);
    add(this.ofPlace, place, change);
  }
}

function add(counts: Map<string, number>, key: string, change: number): void {
  const count = (counts.get(key) ?? 0) + change;
  if (count === 0) counts.delete(key);
  else counts.set(key, count);
}

export const HEAVY_WORK = [
  'jobReports',
  'siteReports',
  'spoken',
  'talks',
  'records',
  'brought',
  'boards',
] as const;
export type HeavyKind = (typeof HEAVY_WORK)[number];

/** Each kind of heavy work has its own turns: reports do not wait for spoken sentences, nor a job for a whole site. */
export class HeavyWork implements Record<HeavyKind, Turns> {
  readonly jobReports: Turns;
  readonly siteReports: Turns;
  readonly spoken: Turns;
  readonly talks: Turns;
  readonly records: Turns;
  readonly brought: Turns;
  readonly boards: Turns;

  constructor(
    limits: Record<HeavyKind, TurnLimits>,
    worked: (kind: HeavyKind, waitedMs: number, tookMs: number) => void = () => {},
  ) {
    const turns = (kind: HeavyKind) => new Turns(limits[kind], (...times) => worked(kind, ...times));
    this.jobReports = turns('jobReports');
    this.siteReports = turns('siteReports');
    this.spoken = turns('spoken');
    this.talks = turns('talks');
    this.records = turns('records');
    this.brought = turns('brought');
    this.boards = turns('boards');
  }
}
