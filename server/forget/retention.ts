import type { Logger } from 'pino';
import type { JobId, Seq } from '../../src/model/ids.ts';
import { isUpkeep } from '../../src/model/upkeep.ts';
import { namesKeptLongEnoughText } from '../../src/phrases/forgotten.ts';
import type { Rooms } from '../jobs/rooms.ts';
import type { Clock } from '../process/clock.ts';
import { Hourly } from '../process/hourly.ts';
import { unlessElsewhere } from '../store/leases.ts';
import type { Store } from '../store/store.ts';

export interface NameRetentionDeps {
  store: Store;
  rooms: Rooms;
  clock: Clock;
  log: Logger;
  /** How long names are kept after the last entry of their record, days. */
  days: number;
}

const DAY_MS = 24 * 60 * 60_000;

/**
 * Forgets the names in records to which nothing was added for so many days, as `npm run forget` does it: an entry says so, and the
 * chain holds. All names of a record go together, so that nobody is forgotten while the job goes on.
 */
export class NameRetention extends Hourly {
  constructor(private readonly deps: NameRetentionDeps) {
    super();
  }

  /** Rejects with `StoreFailure`. */
  protected async round(signal: AbortSignal): Promise<void> {
    const records = new Map<JobId, Seq[]>();
    for (const { job, seq } of await this.deps.store.named())
      records.set(job, [...(records.get(job) ?? []), seq]);
    for (const [job, seqs] of records) {
      if (signal.aborted) return;
      if (await this.isOld(job)) await this.forget(job, seqs).catch(unlessElsewhere);
    }
  }

  protected failed(err: unknown): void {
    this.deps.log.warn({ err }, 'old names could not be forgotten');
  }

  private async isOld(job: JobId): Promise<boolean> {
    const { store, clock, days } = this.deps;
    const { count } = await store.head(job);
    // Pictures that went by age, years later, do not put it off.
    for (let seq = count - 1; seq >= 0; seq--) {
      const [entry] = await store.read(job, seq - 1, 1);
      if (entry && !isUpkeep(entry.fact)) return entry.at + days * DAY_MS <= clock.now();
    }
    return false;
  }

  private async forget(job: JobId, entries: Seq[]): Promise<void> {
    const { rooms, days, log } = this.deps;
    const room = await rooms.get(job);
    if (room?.isInUse) return;
    const why = namesKeptLongEnoughText(days);
    const fact = { type: 'names-forgotten' as const, entries, why, afterDays: days };
    const outcome = await room?.submit({ kind: 'forget-names', fact });
    if (outcome?.kind === 'taken')
      log.info({ job, entries: entries.length }, 'names were forgotten: they were kept long enough');
    else
      log.warn(
        { job, reason: outcome?.kind === 'refused' ? outcome.reason : 'no such job' },
        'old names were not forgotten',
      );
  }
}
