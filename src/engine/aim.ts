import type { Action } from '../advice.ts';
import { type Axis, otherAxis } from '../turns.ts';
import { shortfallDb, sides } from './accept.ts';
import { type Beam, pointingOf } from './beam.ts';
import type { RuleId } from './rules.ts';
import type { Sample } from './search.ts';
import { LASHES, screwFor } from './slack.ts';
import { figure, type Told, tell, turnBy } from './tell.ts';
import type { View } from './view.ts';

/** First turn on an adjuster of which nothing is known, eighths. */
const FIRST_TURN = 6;
/** Side readings are best taken about where the beam has fallen to half. dB. */
const SIDE_DB = 3;
/** An adjuster's peak is known when its uncertainty costs no more than this. dB. */
const KNOWN_DB = 0.1;
/** A turn that gains less than this is not worth making. dB. */
const WORTH_DB = 0.05;

/** Uncertainty of an adjuster's peak, as the loss it may cost. dB. */
const doubtDb = (beam: Beam, axis: Axis): number => beam.curvature[axis].value * beam.peak[axis].sd ** 2;

const sideDistance = (beam: Beam, axis: Axis): number => Math.sqrt(SIDE_DB / beam.curvature[axis].value);

/** Turns towards a pointing, taking up the lash on the way. */
function towards(view: View, beam: Beam, axis: Axis, target: number): Action | undefined {
  const { search } = view;
  const lash = beam.lash[axis];
  const now = search.pointing[axis][lash] ?? search.turned[axis];
  return turnBy(view, axis, screwFor(target, now, LASHES[lash] ?? 0) - search.turned[axis]);
}

/** Finds each adjuster's peak in turn, the one in hand first. */
export function locate(view: View): Told | undefined {
  const { search, beam, here } = view;
  if (!here) return undefined;
  for (const axis of [search.axis, otherAxis(search.axis)]) {
    const told = beam ? locateAxis(view, beam, axis) : probe(view, axis, FIRST_TURN);
    if (told) return told;
  }
  return undefined;
}

function probe(view: View, axis: Axis, size: number): Told | undefined {
  const way = view.search.lastTurn[axis] || 1;
  const action = turnBy(view, axis, way * size) ?? turnBy(view, axis, -way * size);
  return action && tell('find-slope', action, [view.here]);
}

function locateAxis(view: View, beam: Beam, axis: Axis): Told | undefined {
  if (doubtDb(beam, axis) <= KNOWN_DB) return undefined;
  const { samples, here } = view;
  const { value: at, sd } = beam.peak[axis];
  const places = samples.map((s) => pointingOf(s, axis, beam.lash));
  const spread = Math.max(...places) - Math.min(...places);
  if (spread < 2) return probe(view, axis, FIRST_TURN);
  const step = sideDistance(beam, axis);
  const isBelow = places.some((x) => x < at - step / 3);
  const isAbove = places.some((x) => x > at + step / 3);
  const target = isBelow && isAbove ? at : isBelow ? at + step : at - step;
  const action = towards(view, beam, axis, target);
  if (action?.kind !== 'turn') return undefined;
  const figures = { fittedPeak: figure(at), uncertainty: figure(sd) };
  const rule: RuleId =
    isBelow && isAbove ? 'peak-adjuster' : action.reversal ? 'reverse-on-fall' : 'pass-the-peak';
  return tell(rule, action, [...samples.slice(-3), here], figures);
}

/** At the final gain: a lower reading on each side of each peak, then back to the peak. */
export function prove(view: View): Told | undefined {
  const { search, beam, here } = view;
  if (!beam || !here) return undefined;
  for (const axis of [search.axis, otherAxis(search.axis)]) {
    const told = proveAxis(view, beam, here, axis);
    if (told) return told;
  }
  return undefined;
}

function proveAxis(view: View, beam: Beam, here: Sample, axis: Axis): Told | undefined {
  const { search, samples } = view;
  const { value: at } = beam.peak[axis];
  const off = pointingOf(here, axis, beam.lash) - at;
  const back = towards(view, beam, axis, at);
  const isThere = !back || beam.curvature[axis].value * off * off < WORTH_DB;
  const turned = isThere || back.kind !== 'turn' ? here.turned[axis] : here.turned[axis] + back.eighths;
  const { below, above } = sides(samples, { gain: here.gain, turned }, axis);
  if (below && above) return undefined;
  const figures = { peak: figure(at) };
  // The line these side readings lie on needs a reading at the peak itself.
  const line = samples.filter(
    (s) => s.gain === here.gain && s.turned[otherAxis(axis)] === search.turned[otherAxis(axis)],
  );
  const centre = line.findLast((s) => s.level.kind === 'level' && Math.abs(s.turned[axis] - turned) <= 1);
  if (!centre) return back && tell('return-to-peak', back, [here], figures);
  const way = !below && (above || here.turned[axis] <= turned) ? -1 : 1;
  // A reading already taken on that side and not lower was taken too near.
  const tried = Math.max(0, ...line.map((s) => way * (s.turned[axis] - turned)));
  const step = Math.max(2, Math.min(sideDistance(beam, axis), search.adjusters.maxStep), 1.5 * tried);
  const action = turnBy(view, axis, turned + way * step - here.turned[axis]);
  return action && tell('prove-peak', action, [centre, below, above], figures);
}

function goToPeak(view: View, beam: Beam, axis: Axis): Told | undefined {
  const { here } = view;
  const { value: at, sd } = beam.peak[axis];
  const off = here ? pointingOf(here, axis, beam.lash) - at : 0;
  if (beam.curvature[axis].value * off * off < WORTH_DB) return undefined;
  const action = towards(view, beam, axis, at);
  const figures = { fittedPeak: figure(at), uncertainty: figure(sd) };
  return action && tell('return-to-peak', action, [here], figures);
}

/** Both peaks are proven and the emitter still stands off one: go there. */
export function settleOnPeak(view: View): Told | undefined {
  const { beam, here, search } = view;
  if (!beam || !here || shortfallDb(beam, here) < WORTH_DB) return undefined;
  return goToPeak(view, beam, search.axis) ?? goToPeak(view, beam, otherAxis(search.axis));
}
