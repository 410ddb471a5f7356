import { setTimeout } from 'node:timers/promises';
import type * as z from 'zod/mini';
import { reviewSite } from '../../src/findings/across-visits.ts';
import type { PairOutcome } from '../../src/findings/outcome.ts';
import { signalHistory } from '../../src/findings/signal-history.ts';
import { emptyHead } from '../../src/log/chain.ts';
import { isPlanChanged, type Severity, type SiteFinding } from '../../src/model/finding.ts';
import type { Head, JobId } from '../../src/model/ids.ts';
import type { PairId } from '../../src/model/pair-plan.ts';
import { BEING_READ, nextText, planChangedNext } from '../../src/phrases/board.ts';
import {
  DAMAGE_TO_DO,
  DAMAGED_NEXT,
  damagedSiteText,
  damagedVisitText,
  lostPicturesText,
  NO_NAME_LEFT,
} from '../../src/phrases/damage.ts';
import type { Damage, PairRow, SiteFindings, SiteRole, SiteView } from '../../src/protocol/site.ts';
import { pairFigures } from '../../src/record/pair-figures.ts';
import { statusOnSite } from '../../src/record/status.ts';
import { outcomeOf, type VisitSummary } from '../../src/record/visit-summary.ts';
import { livePairs, type SitePair } from '../../src/site/state.ts';
import type { Rooms } from '../jobs/rooms.ts';
import type { Summaries, VisitResult } from '../record/summaries.ts';
import type { SiteFigures } from '../store/figures.ts';
import type { Site } from './site.ts';

/** What is known of a visit, or that its log is still being read. */
type Visit = VisitResult | 'being-read';

/** A pair with what is known of each of its visits, oldest first. */
interface Known {
  readonly pair: SitePair;
  readonly visits: readonly Visit[];
}

/** The board waits at most so long for logs that were not read yet, as after an import or with new rules, ms. */
const WAIT_MS = 200;

/** A site's board and findings, from the summaries of its visits. */
export class Board {
  constructor(
    private readonly summaries: Summaries,
    private readonly rooms: Rooms,
  ) {}

  /** `job`: only the pair of this visit. Rejects with `StoreFailure`. */
  async view(site: Site, role: SiteRole, job?: JobId): Promise<z.input<typeof SiteView>> {
    const { head, state } = site;
    const known = await this.knownOf([...state.pairs.values()], setTimeout(WAIT_MS, 'being-read' as const));
    const findings = findingsOf(known);
    const wanted = known.filter(({ pair }) => isOf(pair, job));
    const pairs = await Promise.all(wanted.map((one) => this.row(one, findings)));
    const { site: name = NO_NAME_LEFT, code, units, steps } = state;
    const damage = damageIn(site, wanted);
    return {
      head,
      site: name,
      ...(damage.length > 0 && { damage: { toDo: DAMAGE_TO_DO, found: damage } }),
      ...(code && { code }),
      ...(units && { units }),
      ...(steps && { steps: [...steps] }),
      role,
      pairs,
    };
  }

  /** `job`: only those of this visit, and those of the site about its pair. Rejects with `StoreFailure`. */
  async findings({ state }: Site, job?: JobId): Promise<z.input<typeof SiteFindings>> {
    const known = await this.knownOf(livePairs(state));
    const wanted = known.filter(({ pair }) => isOf(pair, job));
    const perPair = wanted.flatMap(({ pair, visits }) =>
      summariesIn(visits)
        .filter(({ head }) => job === undefined || head.job === job)
        .map(({ head, findings }) => ({ pair: pair.plan.id, job: head.job, findings })),
    );
    const ids = new Set(wanted.map(({ pair }) => pair.plan.id));
    const site = findingsOf(known).filter(({ pair }) => ids.has(pair));
    return { perPair, site: site.map((each) => ({ ...each, entries: [...each.entries] })) };
  }

  /** Of every pair that belongs to the site now. Rejects with `StoreFailure`. */
  async figures({ head, state }: Site): Promise<SiteFigures> {
    const known = await this.knownOf(livePairs(state));
    const findings = findingsOf(known);
    const pairs = known.map(({ pair: { plan }, visits }) =>
      pairFigures(
        plan.id,
        visits.length,
        visits.some(isDamaged) ? undefined : summariesIn(visits),
        findings.filter(({ pair }) => pair === plan.id),
      ),
    );
    return { head, name: state.site ?? NO_NAME_LEFT, pairs };
  }

  /** `late`: settles when there is no more time; visits not known by then are `being-read`. */
  private knownOf(pairs: readonly SitePair[], late?: Promise<'being-read'>): Promise<Known[]> {
    return Promise.all(
      pairs.map(async (pair) => {
        const visits = await Promise.all(
          pair.visits.map(({ job }): Promise<Visit> => {
            const result = this.summaries.of(job).then((found) => found ?? notAJob(job));
            return late ? Promise.race([result, late]) : result;
          }),
        );
        return { pair, visits };
      }),
    );
  }

  private async row({ pair, visits }: Known, findings: readonly SiteFinding[]): Promise<PairRow> {
    const { plan, dropped } = pair;
    const job = pair.visits.at(-1)?.job;
    const room = job === undefined ? undefined : await this.rooms.live(job);
    const ofSite = findings.filter((each) => each.pair === plan.id);
    const all = [...summariesIn(visits.slice(-1)).flatMap((summary) => summary.findings), ...ofSite];
    const count = (severity: Severity) => all.filter((each) => each.severity === severity).length;
    return {
      plan,
      ...(dropped && { dropped: { at: dropped.at, reason: dropped.reason } }),
      visits: pair.visits.map(({ job, at }, index) => ({ job, at, ...statusIn(visits[index]) })),
      online: { panel: room?.isOnline('panel') ?? false, emitter: room?.isOnline('emitter') ?? false },
      findings: { serious: count('serious'), question: count('question'), note: count('note') },
      ...signalsOf(summariesIn(visits)),
      ...rowOf(visits, isPlanChanged(ofSite)),
    };
  }
}

/** A single visit is no history. */
function signalsOf(summaries: readonly VisitSummary[]): Pick<z.input<typeof PairRow>, 'signals'> {
  const history = signalHistory(summaries.map(outcomeOf));
  const meter = history.at(-1)?.meter;
  if (!meter || history.length < 2) return {};
  return { signals: { meter, points: history.map(({ meter: _, ...point }) => point) } };
}

/** A log that a site names as a visit's, and that opens no job. */
const notAJob = (job: JobId): VisitResult => ({
  kind: 'broken',
  head: emptyHead(job),
  fault: { seq: 0, fault: 'job' },
});

/** Every log of this site that fails its check, or lacks what lay beside it, as far as they are read. */
const damageIn = ({ log, fault }: Site, known: readonly Known[]): Damage[] => [
  ...(fault ? [{ job: log, seq: fault.seq, text: damagedSiteText(fault) }] : []),
  ...known.flatMap(({ pair, visits }) =>
    visits.filter(isDamaged).map((visit) => ({ pair: pair.plan.id, ...damageOf(pair.plan.id, visit) })),
  ),
];

function damageOf(pair: PairId, visit: VisitResult): Omit<Damage, 'pair'> {
  const { job } = headOf(visit);
  if (visit.kind === 'broken')
    return { job, seq: visit.fault.seq, text: damagedVisitText(pair, job, visit.fault) };
  return { job, seq: visit.lost[0] ?? 0, text: lostPicturesText(pair, job, visit.lost) };
}

/** What the visits say about the pair's status: the latest one, unless any of them is damaged. */
function rowOf(
  visits: readonly Visit[],
  planChanged: boolean,
): Pick<PairRow, 'status' | 'next' | 'final' | 'head' | 'signed'> {
  const latest = visits.at(-1);
  if (visits.some(isDamaged)) {
    const { count = 0, hash } = (latest !== 'being-read' && latest && headOf(latest)) || {};
    return {
      status: 'needs-attention',
      next: DAMAGED_NEXT,
      ...(hash !== undefined && { head: { count, hash } }),
    };
  }
  if (!latest) return { status: 'not-started', next: nextText('not-started') };
  if (!isRead(visits) || latest === 'being-read' || latest.kind === 'broken') return { next: BEING_READ };
  const { status, next, final, signed, head } = latest.summary;
  return {
    status: statusOnSite(status, planChanged),
    next: planChanged ? planChangedNext(signed !== undefined) : next,
    ...(final !== undefined && { final }),
    head: { count: head.count, hash: head.hash },
    ...(signed && { signed }),
  };
}

/** The status of one visit. Where anything of it is damaged it needs attention, whatever it says. */
function statusIn(visit: Visit | undefined): Pick<PairRow['visits'][number], 'status'> {
  if (!visit || visit === 'being-read') return {};
  return {
    status: visit.kind === 'broken' || visit.lost.length > 0 ? 'needs-attention' : visit.summary.status,
  };
}

const isOf = ({ visits }: SitePair, job: JobId | undefined): boolean =>
  job === undefined || visits.some((visit) => visit.job === job);

/** Its log fails its check, or a picture beside it is lost. */
const isDamaged = (visit: Visit): visit is VisitResult =>
  visit !== 'being-read' && (visit.kind === 'broken' || visit.lost.length > 0);

const headOf = (result: VisitResult): Head => (result.kind === 'broken' ? result.head : result.summary.head);

const isRead = (visits: readonly Visit[]): visits is VisitResult[] => !visits.includes('being-read');

const summariesIn = (visits: readonly Visit[]): VisitSummary[] =>
  visits.flatMap((result) => (result !== 'being-read' && result.kind === 'summary' ? [result.summary] : []));

/** Only of pairs that belong to the site now, and are read: an earlier visit must not count as the latest. */
const findingsOf = (known: readonly Known[]): SiteFinding[] =>
  reviewSite(
    known
      .filter(({ pair, visits }) => !pair.dropped && isRead(visits))
      .map(({ pair, visits }): PairOutcome => {
        const summaries = summariesIn(visits);
        return {
          pair: pair.plan.id,
          plan: pair.plan,
          pathLength: summaries.at(-1)?.pathLength ?? pair.plan.pathLength,
          visits: summaries.map(outcomeOf),
        };
      }),
  );
