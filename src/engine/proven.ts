import { AXES, type Axis, otherAxis } from '../model/turns.ts';
import { beliefOf, type Cost, costAt } from './belief.ts';
import { FRESH_MS } from './fresh.ts';
import { unseenAround } from './lit-around.ts';
import { across, comparisons, isLesser, type Look, looked } from './looks.ts';
import type { Missing } from './missing.ts';
import type { Search } from './search.ts';

/**
 * What acceptance needs where no number is read: on each side of each adjuster the light was seen to be lower, twice,
 * and the place between is near enough to the peak, as far as the looks tell.
 */

/** A side is looked at so far from the peak, or farther. Eighths. */
export const SIDE_AT = 6;
/** Each side is seen to be lower so often. */
const TIMES = 2;
/** Looks along a line so far from the accepted place say nothing of it. Eighths. */
const ON_LINE = 2;
/** Two places less far apart are the same place to an eye. Eighths. */
export const APART = 4;

/** Off by more than this is not accepted, unless it is unlikelier than `RISK`. dB. */
export const ALLOWED_DB = 0.3;
export const RISK = 0.02;

/** How far from the peak this place is along one adjuster, as far as is known. */
export function costHere(looks: readonly Look[], here: Look, axis: Axis): Cost {
  return costAt(
    beliefOf(looks, axis, here.turned[otherAxis(axis)]),
    axis,
    here,
    here.turned[axis],
    ALLOWED_DB,
  );
}

export type Side = -1 | 1;

/** The looks that showed the light lower on one side of a place than nearer to it: along its own line, or on any. */
export function sideSeen(
  looks: readonly Look[],
  here: Look,
  axis: Axis,
  side: Side,
  isOwnLine = true,
): readonly Look[] {
  const other = otherAxis(axis);
  const out = (look: Look): number => side * (look.turned[axis] - here.turned[axis]);
  return comparisons(looks).flatMap(({ axis: along, from, to, sign }) => {
    if (along !== axis) return [];
    if (isOwnLine && Math.abs(from.turned[other] - here.turned[other]) > ON_LINE) return [];
    const [far, near] = out(from) > out(to) ? [from, to] : [to, from];
    const isLower = far === to ? sign === -1 : sign === 1;
    const isSide = out(far) >= SIDE_AT && out(near) >= -APART / 2 && out(far) - out(near) >= APART;
    return isLower && isSide ? [to] : [];
  });
}

/** The sides that were not yet seen to be lower along the line through this place, or not often enough. */
export const lacksSides = (looks: readonly Look[], here: Look, axis: Axis): readonly Side[] =>
  ([1, -1] as const).filter(
    (side) =>
      sideSeen(looks, here, axis, side).length === 0 ||
      sideSeen(looks, here, axis, side, false).length < TIMES,
  );

/** The light was seen not to rise beside this place, on the way across it: no ring, and no dip between two peaks. */
export function isTopped(looks: readonly Look[], here: Look, axis: Axis): boolean {
  const { up, on } = across(looks, here, axis);
  return up !== undefined && up >= 0 && on !== undefined && on <= 0;
}

const provens = new WeakMap<Look, boolean>();

/** The newest look at a place whose two lines showed it to be a peak; undefined where none did. */
export function peakSeen(looks: readonly Look[]): Look | undefined {
  for (let i = looks.length - 1; i >= 0; i--) {
    const look = looks[i];
    if (!look) continue;
    const isProven = provens.get(look) ?? hasLines(looks.slice(0, i + 1), look);
    provens.set(look, isProven);
    if (isProven) return look;
  }
  return undefined;
}

const hasLines = (looks: readonly Look[], here: Look): boolean =>
  here.seen !== 'nothing' &&
  here.seen !== 'too-strong' &&
  AXES.every(
    (axis) =>
      lacksSides(looks, here, axis).length === 0 &&
      isTopped(looks, here, axis) &&
      costHere(looks, here, axis).risk <= RISK,
  );

/**
 * The looks after one more. Where it shows that what was proven is the peak of a lesser light, the search begins anew with it:
 * what was seen around the other says nothing of this one.
 */
export function withLook(looks: readonly Look[], look: Look): readonly Look[] {
  const peak = peakSeen(looks);
  const all = looked(looks, look);
  return peak && isLesser(all, peak) ? [look] : all;
}

/** The look at this place, at this gain, since it was last touched. */
export function lookHere(search: Search): Look | undefined {
  const last = search.looks?.at(-1);
  return last && last.at >= search.stay.since && search.path === 'clear' ? last : undefined;
}

/** The first of the looks at this place since it was last touched, from which on the light did not change. */
export function steadySince(looks: readonly Look[], search: Search): Look | undefined {
  const stay = looks.filter(({ at }) => at >= search.stay.since);
  return stay.findLast((look, i) => i === 0 || look.seen !== 'steady' || look.first);
}

/** What is missing for acceptance here and now where no number is read; empty if nothing is. */
export function missingByTrends(search: Search, now: number): Missing[] {
  const looks = search.looks ?? [];
  const here = lookHere(search);
  if (search.path !== 'clear') return [{ id: 'clear-path', figures: {} }];
  if (!here || here.seen === 'nothing') return [{ id: 'settled-reading', figures: {} }];
  if (here.seen === 'too-strong') return [{ id: 'not-saturated', figures: {} }];
  const missing: Missing[] = [];
  for (const axis of AXES) {
    if (lacksSides(looks, here, axis).length > 0) missing.push({ id: `bracket-${axis}`, figures: {} });
  }
  if (AXES.some((axis) => !isTopped(looks, here, axis) || costHere(looks, here, axis).risk > RISK))
    missing.push({ id: 'at-peak', figures: {} });
  if (missing.length === 0 && unseenAround(search, looks, here))
    missing.push({ id: 'second-peak', figures: {} });
  if (search.blocking.dark !== true) missing.push({ id: 'blocking-check', figures: {} });
  const held = here.at - (steadySince(looks, search) ?? here).at;
  if (held < search.meter.holdMs) {
    missing.push({ id: 'steady-hold', figures: { held: held / 1000, needed: search.meter.holdMs / 1000 } });
  }
  if (now - here.at > FRESH_MS)
    missing.push({ id: 'fresh-reading', figures: { age: (now - here.at) / 1000 } });
  return missing;
}
