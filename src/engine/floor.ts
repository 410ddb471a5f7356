import { type Axis, type Eighths, otherAxis } from '../model/turns.ts';
import { advice, type TimedAdvice, turnBy } from './advice.ts';
import { higherReading } from './compare.ts';
import { outOfBand } from './gain.ts';
import { stepTo } from './hunt.ts';
import {
  brightest,
  isTakenUp,
  lacking,
  lag,
  lineThrough,
  PITCH,
  provenLine,
  readLine,
  SIDE,
  SLACK,
  trusted,
} from './line.ts';
import { CAUSES } from './rules.ts';
import type { Sample } from './sample.ts';
import type { View } from './view.ts';

/** It has not ended after so many turns: more than plain practice needs in 95 of 100 (measured by the bench). */
const MOST_TURNS = 80;

/** Along a line so far below the brightest place nothing is proven: back to that place first. dB. */
const FAR_BELOW_DB = 6;

/**
 * The search that needs no model of the beam: one adjuster at a time, every place reached clockwise, until a lower
 * settled reading stands on each side of the middle of the light. It takes over where the fit has led to no end.
 */
export function plainSearch(view: View): TimedAdvice | undefined {
  const { search, here } = view;
  if (!here || !search.floor) return undefined;
  const isProven = (axis: Axis) => provenLine(search, here, axis) !== undefined;
  const axes = [search.axis, otherAxis(search.axis)].filter((axis) => !isProven(axis));
  const [axis] = axes;
  const isTooLong = search.moves - search.floor.moves > MOST_TURNS;
  if (axis === undefined && !higherReading(search.samples, here)) return undefined;
  if (isTooLong) return noSinglePeak(here);
  if (axis === undefined) return brighterElsewhere(view, here);
  const samples = trusted(search, here);
  const top = brightest(samples);
  if (top?.level.kind !== 'level') return advice('begin-again', { kind: 're-aim' }, [here]);
  const line = lineThrough(samples, here, axis);
  const inLine = brightest(line);
  const isDim =
    top.level.db - (inLine?.level.kind === 'level' ? inLine.level.db : Number.NEGATIVE_INFINITY) >
    FAR_BELOW_DB;
  const back = isDim ? stepTo(view, top.turned) : undefined;
  if (back) return advice('plain-search', back, [top, here]);
  // The gain is set before the lines that count are read.
  if (axes.length === 1 || line.length === 1) {
    const gain = outOfBand(view);
    if (gain?.advice.action.kind === 'gain' && (!inLine || inLine === here)) return gain;
  }
  return along(view, here, line, axis) ?? noSinglePeak(here);
}

const noSinglePeak = (here: Sample): TimedAdvice =>
  advice('no-single-peak', { kind: 'check', causes: [...CAUSES.noPeak] }, [here]);

/** The next turn along one line: to the next place it lacks, else to its middle. */
function along(view: View, here: Sample, line: readonly Sample[], axis: Axis): TimedAdvice | undefined {
  const read = readLine(line, axis);
  const start = brightest(line)?.turned[axis] ?? here.turned[axis];
  const wanted = read
    ? lacking(read, axis)
    : [start - SIDE, start - PITCH, start, start + PITCH, start + SIDE];
  const seen = (place: Eighths) => line.some((s) => s.turned[axis] === place && isTakenUp(s, axis));
  const left = wanted.filter((place) => !seen(place));
  // Clockwise places come first: going back costs the backlash.
  const ahead = left.find((place) => isReached(here, axis, place));
  const place = ahead ?? left[0] ?? read?.middle;
  if (place === undefined) return undefined;
  const action = turnBy(view, axis, clockwiseTo(here, axis, place));
  return action && advice('plain-search', action, [read?.best, here]);
}

/** One turn clockwise leads there, with the backlash taken up. */
const isReached = (here: Sample, axis: Axis, place: Eighths): boolean =>
  place > here.turned[axis] && place - here.turned[axis] >= SLACK / 2 - lag(here, axis);

/** The turn towards a place: straight where it is reached clockwise, else back beyond it. Eighths. */
const clockwiseTo = (here: Sample, axis: Axis, place: Eighths): Eighths =>
  (isReached(here, axis, place) ? place : place - SLACK) - here.turned[axis];

/** Both lines are proven, but a brighter place was read since the last aim by eye: it is read again. */
function brighterElsewhere(view: View, here: Sample): TimedAdvice | undefined {
  const higher = higherReading(view.search.samples, here);
  const action = higher && stepTo(view, higher.turned);
  return action && advice('plain-search', action, [higher, here]);
}
