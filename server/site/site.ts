import { emptyHead, headAfter } from '../../src/log/chain.ts';
import type { ChainFault } from '../../src/log/fault.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Head, JobId, MessageId } from '../../src/model/ids.ts';
import { brokenLogText, NOT_SAVED_TRY_AGAIN } from '../../src/phrases/log-failures.ts';
import type { SiteResponse } from '../../src/site/respond.ts';
import { EMPTY_SITE, foldSite, type SiteState } from '../../src/site/state.ts';
import { type Outcome, type RoomDeps, sealHere } from '../jobs/room.ts';
import { checkNamed } from '../store/check.ts';
import type { KeyChange } from '../store/store.ts';

export type SiteDeps = Pick<RoomDeps, 'store' | 'leases' | 'clock' | 'telemetry' | 'onStored'>;

const READ_BATCH = 1_000;

/**
 * A site's own log. It takes one command at a time: respond, seal, store. The state is the fold of what is stored,
 * and never ahead of it.
 */
export class Site {
  state: SiteState = EMPTY_SITE;
  head: Head;
  fault: ChainFault | undefined;
  /** The store failed during an append, so it may hold more than we know. */
  private unsure = false;
  private queue: Promise<unknown> = Promise.resolve();

  private constructor(
    readonly log: JobId,
    private readonly deps: SiteDeps,
  ) {
    this.head = emptyHead(log);
  }

  /** Folds a stored log that something names. Undefined when it is a job's. Rejects with `StoreFailure`. */
  static async load(log: JobId, deps: SiteDeps): Promise<Site | undefined> {
    const site = new Site(log, deps);
    await site.check();
    await site.readOn();
    const isLost = site.fault !== undefined && site.head.count === 0;
    return site.state.site === undefined && !isLost ? undefined : site;
  }

  /** Checks the stored log from end to end. Rejects with `StoreFailure`. */
  async check(): Promise<void> {
    if (this.fault) return;
    this.fault = await checkNamed(this.deps.store, this.log);
    if (this.fault) this.deps.telemetry.damaged(this.log, this.fault);
  }

  /** The job of every visit that this site names. */
  get visits(): JobId[] {
    return [...this.state.pairs.values()].flatMap(({ visits }) => visits.map(({ job }) => job));
  }

  /** Carries out a command. The same id gives the same answer each time it comes. Never rejects. */
  submit(
    id: MessageId,
    respond: (state: SiteState) => SiteResponse | Promise<SiteResponse>,
    keys?: KeyChange,
  ): Promise<Outcome> {
    const done = this.queue
      .then(() => this.take(id, respond, keys))
      .catch((error: unknown): Outcome => {
        this.deps.telemetry.notStored(this.log, error);
        this.unsure = true;
        return { kind: 'refused', reason: 'store-failed', text: NOT_SAVED_TRY_AGAIN };
      });
    this.queue = done;
    return done;
  }

  private async take(
    id: MessageId,
    respond: (state: SiteState) => SiteResponse | Promise<SiteResponse>,
    keys: KeyChange | undefined,
  ): Promise<Outcome> {
    if (this.unsure) await this.readOn();
    if (this.fault) return { kind: 'refused', reason: 'log-broken', text: brokenLogText('site', this.fault) };
    const seq = await this.deps.store.seqOf(this.log, id);
    if (seq !== undefined) return { kind: 'taken', seq };
    const response = await respond(this.state);
    if (response.kind === 'refused') return response;
    const first = this.head.count;
    const { entries } = sealHere(this.head, response.drafts, this.deps.clock.now(), { ref: id });
    const appended = await this.deps.store.append(this.log, entries, keys);
    if (appended.kind !== 'stored') throw new Error(`the log of this site did not take entry ${first}`);
    this.follow(entries);
    this.deps.onStored?.(entries);
    return { kind: 'taken', seq: first };
  }

  /** Knows afterwards what other processes have stored. Rejects with `StoreFailure`. */
  catchUp(): Promise<void> {
    const done = this.queue.then(() => this.readOn());
    this.queue = done.catch(() => undefined);
    return done;
  }

  private follow(entries: readonly Entry[]): void {
    const last = entries.at(-1);
    if (!last) return;
    this.state = entries.reduce(foldSite, this.state);
    this.head = headAfter(last);
  }

  /** Reads what the store holds after our head, up to the first fault. */
  private async readOn(): Promise<void> {
    for (;;) {
      const sound = (this.fault?.seq ?? Number.POSITIVE_INFINITY) - this.head.count;
      const batch = await this.deps.store.read(this.log, this.head.count - 1, Math.min(READ_BATCH, sound));
      if (batch.length === 0) break;
      this.follow(batch);
    }
    this.unsure = false;
  }
}
