import type { Logger } from 'pino';
import type { Clock } from '../process/clock.ts';
import { Hourly } from '../process/hourly.ts';
import type { Store } from '../store/store.ts';

interface ReadRetentionDeps {
  readonly store: Pick<Store, 'changeReads'>;
  readonly clock: Clock;
  readonly log: Logger;
  /** How long it is kept who read what. */
  readonly days: number;
}

const DAY_MS = 24 * 60 * 60_000;

/** Takes away who read what, once that is so many days ago. */
export class ReadRetention extends Hourly {
  constructor(private readonly deps: ReadRetentionDeps) {
    super();
  }

  /** Rejects with `StoreFailure`. */
  protected round(): Promise<void> {
    const { store, clock, days } = this.deps;
    return store.changeReads({ end: clock.now() - days * DAY_MS });
  }

  protected failed(err: unknown): void {
    this.deps.log.warn({ err }, 'what was kept long enough of who read what could not be removed');
  }
}
