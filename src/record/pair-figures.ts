import { signalHistory } from '../findings/signal-history.ts';
import type { FindingId, Severity, SiteFinding, SiteFindingId } from '../model/finding.ts';
import type { Head } from '../model/ids.ts';
import type { PairId } from '../model/pair-plan.ts';
import { outcomeOf, type VisitSummary } from './visit-summary.ts';

/** What the figures over all sites know of one pair, and the head that it came from. */
export interface PairFigures {
  readonly pair: PairId;
  /** Where the log of its latest visit ended; undefined before the first visit. */
  readonly head: Head | undefined;
  readonly visits: number;
  /** A log of it fails its check, or lacks what lay beside it: nothing else is said of it then. */
  readonly damaged: boolean;
  /** On the ladder in all of its visits, ms. */
  readonly ladder: number | undefined;
  /** A finding of the site says that its signal is weaker than it was left. */
  readonly drifting: boolean;
  /** Light lost since the first visit that left a signal, dB; undefined where that cannot be compared. */
  readonly lost: number | undefined;
  readonly due: number | undefined;
  /** Of the latest visit, and of the site about this pair; each once, with its most serious grade. */
  readonly findings: readonly { readonly id: FindingId | SiteFindingId; readonly severity: Severity }[];
}

/** By these findings of a site a pair counts as drifting. */
export const DRIFTS: readonly SiteFindingId[] = ['weaker-since', 'signal-limit', 'signal-falling'];

/** `visits`: oldest first; undefined where any of them is damaged. `about`: the site's findings about this pair. */
export function pairFigures(
  pair: PairId,
  count: number,
  visits: readonly VisitSummary[] | undefined,
  about: readonly SiteFinding[],
): PairFigures {
  const last = visits?.at(-1);
  const times = (visits ?? []).flatMap(({ ladder }) => ladder ?? []);
  const history = signalHistory((visits ?? []).map(outcomeOf));
  return {
    pair,
    head: last?.head,
    visits: count,
    damaged: visits === undefined,
    ladder: times.length > 0 ? times.reduce((sum, time) => sum + time, 0) : undefined,
    drifting: about.some(({ id }) => DRIFTS.includes(id)),
    lost: history.length > 1 ? history.at(-1)?.lost : undefined,
    due: last?.due,
    findings: onceEach([...(last?.findings ?? []), ...about]),
  };
}

const GRADES: readonly Severity[] = ['note', 'question', 'serious'];

function onceEach(found: readonly Pick<PairFigures['findings'][number], 'id' | 'severity'>[]) {
  const most = new Map<FindingId | SiteFindingId, Severity>();
  for (const { id, severity } of found) {
    const known = most.get(id);
    if (!known || GRADES.indexOf(severity) > GRADES.indexOf(known)) most.set(id, severity);
  }
  return [...most].map(([id, severity]) => ({ id, severity }));
}
