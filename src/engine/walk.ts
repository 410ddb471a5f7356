import { AXES, type Axis, otherAxis } from '../model/turns.ts';
import { SHORTFALL_ALLOWED_DB } from './accept.ts';
import { advice, figure, type TimedAdvice, type TurnAction, turnBy } from './advice.ts';
import { type Beam, doubtDb, halfWidth, lossDb, shortfallDb, sideReach } from './beam.ts';
import { peakOutOfBand } from './gain.ts';
import { recoverSignal } from './hunt.ts';
import { pointingOf } from './parabola.ts';
import { isSamePlace } from './place.ts';
import type { RuleId } from './rules.ts';
import type { PerAxis, Sample } from './sample.ts';
import { BACKLASHES, follow, screwFor } from './slack.ts';
import type { View } from './view.ts';
import { foretold, isAsForetold, NEARER, unseenSide, walkedSides } from './walked.ts';

/**
 * The search of a person who walks to the meter for every number. What counts is how often they go, not how often they turn:
 * so both adjusters are turned on one trip, each place is chosen where its number tells most, and the card is put up on the way to
 * the peak.
 */

/** Where the next trip's number is read. */
export interface Destination {
  readonly rule: RuleId;
  readonly spot: PerAxis<number>;
  readonly axis?: Axis;
  /** The peak: the card goes up there before the meter is read. */
  readonly isPeak?: boolean;
}

/** The first place beside the aim, when nothing is known: eighths. */
const FIRST = 11;
/** A side is read where the light is this much lower, if it is far enough out: there its number tells most. dB. */
const SIDE_DB = 4.5;
/** So uncertain, nothing is known of a peak: eighths. */
const UNKNOWN = 15;
/** The first step on the second adjuster: this much lower, if the light is as wide there, and no farther. dB, eighths. */
const FAR_DB = 9;
const FARTHEST = 13;
/** The first side is so much lower on wide light, and on light that shows little of its shape so far out. dB. */
const WIDE_DB = 4;
const STEEP_DB = 7;
/** A side is read so much farther out than it must be, for the peak may yet be found a little beside. Eighths. */
const SPARE = 2;
/** An aim by eye misses the peak by about so much, and one side alone leaves it so uncertain. Eighths; estimates of our own, no source. */
const AIM_SD = 4;
const ONE_SIDED_SD = 2;
/** A turn that gains less is not worth making. dB. */
const WORTH_DB = 0.03;

export function destination(view: View): Destination | undefined {
  const { here, beam, search } = view;
  if (!here) return undefined;
  // One after the other: the sides of the second are read along the peak of the first.
  const axes = AXES.filter((axis) => !search.stuck[axis]);
  if (!beam) return { rule: 'find-slope', spot: beside(view, here.turned, axes[0] ?? search.axis, FIRST) };
  const peak = isGoodEnough(view, beam, here) ? here.turned : peakOf(view, beam, here);
  const at = standing(here, peak);
  for (const axis of axes) {
    const spot = lackingSide(view, beam, at, axis);
    if (spot) return { rule: 'prove-peak', spot, axis };
  }
  if (shortfallDb(beam, at) > SHORTFALL_ALLOWED_DB) {
    const [axis] = [...AXES].sort((a, b) => doubtDb(beam, b) - doubtDb(beam, a));
    const spot = axis && nextTo(view, beam, at, axis);
    if (spot) return { rule: 'peak-adjuster', spot, axis };
  }
  const isThere = isSamePlace(peak, here.turned);
  const top = isThere ? here : foretold(view, at);
  for (const axis of axes) {
    const side = unseenSide(view, top, axis);
    const spot = side && nextTo(view, beam, at, axis, side);
    if (spot) return { rule: 'peak-adjuster', spot, axis };
  }
  const unsure = isThere && !isAsForetold(view, here) ? axes[0] : undefined;
  const spot = unsure && nextTo(view, beam, at, unsure);
  if (unsure && spot) return { rule: 'peak-adjuster', spot, axis: unsure };
  return isThere ? undefined : { rule: 'return-to-peak', spot: peak, isPeak: true };
}

/** Nothing that the screws must prove is missing here: another place is not worth a walk. */
const isGoodEnough = (view: View, beam: Beam, here: Sample): boolean =>
  shortfallDb(beam, here) <= SHORTFALL_ALLOWED_DB &&
  AXES.every((axis) => {
    const { below, above } = walkedSides(view, here, axis);
    return below !== undefined && above !== undefined;
  });

/** Turns toward the place of the next number, one adjuster at a time; the number is read when both are there. */
export function walkOn(view: View): TimedAdvice | undefined {
  const { beam, here, samples } = view;
  const to = destination(view);
  const action = to && turnToward(view, to.spot);
  if (!to || !action) return undefined;
  const known = to.axis && beam ? beam.peak[to.axis] : undefined;
  const figures = {
    ...(known && { fittedPeak: figure(known.value), uncertainty: figure(known.sd) }),
    turnsOnTrip: turnsToward(view, to.spot),
    ...(to.isPeak && { cardOnTrip: 1 }),
  };
  return advice(to.rule, action, [...samples.slice(-3), here], figures);
}

type Standing = Pick<View, 'search'>;

const turnToward = (at: Standing, spot: PerAxis<number>): TurnAction | undefined =>
  clockwise(at, 'horizontal', spot) ?? clockwise(at, 'vertical', spot);

/** So many turns at most lead anywhere. */
const MOST_TURNS = 40;

/** How many turns of the hand lead there: told before the trip. */
function turnsToward({ search }: Standing, spot: PerAxis<number>): number {
  let at = search;
  for (let turns = 0; turns < MOST_TURNS; turns++) {
    const turn = turnToward({ search: at }, spot);
    if (!turn) return turns;
    const { axis, eighths } = turn;
    const turned = { ...at.turned, [axis]: at.turned[axis] + eighths };
    const pointing = { ...at.pointing, [axis]: follow(at.pointing[axis], turned[axis]) };
    at = { ...at, turned, pointing };
  }
  return MOST_TURNS;
}

/** The gain is set beside the meter, for the number that the peak will read: just before the walk to it. */
export const beforeThePeak = (view: View): TimedAdvice | undefined =>
  destination(view)?.isPeak ? peakOutOfBand(view) : undefined;

/** All four sides of a narrow beam may be dark, one after the other: only one place more says that the light is lost. */
const MOST_DARK = 5;
export const lostOnTheWay = (view: View): TimedAdvice | undefined =>
  view.samples.length >= MOST_DARK &&
  view.samples.slice(-MOST_DARK).every(({ level }) => level.kind === 'below')
    ? recoverSignal(view)
    : undefined;

/** More backlash than this no usual screw has: it is taken up on the way to each place. Eighths; common practice, no source. */
const LASH = 4;
const TAKEN_UP = BACKLASHES.indexOf(LASH);

/**
 * The next turn of one adjuster toward a place, which is always reached clockwise: so no number rests on how much backlash the screws
 * have, which few numbers could not tell.
 */
function clockwise({ search }: Standing, axis: Axis, spot: PerAxis<number>): TurnAction | undefined {
  const at = search.turned[axis];
  const isTakenUp = search.pointing[axis][TAKEN_UP] === at - LASH / 2;
  if (isTakenUp && at === spot[axis]) return undefined;
  const before = spot[axis] - LASH - 1;
  const to = at <= before || (isTakenUp && at < spot[axis]) ? spot[axis] : before;
  return turnBy({ search }, axis, to - at) ?? turnBy({ search }, axis, spot[axis] - at);
}

/** The reading here, as it would be taken elsewhere. */
const standing = (here: Sample, spot: PerAxis<number>): Sample => ({
  ...here,
  turned: spot,
  pointing: {
    horizontal: follow(here.pointing.horizontal, spot.horizontal),
    vertical: follow(here.pointing.vertical, spot.vertical),
  },
});

const clamped = ({ search }: View, axis: Axis, screw: number): number =>
  search.stuck[axis]
    ? search.turned[axis]
    : Math.max(search.limits[axis].low, Math.min(search.limits[axis].high, Math.round(screw)));

/** Where both screws stand at their peaks, as far as they are known. */
function peakOf(view: View, beam: Beam, here: Sample): PerAxis<number> {
  const along = (axis: Axis): number => {
    if (lossDb(beam, here, axis) < WORTH_DB) return here.turned[axis];
    const slack = BACKLASHES[beam.backlash[axis]] ?? 0;
    return clamped(view, axis, screwFor(beam.peak[axis].value, pointingOf(here, axis, beam.backlash), slack));
  };
  return { horizontal: along('horizontal'), vertical: along('vertical') };
}

const beside = (view: View, at: PerAxis<number>, axis: Axis, by: number): PerAxis<number> => {
  const there = clamped(view, axis, at[axis] + by);
  return { ...at, [axis]: there === at[axis] ? clamped(view, axis, at[axis] - by) : there };
};

/** A side of the peak along this adjuster that was not yet seen to be lower: where it is read. */
function lackingSide(view: View, beam: Beam, at: Sample, axis: Axis): PerAxis<number> | undefined {
  const { below, above } = walkedSides(view, at, axis);
  if (below && above) return undefined;
  const places = view.samples.map((s) => pointingOf(s, axis, beam.backlash));
  const isFirst = Math.max(...places) - Math.min(...places) < FIRST / 2;
  const center = isFirst ? at.turned[axis] : below || above ? at.turned[axis] : likelyAt(view, beam, axis);
  const middle = (Math.max(...places) + Math.min(...places)) / 2;
  const way = below ? 1 : above ? -1 : middle > center ? -1 : 1;
  let by = isFirst ? firstStep(beam, axis) : Math.round(nextStep(view, beam, axis));
  // A reading on that side that is not lower was taken too near.
  const isRead = (spot: PerAxis<number>) => view.samples.some((s) => isSamePlace(s.turned, spot));
  for (let tries = 0; tries < 4; tries++, by = Math.ceil(1.4 * by)) {
    const spot = beside(view, { ...at.turned, [axis]: Math.round(center) }, axis, way * by);
    if (!isRead(spot)) return spot;
  }
  return undefined;
}

/** The first place beside the aim; farther out where the other adjuster has shown that the light is wide. */
function firstStep(beam: Beam, axis: Axis): number {
  const other = otherAxis(axis);
  const isKnown = beam.peak[other].sd < UNKNOWN;
  return isKnown
    ? Math.round(Math.max(FIRST, Math.min(FARTHEST, Math.sqrt(FAR_DB / beam.curvature[other].value))))
    : FIRST;
}

/**
 * The second place, on the other side. Near, where the first was so far down that it shows little of the light's shape; far out where
 * it was hardly lower: the light is wide there, and one side of it misplaces the peak most.
 */
function nextStep({ here, samples, search }: View, beam: Beam, axis: Axis): number {
  const reach = sideReach(beam, axis, search.adjusters.maxStep);
  const best = Math.max(
    ...samples.map(({ level }) => (level.kind === 'level' ? level.db : Number.NEGATIVE_INFINITY)),
  );
  const fallen = here?.level.kind === 'level' ? best - here.level.db : Number.POSITIVE_INFINITY;
  if (fallen > STEEP_DB) return reach * NEARER + SPARE;
  const farthest = reach + 3 * SPARE;
  return fallen < WIDE_DB
    ? farthest
    : Math.min(farthest, Math.max(reach + SPARE, Math.sqrt(SIDE_DB / beam.curvature[axis].value)));
}

/** Where the peak is while only one side of it was read: between what the readings say and the aim, which the eye made near it. */
function likelyAt({ search }: View, beam: Beam, axis: Axis): number {
  const { value, sd } = beam.peak[axis];
  if (search.restarts > 0 || search.aims === 0) return value;
  const spread = Math.max(sd, ONE_SIDED_SD);
  return (value * AIM_SD ** 2) / (AIM_SD ** 2 + spread ** 2);
}

/** Both sides are lower, and the peak between them is not known well enough: a place next to it. */
function nextTo(
  view: View,
  beam: Beam,
  at: Sample,
  axis: Axis,
  side: -1 | 1 = 1,
): PerAxis<number> | undefined {
  const by = Math.max(2, Math.round(0.8 * halfWidth(beam, axis)));
  return [by * side, -by * side, 2 * by * side, -2 * by * side]
    .map((off) => beside(view, at.turned, axis, off))
    .find((spot) => !view.samples.some((s) => isSamePlace(s.turned, spot)));
}
