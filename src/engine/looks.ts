import type { Seq } from '../model/ids.ts';
import type { Trend } from '../model/reports.ts';
import { AXES, type Axis } from '../model/turns.ts';
import type { PerAxis } from './sample.ts';
import type { Pointing } from './slack.ts';

/**
 * What a person sees of an indicator that shows no number: what it does against the look before, and whether there is
 * anything at all, or so much that more would not be seen.
 */
export type Seen = Exclude<Trend, 'wandering'> | 'nothing' | 'too-strong';

/** The hands have been off for so long that what the light does is known. `since`: ms. */
export const maySee = (
  {
    stay,
    meter,
  }: { readonly stay: { readonly since: number }; readonly meter: { readonly settleMs: number } },
  at: number,
): boolean => at >= stay.since + meter.settleMs;

/** One look, with the place where it was made. */
export interface Look {
  readonly seq: Seq;
  readonly at: number;
  readonly seen: Seen;
  readonly turned: PerAxis<number>;
  readonly pointing: PerAxis<Pointing>;
  readonly gain: number;
  /** It was held against no look before it. */
  readonly first?: true;
}

/** Two looks, one after the other, between which one adjuster was turned: `sign` of how the light changed. */
export interface Comparison {
  readonly axis: Axis;
  readonly from: Look;
  readonly to: Look;
  readonly sign: -1 | 0 | 1;
}

/** Older ones say little of the place that is worked on now. */
const LOOKS_KEPT = 120;

export const looked = (looks: readonly Look[], look: Look): readonly Look[] =>
  [...looks, look].slice(-LOOKS_KEPT);

const SIGN = { rising: 1, steady: 0, falling: -1, nothing: -1, 'too-strong': 1 } as const;

/** How the light changed between two looks at one gain; undefined where both say only "dark" or only "flooded". */
export function signOf(from: Look, to: Look): -1 | 0 | 1 | undefined {
  if (from.gain !== to.gain) return undefined;
  const same = from.seen === to.seen;
  if (to.seen === 'nothing' || to.seen === 'too-strong') return same ? undefined : SIGN[to.seen];
  // Out of the dark it can only have risen, whatever word was said; out of the flooded only fallen.
  if (from.seen === 'nothing') return 1;
  if (from.seen === 'too-strong') return -1;
  if (to.first) return undefined;
  return SIGN[to.seen];
}

/** What a look says of its place against that of the look before; undefined where they cannot be compared. */
export function comparisonAt(from: Look, to: Look): Comparison | undefined {
  const sign = signOf(from, to);
  const turned = AXES.filter((axis) => from.turned[axis] !== to.turned[axis]);
  const [axis] = turned;
  return sign !== undefined && axis && turned.length === 1 ? { axis, from, to, sign } : undefined;
}

/** What the looks say of places against each other, oldest first. */
export const comparisons = (looks: readonly Look[]): readonly Comparison[] =>
  looks.flatMap((to, i) => {
    const from = looks[i - 1];
    return (from && comparisonAt(from, to)) ?? [];
  });

/** Screws so near to each other are at one place. Eighths. */
const SAME = 1;

export const isAt = (look: Look, place: PerAxis<number>): boolean =>
  AXES.every((axis) => Math.abs(look.turned[axis] - place[axis]) <= SAME);

/** Both adjusters were turned before the light was looked at again: two places are held against each other directly. */
export const isAcross = (from: Look, to: Look): boolean =>
  AXES.every((axis) => from.turned[axis] !== to.turned[axis]);

/** The looks at one place with nothing turned between them: the first and the last. */
interface Stop {
  readonly first: Look;
  readonly last: Look;
}

const stops = (looks: readonly Look[]): Stop[] =>
  looks.reduce<Stop[]>((all, look) => {
    const open = all.at(-1);
    if (!open || AXES.some((axis) => open.last.turned[axis] !== look.turned[axis]))
      all.push({ first: look, last: look });
    else all[all.length - 1] = { first: open.first, last: look };
    return all;
  }, []);

/**
 * Another place was held against `peak`, there and back, and was no darker, or flooded where the peak was not: the newest look
 * is at that place, and the other was a lesser light.
 */
export function isLesser(looks: readonly Look[], peak: Look): boolean {
  const [there, between, here] = stops(looks).slice(-3);
  if (!there || !between || !here || here.first !== here.last) return false;
  if (!isAt(between.last, peak.turned) || !isAcross(between.last, here.first)) return false;
  const back = signOf(between.last, here.first);
  if (here.first.seen === 'too-strong') return back === 1;
  if (!isAt(there.last, here.first.turned)) return false;
  const out = signOf(there.last, between.first);
  return out !== undefined && out <= 0 && back !== undefined && back >= 0;
}

/**
 * How far to each side of the peak the light is looked at on the way across, eighths. A light that shows no change there, on
 * either side of both adjusters, falls to half its power no nearer than 7 eighths: `3 (6 d + 9) / l^2 < 0.5` on both sides of a
 * place that is `d` off.
 */
export const BESIDE = 3;

/**
 * What was seen on the way across a peak along one adjuster, upwards, with the slack of the screw taken up before: from the
 * place below it to the peak, and from there to the place above. The newest of each.
 */
export function across(
  looks: readonly Look[],
  { turned: peak }: Look,
  axis: Axis,
): { readonly up?: -1 | 0 | 1; readonly on?: -1 | 0 | 1 } {
  const other = AXES.find((each) => each !== axis) ?? axis;
  const off = (look: Look) => look.turned[axis] - peak[axis];
  const seen: { up?: -1 | 0 | 1; on?: -1 | 0 | 1 } = {};
  for (let i = 2; i < looks.length; i++) {
    const [before, from, to] = [looks[i - 2], looks[i - 1], looks[i]];
    if (!before || !from || !to) continue;
    const step = comparisonAt(from, to);
    if (step?.axis !== axis || Math.abs(from.turned[other] - peak[other]) > SAME) continue;
    const isOnward = before.turned[axis] < from.turned[axis] && from.turned[axis] < to.turned[axis];
    if (!isOnward) continue;
    const taken = from.turned[axis] - before.turned[axis];
    if (near(off(from), -BESIDE) && near(off(to), 0) && taken >= BESIDE) seen.up = step.sign;
    if (near(off(from), 0) && near(off(to), BESIDE) && taken >= BESIDE - SAME) seen.on = step.sign;
  }
  return seen;
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= SAME;

/** Nothing was seen to change beside the peak: the light is no narrow one. */
export const isWide = (looks: readonly Look[], peak: Look): boolean =>
  AXES.every((axis) => {
    const { up, on } = across(looks, peak, axis);
    return up === 0 && on === 0;
  });
