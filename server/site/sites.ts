import type * as z from 'zod/mini';
import { emptyHead } from '../../src/log/chain.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { PairId } from '../../src/model/pair-plan.ts';
import type { MeterProfile } from '../../src/model/profile.ts';
import { ID_USED } from '../../src/phrases/bad-requests.ts';
import type { JobOpened } from '../../src/protocol/jobs.ts';
import type { BeginVisit, OpenSite, SiteOpened } from '../../src/protocol/site.ts';
import { lastLeftOf } from '../../src/record/last-left.ts';
import { outcomeOf } from '../../src/record/visit-summary.ts';
import { beginVisit, openSite, setupOf } from '../../src/site/respond.ts';
import type { SiteState } from '../../src/site/state.ts';
import { digest, newJobId, newToken } from '../guard/secrets.ts';
import type { Answer } from '../http/http.ts';
import { sealHere } from '../jobs/room.ts';
import type { Rooms } from '../jobs/rooms.ts';
import type { Summaries } from '../record/summaries.ts';
import { Site, type SiteDeps } from './site.ts';

/** The sites that someone has looked at since the server started. */
export class Sites {
  private readonly sites = new Map<JobId, Promise<Site | undefined>>();

  constructor(
    private readonly deps: SiteDeps,
    private readonly rooms: Rooms,
    private readonly summaries: Summaries,
  ) {}

  /** Rejects with `StoreFailure`. */
  async open({ site, ...options }: z.output<typeof OpenSite>): Promise<Answer<SiteOpened>> {
    const log = newJobId();
    const response = openSite(site, options);
    if (response.kind === 'refused') return response;
    const { entries } = sealHere(emptyHead(log), response.drafts, this.deps.clock.now());
    const desk = newToken();
    const watch = newToken();
    await this.deps.store.append(log, entries, {
      issue: [
        { token: digest(desk), role: 'desk' },
        { token: digest(watch), role: 'watcher' },
      ],
    });
    this.deps.onStored?.(entries);
    this.deps.telemetry.opened('site', log);
    return { kind: 'ok', value: { log, desk, watch } };
  }

  /** Undefined when the log is not the log of a site. Rejects with `StoreFailure`. */
  async get(log: JobId): Promise<Site | undefined> {
    let loading = this.sites.get(log);
    if (!loading) {
      loading = Site.load(log, this.deps);
      this.sites.set(log, loading);
      loading.then(
        (site) => site ?? this.sites.delete(log),
        () => this.sites.delete(log),
      );
    } else if (this.deps.leases) await (await loading)?.catchUp();
    return loading;
  }

  /**
   * Opens the job of a visit, and then names it in the site's log. In the other order, a failure between the two
   * would leave the site with a visit that does not exist. A command that comes again gets new keys to the same job,
   * because only digests of the first keys are stored.
   */
  async begin(site: Site, command: z.output<typeof BeginVisit>): Promise<Answer<JobOpened>> {
    let answer: Answer<JobOpened> | undefined;
    const outcome = await site.submit(command.id, async (state) => {
      const setup = setupOf(state, command.pair, command);
      if ('kind' in setup) return setup;
      const lastLeft =
        command.scope === 'periodic' ? await this.lastLeft(state, command.pair, setup.meter) : undefined;
      answer = await this.rooms.open({
        setup: { ...setup, ...(lastLeft && { lastLeft }) },
        device: command.device,
        phone: command.phone,
        person: command.person,
      });
      return answer.kind === 'refused' ? answer : beginVisit(state, command.pair, answer.value.job);
    });
    if (outcome.kind === 'refused') return outcome;
    if (answer) return answer;
    const [begun] = outcome.kind === 'taken' ? await this.deps.store.read(site.log, outcome.seq - 1, 1) : [];
    if (begun?.fact.type !== 'job-begun') {
      return { kind: 'refused', reason: 'bad-message', text: ID_USED };
    }
    return { kind: 'ok', value: await this.rooms.openAgain(begun.fact.job) };
  }

  /** Undefined where a log of the pair fails its check, too: then nothing is known. */
  private async lastLeft({ pairs }: SiteState, pair: PairId, meter: MeterProfile) {
    const results = await Promise.all(
      (pairs.get(pair)?.visits ?? []).map(({ job }) => this.summaries.of(job)),
    );
    if (results.some((result) => result?.kind !== 'summary')) return undefined;
    const outcomes = results.flatMap((result) =>
      result?.kind === 'summary' ? [outcomeOf(result.summary)] : [],
    );
    return lastLeftOf(outcomes, meter);
  }
}
