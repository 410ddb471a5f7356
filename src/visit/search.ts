import type { History, SearchEvent } from '../engine/history.ts';
import { observe } from '../engine/observe.ts';
import { type Search, startSearch } from '../engine/search.ts';
import { hasNoNumbers } from '../model/alone.ts';
import { LIGHT_SEEN, NO_SIGNAL, type Reading, SATURATED } from '../model/reading.ts';
import type { Commission } from './commission.ts';
import { countedOf, type JobState } from './state.ts';

/** Apart from the fold, so that a phone that only shows what the log says needs nothing of the engine. */

/** The search after an event, and after which earlier one that was known. */
interface Searched {
  readonly search: Search;
  readonly base: History | undefined;
}
const SEARCHES = new WeakMap<History, Searched>();

/**
 * What the engine makes of everything that was reported; undefined before the job is opened. Worked out when it is asked
 * for, and once: it goes on from the search before where it can, so that a message costs the same in a long job as in a
 * short one. Only the newest search and the one it was made from are kept.
 */
export function searchOf({ setup, history }: Pick<JobState, 'setup' | 'history'>): Search | undefined {
  if (!setup) return undefined;
  const since: SearchEvent[] = [];
  let base = history;
  for (; base && !SEARCHES.has(base); base = base.before) since.push(base.event);
  const before = base && SEARCHES.get(base);
  if (before && since.length === 0) return before.search;
  const begun = startSearch(setup.meter, setup.adjusters, {
    wasAligned: setup.scope === 'periodic',
    walks: setup.alone === 'walking',
    byTrends: hasNoNumbers(setup.alone),
  });
  const search = since.reduceRight(observe, before?.search ?? begun);
  if (history) SEARCHES.set(history, { search, base });
  if (before?.base) SEARCHES.delete(before.base);
  return search;
}

/** What was shown last, as an acceptance takes it down. Where no number is read: whether there was light. */
export function shownLast(state: Pick<JobState, 'setup' | 'history' | 'reading'>): Reading | undefined {
  const looks = searchOf(state)?.looks;
  if (!looks) return state.reading?.reading;
  switch (looks.at(-1)?.seen) {
    case undefined:
      return undefined;
    case 'nothing':
      return NO_SIGNAL;
    case 'too-strong':
      return SATURATED;
    default:
      return LIGHT_SEEN;
  }
}

/** The part that the commissioning is judged by; undefined before the job is opened. */
export function commissionOf(state: JobState): Commission | undefined {
  const { setup, issues, signed } = state;
  const search = searchOf(state);
  return setup && search && { setup, search, counted: countedOf(state), issues, ...(signed && { signed }) };
}
