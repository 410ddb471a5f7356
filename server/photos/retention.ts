import type { Logger } from 'pino';
import type { JobId, Seq } from '../../src/model/ids.ts';
import { keptLongEnoughText } from '../../src/phrases/photos.ts';
import type { Rooms } from '../jobs/rooms.ts';
import type { Clock } from '../process/clock.ts';
import { Hourly } from '../process/hourly.ts';
import { unlessElsewhere } from '../store/leases.ts';
import type { Store } from '../store/store.ts';

export interface RetentionDeps {
  store: Store;
  rooms: Rooms;
  clock: Clock;
  log: Logger;
  /** How long a picture is kept, days. */
  days: number;
}

const DAY_MS = 24 * 60 * 60_000;

/**
 * Removes pictures that are older than this server keeps them, as the desk does it: an entry says so, and the chain holds. It looks
 * every hour, so that nobody has to remember it.
 */
export class Retention extends Hourly {
  constructor(private readonly deps: RetentionDeps) {
    super();
  }

  /** Rejects with `StoreFailure`. */
  protected async round(signal: AbortSignal): Promise<void> {
    for (const { job, seq } of await this.deps.store.enclosed()) {
      if (signal.aborted) return;
      if (await this.isOld(job, seq)) await this.remove(job, seq).catch(unlessElsewhere);
    }
  }

  protected failed(err: unknown): void {
    this.deps.log.warn({ err }, 'old pictures could not be removed');
  }

  private async isOld(job: JobId, seq: Seq): Promise<boolean> {
    const { store, clock, days } = this.deps;
    const [entry] = await store.read(job, seq - 1, 1);
    return entry?.seq === seq && entry.fact.type === 'photo' && entry.at + days * DAY_MS <= clock.now();
  }

  private async remove(job: JobId, photo: Seq): Promise<void> {
    const { rooms, days, log } = this.deps;
    const room = await rooms.get(job);
    const fact = { type: 'photo-removed' as const, photo, why: keptLongEnoughText(days), afterDays: days };
    // Always the same id for a picture, so that it is removed once, whatever happens in between.
    const outcome = await room?.submit({ kind: 'remove-photo', by: 'server', fact }, `kept-enough-${photo}`);
    if (outcome?.kind === 'taken') log.info({ job, photo }, 'a picture was removed: it was kept long enough');
    else
      log.warn(
        { job, photo, reason: outcome?.kind === 'refused' ? outcome.reason : 'no such job' },
        'an old picture was not removed',
      );
  }
}
