import { Bucket, Buckets } from './allowance.ts';
import type { Limits } from './limits.ts';

/** Join codes that were typed wrongly, for each block of addresses and over all. A code that was scanned is no guess. */
export class Guesses {
  private readonly all: Bucket;
  private readonly ownOf: Buckets;
  private readonly seldomOf: Buckets;

  constructor(limits: Pick<Limits, 'guesses' | 'guessesPerAddress' | 'guessesWhenMany'>, now: number) {
    this.all = new Bucket(limits.guesses, now);
    this.ownOf = new Buckets(limits.guessesPerAddress);
    this.seldomOf = new Buckets(limits.guessesWhenMany);
  }

  /** While many guess, a block waits that guessed wrong lately; one that did not is let in all the same. */
  may(address: string, now: number): boolean {
    const block = blockOf(address);
    if (!this.ownOf.of(block, now).has(now)) return false;
    return this.all.has(now) || this.seldomOf.of(block, now).has(now);
  }

  /** The last one that was counted as wrong was right after all. */
  forgive(address: string, now: number): void {
    const block = blockOf(address);
    this.all.put(now);
    this.ownOf.of(block, now).put(now);
    this.seldomOf.of(block, now).put(now);
  }

  wrong(address: string, now: number): void {
    const block = blockOf(address);
    this.all.take(now);
    this.ownOf.of(block, now).take(now);
    this.seldomOf.of(block, now).take(now);
  }
}

/** A /24 of IPv4, a /64 of IPv6: one person can easily have every address of it. */
export function blockOf(address: string): string {
  const four = /^(?:::ffff:)?(\d+\.\d+\.\d+)\.\d+$/i.exec(address)?.[1];
  if (four !== undefined) return four;
  const [before = '', after] = address.replace(/%.*$/, '').split('::');
  const left = before === '' ? [] : before.split(':');
  const right = after ? after.split(':') : [];
  const zeros = after === undefined ? 0 : Math.max(0, 8 - left.length - right.length);
  const groups = [...left, ...new Array<string>(zeros).fill('0'), ...right];
  return groups
    .slice(0, 4)
    .map((group) => Number.parseInt(group, 16).toString(16))
    .join(':');
}
