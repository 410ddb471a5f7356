import type { Action } from '../model/advice.ts';
import { type Axis, otherAxis } from '../model/turns.ts';
import { isSeenClose, sides } from './accept.ts';
import { advice, figure, type TimedAdvice, turnBy } from './advice.ts';
import { type Beam, CLOSE, doubtDb, halfWidth, lossDb, nearPeak, sideDistance } from './beam.ts';
import { higherReading, isKnownLower } from './compare.ts';
import { stepTo } from './hunt.ts';
import { pointingOf } from './parabola.ts';
import type { RuleId } from './rules.ts';
import type { Sample } from './sample.ts';
import { BACKLASHES, screwFor } from './slack.ts';
import type { View } from './view.ts';

/** First turn of an adjuster when nothing is known about it, eighths. */
const FIRST_TURN = 6;
/** An adjuster's peak is known if its uncertainty costs no more than this. dB. */
const KNOWN_DB = 0.06;
/** So far below the peak of one adjuster the other is not searched. dB. */
const FAR_DOWN_DB = 3;
/** A turn that gains less is not worth making. dB. */
const WORTH_DB = 0.03;

/** The screw position that points the emitter at `target`, with the backlash taken up on the way. */
function screwAt({ search }: View, beam: Beam, axis: Axis, target: number): number {
  const backlash = beam.backlash[axis];
  const now = search.pointing[axis][backlash] ?? search.turned[axis];
  return Math.round(screwFor(target, now, BACKLASHES[backlash] ?? 0));
}

const turnTo = (view: View, axis: Axis, screw: number): Action | undefined =>
  turnBy(view, axis, screw - view.search.turned[axis]);

/** Finds the peak of each adjuster, starting with the current one. */
export function locate(view: View): TimedAdvice | undefined {
  const { search, beam, here } = view;
  if (!here) return undefined;
  for (const axis of [search.axis, otherAxis(search.axis)]) {
    const given = beam ? (bestFirst(view, beam, axis) ?? locateAxis(view, beam, axis)) : probe(view, axis);
    if (given) return given;
  }
  return undefined;
}

/** The second adjuster is searched from the peak of the first: far down its flank a number tells less. */
function bestFirst(view: View, beam: Beam, axis: Axis): TimedAdvice | undefined {
  const { search, here } = view;
  const first = otherAxis(axis);
  if (!here || axis === search.axis || doubtDb(beam, axis) <= KNOWN_DB) return undefined;
  if (lossDb(beam, here, first) < FAR_DOWN_DB) return undefined;
  const action = turnTo(view, first, peakScrew(view, beam, here, first));
  const { value, sd } = beam.peak[first];
  const figures = { fittedPeak: figure(value), uncertainty: figure(sd) };
  return action && advice('return-to-peak', action, [here], figures);
}

/** A first turn, to learn which way the signal rises. */
function probe(view: View, axis: Axis): TimedAdvice | undefined {
  const way = view.search.lastTurn[axis] || 1;
  const action = turnBy(view, axis, way * FIRST_TURN) ?? turnBy(view, axis, -way * FIRST_TURN);
  return action && advice('find-slope', action, [view.here]);
}

function locateAxis(view: View, beam: Beam, axis: Axis): TimedAdvice | undefined {
  if (doubtDb(beam, axis) <= KNOWN_DB) return undefined;
  const { samples, here, search } = view;
  const { value: peak, sd } = beam.peak[axis];
  const places = samples.map((s) => pointingOf(s, axis, beam.backlash));
  if (Math.max(...places) - Math.min(...places) < 2) return probe(view, axis);
  const half = halfWidth(beam, axis);
  const isBelow = places.some((x) => x < peak - half / 3);
  const isAbove = places.some((x) => x > peak + half / 3);
  const far = [peak + half, peak - half];
  const targets = isBelow && isAbove ? [peak, ...far] : isBelow ? far : far.reverse();
  const line = samples.filter(
    (s) => s.gain === here?.gain && s.turned[otherAxis(axis)] === search.turned[otherAxis(axis)],
  );
  const isNew = (screw: number) => !line.some((s) => Math.abs(s.turned[axis] - screw) < 1);
  const screw = targets.map((target) => screwAt(view, beam, axis, target)).find(isNew);
  const action = screw === undefined ? undefined : turnTo(view, axis, screw);
  if (action?.kind !== 'turn') return undefined;
  const figures = { fittedPeak: figure(peak), uncertainty: figure(sd) };
  const rule: RuleId =
    isBelow && isAbove ? 'peak-adjuster' : action.reversal ? 'reverse-on-fall' : 'pass-the-peak';
  return advice(rule, action, [...samples.slice(-3), here], figures);
}

/** At the final gain: a lower reading on each side of each peak, then back to the peak. */
export function prove(view: View): TimedAdvice | undefined {
  const { search, beam, here } = view;
  if (!beam || !here) return undefined;
  for (const axis of [search.axis, otherAxis(search.axis)]) {
    const given = proveAxis(view, beam, here, axis);
    if (given) return given;
  }
  return undefined;
}

/** The position of a screw for its peak; its present position, if that is good enough. */
function peakScrew(view: View, beam: Beam, here: Sample, axis: Axis): number {
  if (lossDb(beam, here, axis) < WORTH_DB) return here.turned[axis];
  const screw = screwAt(view, beam, axis, beam.peak[axis].value);
  return isKnownLower(view.samples, here, { ...here.turned, [axis]: screw }) ? here.turned[axis] : screw;
}

function proveAxis(view: View, beam: Beam, here: Sample, axis: Axis): TimedAdvice | undefined {
  const { search, samples } = view;
  const { value: peak, sd } = beam.peak[axis];
  const turned = {
    horizontal: peakScrew(view, beam, here, 'horizontal'),
    vertical: peakScrew(view, beam, here, 'vertical'),
  };
  const screw = turned[axis];
  const place = { gain: here.gain, turned };
  const { below, above } = sides(view, place, axis);
  const isBracketed = below !== undefined && above !== undefined;
  if (isBracketed && isSeenClose(view, place, axis)) return undefined;
  const figures = { fittedPeak: figure(peak), uncertainty: figure(sd) };
  const other = otherAxis(axis);
  if (Math.abs(here.turned[other] - turned[other]) > nearPeak(beam, other)) {
    const back = turnTo(view, other, turned[other]);
    if (back)
      return advice('return-to-peak', back, [here], {
        fittedPeak: figure(beam.peak[other].value),
        uncertainty: figure(beam.peak[other].sd),
      });
  }
  if (isBracketed) {
    const way = here.turned[axis] >= screw ? 1 : -1;
    const action = turnTo(view, axis, screw + way * nextToPeak(beam, axis));
    return action && advice('prove-peak', action, [here, below, above], figures);
  }
  // The line of these side readings needs a reading at the peak itself.
  const line = samples.filter(
    (s) => s.gain === here.gain && s.turned[otherAxis(axis)] === search.turned[otherAxis(axis)],
  );
  const centre = line.findLast((s) => s.level.kind === 'level' && Math.abs(s.turned[axis] - screw) <= 1);
  if (!centre) {
    const back = turnTo(view, axis, screw);
    return back && advice('return-to-peak', back, [here], figures);
  }
  const way = !below && (above || here.turned[axis] <= screw) ? -1 : 1;
  // A reading on that side that is not lower was taken too near.
  const tried = Math.max(0, ...line.map((s) => way * (s.turned[axis] - screw)));
  const wide = sideDistance(beam, axis, search.adjusters.maxStep);
  const step = tried < wide ? wide : 1.5 * tried;
  const side = screw + way * Math.round(step);
  // Too far for one turn of the hand: stop next to the peak, where a reading shows its place better than at
  // the peak itself.
  const stop = screw - way * nextToPeak(beam, axis);
  const isCrossing = Math.abs(side - here.turned[axis]) > search.adjusters.maxStep;
  const isBefore = way * (stop - here.turned[axis]) > 1;
  const action = turnTo(view, axis, isCrossing && isBefore ? stop : side);
  return action && advice('prove-peak', action, [centre, below, above], figures);
}

/** On the way past the peak, a reading at this distance shows its place best. Eighths. */
const nextToPeak = (beam: Beam, axis: Axis): number =>
  Math.max(CLOSE, Math.min(4, Math.round(halfWidth(beam, axis) / 3)));

/** Both peaks are proven but the emitter is not at one of them: go there. */
export function returnToPeak(view: View): TimedAdvice | undefined {
  const { beam, here, search } = view;
  if (!beam || !here) return undefined;
  for (const axis of [search.axis, otherAxis(search.axis)]) {
    const { value, sd } = beam.peak[axis];
    const action = turnTo(view, axis, peakScrew(view, beam, here, axis));
    const figures = { fittedPeak: figure(value), uncertainty: figure(sd) };
    if (action) return advice('return-to-peak', action, [here], figures);
  }
  // A place with a higher reading counts more than the fit: it is read again.
  const higher = higherReading(view.samples, here);
  const action = higher && stepTo(view, higher.turned);
  return action && advice('return-to-peak', action, [higher, here]);
}
