import { type Along, alongAxis } from '../../src/charts/along.ts';
import { type Series, series } from '../../src/log/series.ts';
import type { Entry } from '../../src/model/entry.ts';
import { AXES, type Axis } from '../../src/model/turns.ts';
import { exchange, type Passage } from '../../src/record/exchange.ts';
import type { VisitRecord } from '../../src/record/visit-record.ts';
import { searchOf } from '../../src/visit/search.ts';
import { EMPTY, fold, type JobState } from '../../src/visit/state.ts';

/** What the charts and the exchange show of a log up to one of its entries. Plain data: a worker can hand it over. */
export interface Moment {
  readonly series: Series;
  readonly along: Readonly<Record<Axis, Along>>;
  readonly passages: readonly Passage[];
}

/** The end of a log. */
export const momentOf = ({ entries, series, state }: VisitRecord): Moment => worked(entries, series, state);

/** After its first `count` entries. */
export function momentAfter(entries: readonly Entry[], count: number): Moment {
  const until = entries.slice(0, count);
  return worked(until, series(until), until.reduce(fold, EMPTY));
}

function worked(entries: readonly Entry[], series: Series, state: JobState): Moment {
  const search = searchOf(state);
  const along = Object.fromEntries(AXES.map((axis) => [axis, alongAxis(series, search, axis)]));
  return { series, along: along as Record<Axis, Along>, passages: exchange(entries, state.setup?.meter) };
}
