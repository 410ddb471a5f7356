import type { Entry } from '../model/entry.ts';
import type { Guidance } from '../model/guidance.ts';
import type { JobId, Seq } from '../model/ids.ts';
import type { PairId, PairPlan } from '../model/pair-plan.ts';
import type { TestStep } from '../model/steps.ts';
import type { Units } from '../model/units.ts';
import { currentPlan } from '../model/written.ts';

/** A visit to a pair; its record is the log `job`. */
export interface BegunVisit {
  readonly job: JobId;
  readonly seq: Seq;
  readonly at: number;
}

/** A pair of the site, with its plan as it stands and every visit, oldest first. */
export interface SitePair {
  readonly plan: PairPlan;
  /** The entry that planned it last. */
  readonly planned: Seq;
  readonly visits: readonly BegunVisit[];
  /** Taken out of the site; its visits stay. */
  readonly dropped?: { readonly seq: Seq; readonly at: number; readonly reason: string };
}

/** The state of a site from its log. */
export interface SiteState {
  /** Number of entries folded in. */
  readonly count: number;
  readonly site?: string;
  readonly code?: Guidance;
  readonly units?: Units;
  readonly steps?: readonly TestStep[];
  /** In the order they were first planned. */
  readonly pairs: ReadonlyMap<PairId, SitePair>;
}

export const EMPTY_SITE: SiteState = { count: 0, pairs: new Map() };

/** The site after one more entry of its log. Never throws; other facts change nothing. */
export function foldSite(state: SiteState, { seq, at, fact }: Pick<Entry, 'seq' | 'at' | 'fact'>): SiteState {
  const next = { ...state, count: seq + 1 };
  const withPair = (id: PairId, pair: SitePair): SiteState => ({
    ...next,
    pairs: new Map(state.pairs).set(id, pair),
  });
  switch (fact.type) {
    case 'site-opened':
      return {
        ...next,
        site: fact.site,
        ...(fact.code && { code: fact.code }),
        ...(fact.units && { units: fact.units }),
      };
    case 'units-chosen':
      return { ...next, units: fact.units };
    case 'steps-defined':
      return { ...next, steps: fact.steps };
    case 'pair-planned': {
      const visits = state.pairs.get(fact.pair.id)?.visits ?? [];
      return withPair(fact.pair.id, { plan: currentPlan(fact.pair), planned: seq, visits });
    }
    case 'pair-dropped': {
      const pair = state.pairs.get(fact.pair);
      return pair ? withPair(fact.pair, { ...pair, dropped: { seq, at, reason: fact.reason } }) : next;
    }
    case 'job-begun': {
      const pair = state.pairs.get(fact.pair);
      const visit = { job: fact.job, seq, at };
      return pair ? withPair(fact.pair, { ...pair, visits: [...pair.visits, visit] }) : next;
    }
    default:
      return next;
  }
}

/** The pairs that belong to the site now. */
export const livePairs = ({ pairs }: SiteState): SitePair[] =>
  [...pairs.values()].filter(({ dropped }) => !dropped);
