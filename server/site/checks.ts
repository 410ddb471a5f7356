import { setTimeout } from 'node:timers/promises';
import type { Logger } from 'pino';
import type { JobId } from '../../src/model/ids.ts';
import type { Limits } from '../guard/limits.ts';
import type { Rooms } from '../jobs/rooms.ts';
import type { Summaries } from '../record/summaries.ts';
import type { Store } from '../store/store.ts';
import type { Sites } from './sites.ts';

export interface ChecksDeps {
  store: Store;
  summaries: Summaries;
  sites: Sites;
  rooms: Rooms;
  log: Logger;
  limits: Pick<Limits, 'checkShare' | 'checkAgainMs'>;
}

/**
 * Checks every log from end to end, again and again, so that damage shows before somebody relies on the log. On the way
 * the summaries are worked out that are missing, as after a change of the rules.
 */
export class Checks {
  private readonly closing = new AbortController();

  constructor(private readonly deps: ChecksDeps) {}

  /** Never rejects. */
  async begin(): Promise<void> {
    const { log, limits } = this.deps;
    while (!this.closing.signal.aborted) {
      await this.round().catch((error: unknown) => {
        if (!this.closing.signal.aborted) log.warn({ err: error }, 'the logs could not be checked');
      });
      await this.rest(limits.checkAgainMs);
    }
  }

  close(): void {
    this.closing.abort();
  }

  /** Rejects with `StoreFailure`. */
  private async round(): Promise<void> {
    const known = new Set(await this.deps.store.logs());
    // A set gives what is added on the way, too: a visit that only its site still names.
    for (const job of known) {
      const began = performance.now();
      for (const visit of await this.check(job)) known.add(visit);
      await this.rest((performance.now() - began) * (1 / this.deps.limits.checkShare - 1));
      if (this.closing.signal.aborted) return;
    }
  }

  /** Returns the visits that this log names. */
  private async check(log: JobId): Promise<readonly JobId[]> {
    const { summaries, sites, rooms } = this.deps;
    const room = await rooms.live(log);
    const result = await (room?.isInUse ? summaries.checkLog(log) : summaries.check(log));
    if (result?.kind === 'broken') (await rooms.live(log))?.breakAt(result.fault);
    if (result || room) return [];
    const site = await sites.get(log);
    await site?.check();
    return site?.visits ?? [];
  }

  private async rest(ms: number): Promise<void> {
    const { signal } = this.closing;
    await setTimeout(ms, undefined, { signal, ref: false }).catch(() => {});
  }
}
