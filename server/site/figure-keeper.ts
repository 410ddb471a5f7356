import { setTimeout } from 'node:timers/promises';
import type { Logger } from 'pino';
import type { FigureStore } from '../store/figures.ts';
import type { Board } from './board.ts';
import type { Sites } from './sites.ts';

interface KeeperDeps {
  readonly figures: FigureStore;
  readonly sites: Sites;
  readonly board: Board;
  readonly log: Logger;
}

/** How long after a change the figures have it, at most, on a server with little to do. */
const EACH_MS = 60_000;
const AT_A_TIME = 10;

/** Counts sites anew that have changed, again and again. Several processes share the work. */
export class FigureKeeper {
  private readonly closing = new AbortController();

  constructor(private readonly deps: KeeperDeps) {}

  /** Never rejects. */
  async begin(eachMs = EACH_MS): Promise<void> {
    const { signal } = this.closing;
    while (!signal.aborted) {
      await this.round().catch((error: unknown) => {
        if (!signal.aborted)
          this.deps.log.warn({ err: error }, 'the figures over all sites could not be counted');
      });
      await setTimeout(eachMs, undefined, { signal, ref: false }).catch(() => undefined);
    }
  }

  close(): void {
    this.closing.abort();
  }

  /** Until there is nothing that has changed. Rejects with `StoreFailure`. */
  async round(): Promise<void> {
    const { figures, sites, board } = this.deps;
    for (;;) {
      const changed = await figures.claim(AT_A_TIME);
      for (const log of changed) {
        const site = await sites.get(log);
        // A log that is no site's, or lost all of its entries, has no figures.
        if (site && !this.closing.signal.aborted) await figures.keep(await board.figures(site));
      }
      if (changed.length < AT_A_TIME || this.closing.signal.aborted) return;
    }
  }
}
