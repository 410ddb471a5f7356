import type { Clock } from '../../server/process/clock.ts';

/** A clock that moves when the test says so. */
export class ManualClock implements Clock {
  private time = 1_700_000_000_000;
  private timers: { at: number; action: () => void }[] = [];

  now(): number {
    return this.time;
  }

  after(ms: number, action: () => void): () => void {
    const timer = { at: this.time + ms, action };
    this.timers.push(timer);
    return () => {
      this.timers = this.timers.filter((t) => t !== timer);
    };
  }

  /** Moves on and runs what is due. */
  advance(ms: number): void {
    this.time += ms;
    const due = this.timers.filter((t) => t.at <= this.time);
    this.timers = this.timers.filter((t) => t.at > this.time);
    for (const { action } of due) action();
  }
}

/** Lets everything that is only waiting for its turn run. */
export const settle = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
