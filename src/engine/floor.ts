import type { Action } from '../model/advice.ts';
import { AXES, type Axis, type Eighths, otherAxis } from '../model/turns.ts';
import { advice, type TimedAdvice, turnBy } from './advice.ts';
import { provenPlace, unreadAround } from './around.ts';
import { higherReading } from './compare.ts';
import { outOfBand } from './gain.ts';
import { stepTo } from './hunt.ts';
import {
  brightest,
  brightness,
  isTakenUp,
  lacking,
  lag,
  lineAt,
  PITCH,
  provenLine,
  readAtGain,
  SIDE,
  SLACK,
} from './line.ts';
import { noSinglePeak } from './restart.ts';
import type { Sample } from './sample.ts';
import type { View } from './view.ts';

/** Along a line so far below the brightest place nothing is proven: back to that place first. dB. */
const FAR_BELOW_DB = 6;

/**
 * The search that needs no model of the beam: one adjuster at a time, every place next to the peak reached clockwise,
 * until a lower settled reading stands on each side of the middle of the light; then a look around it.
 */
export function plainSearch(view: View): TimedAdvice | undefined {
  const { search, here } = view;
  if (!here || !search.floor) return undefined;
  const samples = readAtGain({ search, here });
  const axes = [search.axis, otherAxis(search.axis)].filter((axis) => !provenLine(samples, here, axis));
  const higher = higherReading(samples, here);
  const proven = provenPlace(search, here);
  const spot = proven && unreadAround(search, here, proven);
  if (axes.length === 0 && !higher && !spot) return undefined;
  const around = spot && stepTo(view, spot);
  if (around) return advice('light-around', around, [proven, here]);
  const home = proven && clockwiseBack(view, here, proven);
  if (home) return advice('plain-search', home, [proven, here]);
  const top = brightest(samples);
  if (top?.level.kind !== 'level') return advice('begin-again', { kind: 're-aim' }, [here]);
  const [axis] = axes;
  if (axis === undefined) {
    const back = higher && clockwiseBack(view, here, higher);
    return back && advice('plain-search', back, [higher, here]);
  }
  const line = lineAt(samples, here, axis);
  const read = brightest(samples.filter((s) => s.turned[otherAxis(axis)] === here.turned[otherAxis(axis)]));
  const isFarBelow = brightness(read ?? here) < brightness(top) - FAR_BELOW_DB;
  const back = isFarBelow ? stepTo(view, top.turned) : undefined;
  if (back) return advice('plain-search', back, [top, here]);
  // The gain is set before the lines that count are read.
  const isFirst = samples.every((s) => s.turned[axis] === here.turned[axis]) || axes.length === 1;
  const gain = isFirst && (!line || line.best === here) ? outOfBand(view) : undefined;
  if (gain?.advice.action.kind === 'gain') return gain;
  return along(view, here, samples, axis) ?? noSinglePeak(here);
}

/** The next turn along one line: to the next place it lacks, else to its middle. */
function along(view: View, here: Sample, samples: readonly Sample[], axis: Axis): TimedAdvice | undefined {
  const line = lineAt(samples, here, axis);
  const start = line?.middle ?? here.turned[axis];
  const wanted = line
    ? lacking(line, axis)
    : [start - SIDE, start - PITCH, start, start + PITCH, start + SIDE];
  const low = wanted.find((place) => place <= start - SIDE);
  // Clockwise places come first: going back costs the backlash. The side that is anticlockwise is read on the way back.
  const up = line?.isBelow && low !== undefined ? undefined : wanted.find((p) => isReached(here, axis, p));
  const place = up ?? low ?? wanted[0] ?? start;
  const by = place === low ? place - here.turned[axis] : clockwiseTo(here, axis, place);
  const action = turnBy(view, axis, by);
  return action && advice('plain-search', action, [line?.best, here]);
}

/** One turn clockwise leads there, with the backlash taken up. */
const isReached = (here: Sample, axis: Axis, place: Eighths): boolean =>
  place > here.turned[axis] && place - here.turned[axis] >= SLACK / 2 - lag(here, axis);

/** The turn towards a place: straight where it is reached clockwise, else back beyond it. Eighths. */
const clockwiseTo = (here: Sample, axis: Axis, place: Eighths): Eighths =>
  (isReached(here, axis, place) ? place : place - SLACK) - here.turned[axis];

/** The turn towards a place that is to be reached clockwise on both adjusters; none where it is. */
function clockwiseBack(view: View, here: Sample, to: Sample): Action | undefined {
  const axis = AXES.find((a) => here.turned[a] !== to.turned[a] || !isTakenUp(here, a));
  return axis && turnBy(view, axis, clockwiseTo(here, axis, to.turned[axis]));
}
