import type { Allowance, Limits } from './limits.ts';

/** A token bucket. `now`: milliseconds of any clock that never goes back. */
export class Bucket {
  private level: number;
  private at: number;

  constructor(
    private readonly allowance: Allowance,
    now: number,
  ) {
    this.level = allowance.burst;
    this.at = now;
  }

  private fill(now: number): void {
    const { burst, perSecond } = this.allowance;
    this.level = Math.min(burst, this.level + ((now - this.at) / 1000) * perSecond);
    this.at = now;
  }

  /** Takes `amount` if the bucket holds that much. */
  take(now: number, amount = 1): boolean {
    this.fill(now);
    if (this.level < amount) return false;
    this.level -= amount;
    return true;
  }

  /** Gives one back. */
  put(now: number): void {
    this.fill(now);
    this.level = Math.min(this.allowance.burst, this.level + 1);
  }

  /** Whether one could be taken. */
  has(now: number): boolean {
    this.fill(now);
    return this.level >= 1;
  }

  isFull(now: number): boolean {
    this.fill(now);
    return this.level >= this.allowance.burst;
  }
}

const SWEEP_AT = 1_000;

/** One bucket for each key: an address, a block of addresses, a token, a job. Full ones are dropped. */
export class Buckets {
  private readonly buckets = new Map<string, Bucket>();
  private sweepAt = SWEEP_AT;

  constructor(private readonly allowance: Allowance) {}

  of(key: string, now: number): Bucket {
    let bucket = this.buckets.get(key);
    if (!bucket) {
      if (this.buckets.size >= this.sweepAt) this.sweep(now);
      bucket = new Bucket(this.allowance, now);
      this.buckets.set(key, bucket);
    }
    return bucket;
  }

  private sweep(now: number): void {
    for (const [key, bucket] of this.buckets) {
      if (bucket.isFull(now)) this.buckets.delete(key);
    }
    // Where many are in use, looking through all of them for each new one would be the larger load.
    this.sweepAt = Math.max(SWEEP_AT, 2 * this.buckets.size);
  }
}

/** What one block of addresses may write in a day, and what may be written to one log. A restart begins a new day. */
export class DailyAllowances {
  readonly jobs: Buckets;
  readonly sites: Buckets;
  readonly bytes: Buckets;
  readonly logBytes: Buckets;

  constructor(limits: Pick<Limits, 'jobsPerDay' | 'sitesPerDay' | 'bytesPerDay' | 'logBytesPerDay'>) {
    this.jobs = new Buckets(limits.jobsPerDay);
    this.sites = new Buckets(limits.sitesPerDay);
    this.bytes = new Buckets(limits.bytesPerDay);
    this.logBytes = new Buckets(limits.logBytesPerDay);
  }
}

/** What a token may do, over all its connections: who connects again begins no new allowance. */
export class TokenAllowances {
  readonly messages: Buckets;
  readonly sound: Buckets;

  constructor(limits: Pick<Limits, 'messages' | 'sound'>) {
    this.messages = new Buckets(limits.messages);
    this.sound = new Buckets(limits.sound);
  }
}
