import type { Action } from '../model/advice.ts';
import { type Axis, otherAxis } from '../model/turns.ts';
import { type Belief, beliefOf, costAt, likelyHalfWidth, likelyPeak, outlook } from './belief.ts';
import { across, BESIDE, type Look } from './looks.ts';
import { ALLOWED_DB, APART, isTopped, lacksSides, RISK, SIDE_AT } from './proven.ts';
import type { Search } from './search.ts';
import { BACKLASHES } from './slack.ts';

/** One adjuster where only trends are seen: where its peak may lie, and where it is turned to find it and across it. */

/** The turn towards a place, as far as the hand and the screw go. */
export function turnTo(search: Search, axis: Axis, to: number): Action | undefined {
  if (search.stuck[axis]) return undefined;
  const { low, high } = search.limits[axis];
  const from = search.turned[axis];
  const most = search.adjusters.maxStep;
  const eighths = Math.max(-most, Math.min(most, Math.max(low, Math.min(high, to)) - from));
  if (eighths === 0) return undefined;
  const reversal = search.lastTurn[axis] !== 0 && Math.sign(eighths) !== search.lastTurn[axis];
  return { kind: 'turn', axis, eighths, reversal };
}

/** One adjuster on the line where the other one stands at `line`: where its peak may lie, and the best place within one turn. */
export interface Line {
  readonly axis: Axis;
  readonly line: number;
  readonly belief: Belief;
  readonly home: number;
  readonly risk: number;
}

export function lineOf(search: Search, looks: readonly Look[], here: Look, axis: Axis, line: number): Line {
  const belief = beliefOf(looks, axis, line);
  // As if turned there from far below, whichever way it came: so that the place does not change with the way to it.
  const below = { ...here, pointing: { ...here.pointing, [axis]: BACKLASHES.map(() => -FAR) } };
  const best = bestPlace(search, belief, axis, below);
  const { expected, risk } = costAt(belief, axis, below, best, ALLOWED_DB);
  const costOf = (look: Look) => costAt(belief, axis, below, look.turned[axis], ALLOWED_DB);
  const onLine = looks.filter((look) => Math.abs(look.turned[otherAxis(axis)] - line) <= 1);
  // The place that was turned across, as long as nothing speaks against it; else one that is as good and was looked at.
  const crossed = onLine.filter(
    (look) => isTopped(looks, look, axis) && costOf(look).risk <= Math.max(DOUBTFUL, risk),
  );
  const proven = crossed.filter((look) => lacksSides(looks, look, axis).length === 0);
  const asGood = onLine.filter((look) => {
    const cost = costOf(look);
    return cost.risk <= Math.max(RISK, risk) && cost.expected <= Math.max(AS_GOOD_DB, expected);
  });
  const known = [proven, crossed, asGood].find((places) => places.length > 0) ?? [];
  const home = (known.find(({ turned }) => turned[axis] === here.turned[axis]) ?? known.at(-1))?.turned[axis];
  return { axis, line, belief, home: home ?? best, risk };
}

/** Farther than any backlash. Eighths. */
const FAR = 1000;

/** A place that was turned across is given up when it is likelier than this to be too far off. */
const DOUBTFUL = 0.25;

/** Near enough to the middle: another place would not be brighter for the eye. dB. */
const AS_GOOD_DB = 0.1;

/** The places within one turn of the hand. */
function within(search: Search, axis: Axis): number[] {
  const { low, high } = search.limits[axis];
  const from = search.turned[axis];
  const most = search.adjusters.maxStep;
  return Array.from({ length: 2 * most + 1 }, (_, i) => from - most + i).filter(
    (to) => to >= low && to <= high,
  );
}

function bestPlace(search: Search, belief: Belief, axis: Axis, here: Look): number {
  let [best, least] = [here.turned[axis], Number.POSITIVE_INFINITY];
  for (const to of within(search, axis)) {
    const { expected, risk } = costAt(belief, axis, here, to, ALLOWED_DB);
    if (expected + risk < least) [best, least] = [to, expected + risk];
  }
  return best;
}

/**
 * Looks are made so far from where the peak seems to lie, or nearer: from there one turn of the hand leads to a place as
 * far on its other side, and two such places are told apart best. Eighths.
 */
const AROUND = 6;
/** On wide light farther out, for near its peak nothing is told apart: this share of its half-width. */
const AROUND_WIDE = 0.6;

/** The place around the likely peak whose look tells most of where it lies. */
export function mostTelling(search: Search, belief: Belief, axis: Axis, here: Look): number | undefined {
  const peak = likelyPeak(belief);
  const reach = within(search, axis).filter((to) => to !== here.turned[axis]);
  const around = Math.max(AROUND, AROUND_WIDE * likelyHalfWidth(belief));
  const near = reach.filter((to) => Math.abs(to - peak) <= around);
  if (near.length === 0) return peak < here.turned[axis] ? reach[0] : reach.at(-1);
  let [best, most] = [near[0], 0];
  for (const to of near) {
    const { tells } = outlook(belief, axis, here, to);
    if (tells > most) [best, most] = [to, tells];
  }
  return best;
}

/**
 * Across the peak in one direction: from far below it, with a stop on each side next to it and at it, to far above it. So
 * the slack of the screw is taken up at each of these places. Undefined: all this was seen.
 */
export function acrossTo(search: Search, looks: readonly Look[], line: Line, here: Look): number | undefined {
  const { axis, home } = line;
  const center = { ...here, turned: { ...here.turned, [axis]: home, [otherAxis(axis)]: line.line } };
  const off = here.turned[axis] - home;
  if (!isTopped(looks, center, axis)) {
    const before = looks.findLast(({ turned }) => turned[axis] !== here.turned[axis]);
    const isUpwards = before !== undefined && before.turned[axis] < here.turned[axis];
    if (isUpwards && Math.abs(off) <= 1 && across(looks, center, axis).up !== undefined) return home + BESIDE;
    if (isUpwards && Math.abs(off + BESIDE) <= 1) return home;
    return off <= -SIDE_AT ? home - BESIDE : farOn(search, line, here, -1);
  }
  const sides = lacksSides(looks, center, axis);
  const side = sides.find((each) => each === Math.sign(off)) ?? sides[0];
  return side && farOn(search, line, here, side);
}

/** Sure enough that the light will be seen to fall. */
const SURE_FALL = 0.97;

/** The nearest place on one side of the peak where the light falls for sure against it; else as far as the hand goes. */
function farOn(search: Search, { axis, belief, home }: Line, here: Look, side: -1 | 1): number {
  const center = { ...here, turned: { ...here.turned, [axis]: home } };
  const places = within(search, axis).filter(
    (to) => side * (to - home) >= SIDE_AT && Math.abs(to - here.turned[axis]) >= APART,
  );
  places.sort((a, b) => side * (a - b));
  const sure = places.find((to) => outlook(belief, axis, center, to).falls >= SURE_FALL);
  return sure ?? places.at(-1) ?? home + side * SIDE_AT;
}
