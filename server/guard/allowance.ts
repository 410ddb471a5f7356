import type { Allowance } from './limits.ts';

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

/** One bucket for each address. Full ones are dropped. */
export class Buckets {
  private readonly buckets = new Map<string, Bucket>();

  constructor(private readonly allowance: Allowance) {}

  of(address: string, now: number): Bucket {
    let bucket = this.buckets.get(address);
    if (!bucket) {
      if (this.buckets.size >= SWEEP_AT) this.sweep(now);
      bucket = new Bucket(this.allowance, now);
      this.buckets.set(address, bucket);
    }
    return bucket;
  }

  private sweep(now: number): void {
    for (const [address, bucket] of this.buckets) {
      if (bucket.isFull(now)) this.buckets.delete(address);
    }
  }
}
