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

/** One look, with the place where it was made. */
export interface Look {
  readonly seq: Seq;
  readonly at: number;
  readonly seen: Seen;
  readonly turned: PerAxis<number>;
  readonly pointing: PerAxis<Pointing>;
  readonly gain: number;
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
function signOf(from: Look, to: Look): -1 | 0 | 1 | undefined {
  if (from.gain !== to.gain) return undefined;
  const same = from.seen === to.seen;
  if (to.seen === 'nothing' || to.seen === 'too-strong') return same ? undefined : SIGN[to.seen];
  // Out of the dark it can only have risen, whatever word was said; out of the flooded only fallen.
  if (from.seen === 'nothing') return 1;
  if (from.seen === 'too-strong') return -1;
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
