import { onTestFinished } from 'vitest';
import type { Clock } from '../../server/process/clock.ts';
import { type RunningServer, type ServerOptions, startServer } from '../../server/start.ts';
import { MemoryStore } from '../../server/store/memory.ts';

/** A server on a free port of this machine, stopped at the end of the test. */
export async function serve(options: Partial<ServerOptions> = {}): Promise<RunningServer> {
  const server = await startServer({ store: new MemoryStore(), ...options });
  onTestFinished(() => server.close());
  return server;
}

/** A clock that moves only when the test says so. */
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

  /** Moves the clock on and runs what is due. */
  advance(ms: number): void {
    this.time += ms;
    const due = this.timers.filter((t) => t.at <= this.time);
    this.timers = this.timers.filter((t) => t.at > this.time);
    for (const { action } of due) action();
  }
}

export const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** Lets everything that is only waiting for its turn run. */
export const settle = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
