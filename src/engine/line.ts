import { type Axis, type Eighths, otherAxis } from '../model/turns.ts';
import { isCoarse, isLess, REMEMBERED, RETURN, turnsBetween } from './came-back.ts';
import { lower } from './compare.ts';
import { newestAt } from './place.ts';
import type { Sample } from './sample.ts';
import type { Search } from './search.ts';
import { BACKLASHES } from './slack.ts';

/**
 * What the readings alone show along one adjuster, with no model of the beam: where the middle of the light is, and
 * whether a lower settled reading stands on each side of it.
 */

/** Backlash up to this is taken up before a place next to the peak counts. Eighths, an entry of `BACKLASHES`. */
export const SLACK = 4;
const SLACK_INDEX = BACKLASHES.indexOf(SLACK);

/** Where places next to the middle are asked for, and its sides. Eighths. */
export const PITCH = 3;
export const SIDE = 8;

/**
 * Where those that were read count, once the middle is known better: next to it within these, a side from so far on.
 * Eighths.
 */
const NEXT_TO = { from: 2, to: 5 };
const SIDE_COUNTS = 6;

/** The middle of the light lies between the two places where it is this much lower. dB. */
const SHOULDER_DB = 1;

/** A place whose reading is less than this below the best is as good. dB. */
const AS_GOOD_DB = 0.12;

type State = Pick<Sample, 'turned' | 'pointing'>;

/** How far the emitter is behind the screw, if the backlash is `SLACK`: half of it after a turn clockwise. */
export const lag = (s: State, axis: Axis): number => s.turned[axis] - (s.pointing[axis][SLACK_INDEX] ?? 0);

/** The last turns were clockwise by so much that no backlash is left: places can be compared. */
export const isTakenUp = (s: State, axis: Axis): boolean => lag(s, axis) >= SLACK / 2 - 1e-9;

/** Decibels of a sample; of a dark one, nothing at all. */
export const brightness = ({ level }: Sample): number =>
  level.kind === 'below' ? Number.NEGATIVE_INFINITY : level.db;

/** A place that was so near the brightest, and now reads so much lower, is no longer where it was. dB. */
const GONE = { near: 3, by: 3 };

/**
 * The readings since the plain search began, at the gain of `here`: of each place the newest. What was read before
 * bright light was gone from its place is no longer valid: a slip.
 */
export function readAtGain({ search, here }: { search: Search; here: Sample }): readonly Sample[] {
  const before = known.get(here);
  if (before && before.floor === search.floor && before.samples === search.samples) return before.read;
  const read = readSince(search, here);
  known.set(here, { floor: search.floor, samples: search.samples, read });
  return read;
}

// One decision asks many times.
const known = new WeakMap<Sample, Pick<Search, 'floor' | 'samples'> & { readonly read: readonly Sample[] }>();

function readSince(search: Search, here: Sample): readonly Sample[] {
  const since = search.floor?.since ?? 0;
  const all = [...search.samples.filter((s) => (s.seqs[0] ?? 0) >= since && s.gain === here.gain), here];
  const from = all.findLastIndex((s, i) => {
    const before = newestAt(all.slice(0, i), s);
    if (!before) return false;
    const top = brightest(all.slice(0, i));
    const wasBright = top !== undefined && brightness(before) > brightness(top) - GONE.near;
    if (wasBright && brightness(s) < brightness(before) - GONE.by) return true;
    // Nobody can be asked about turns of so long ago.
    const isNear = top !== undefined && brightness(before) > brightness(top) - RETURN.within;
    return (
      isNear &&
      isCoarse(before, search.meter) &&
      isLess(s, before, search.meter) &&
      turnsBetween(before, s) > REMEMBERED
    );
  });
  const valid = all.slice(Math.max(0, from));
  return valid.filter((s) => newestAt(valid, s) === s);
}

export const brightest = (samples: readonly Sample[]): Sample | undefined =>
  samples.reduce<Sample | undefined>(
    (best, s) => (best && brightness(best) >= brightness(s) ? best : s),
    undefined,
  );

/** One adjuster's line as read: its middle, and its sides where they have been read low. */
export interface Line {
  readonly best: Sample;
  /** Where the screw should stand. */
  readonly middle: Eighths;
  /** Half the way between its shoulders; undefined while one is not read. Eighths. */
  readonly halfWidth: number | undefined;
  readonly below: Sample | undefined;
  readonly above: Sample | undefined;
  /** The places read, in order; next to the peak only those with the backlash taken up. */
  readonly places: readonly Sample[];
  /** The light falls above the brightest reading, however its places were reached, and not yet below it. */
  readonly isBelow: boolean;
  /** How far the line was read either way, however a place was reached. Eighths. */
  readonly least: Eighths;
  readonly most: Eighths;
}

/** Off by this share of the way to a shoulder costs about a tenth of a decibel. */
const NEAR_MIDDLE = 1 / 3;

/** A line may be read so much of the way to a shoulder beside the peak of the other adjuster: a third of a decibel. */
const NEAR_LINE = 1 / Math.sqrt(3);

/** The line through `at` along one adjuster; undefined while no place of it has light with the backlash taken up. */
export function lineAt(samples: readonly Sample[], at: State, axis: Axis): Line | undefined {
  const other = otherAxis(axis);
  const along = (near: number) =>
    readLine(
      samples.filter((s) => Math.abs(s.turned[other] - at.turned[other]) <= near),
      axis,
    );
  const line = along(0);
  if (!line || lacking(line, axis).length === 0) return line;
  // Where the light is wide the other way, lines next to this one show the same.
  const across = readLine(
    samples.filter((s) => s.turned[axis] === line.best.turned[axis]),
    other,
  );
  const near = Math.floor((across?.halfWidth ?? 0) * NEAR_LINE);
  return near > 0 ? along(near) : line;
}

/** Reads a line; undefined while no place of it has light with the backlash taken up. */
export function readLine(line: readonly Sample[], axis: Axis): Line | undefined {
  const best = brightest(line.filter((s) => isTakenUp(s, axis)));
  if (best?.level.kind !== 'level') return undefined;
  // Far out on the flank the backlash does not matter.
  const isOut = (s: Sample) => brightness(s) < brightness(best) - SHOULDER_DB;
  const places = line
    .filter((s) => isTakenUp(s, axis) || isOut(s))
    .sort((a, b) => a.turned[axis] - b.turned[axis]);
  const shoulders = shouldersOf(places, best, axis);
  const middle = middleOf(places, best, axis, shoulders);
  const halfWidth = shoulders && (shoulders.high - shoulders.low) / 2;
  const below = places.findLast((s) => s.turned[axis] <= middle - SIDE_COUNTS && lower(s, best));
  const above = places.find((s) => s.turned[axis] >= middle + SIDE_COUNTS && lower(s, best));
  const isBelow = fallsOnlyAbove(line, axis);
  const at = line.map((s) => s.turned[axis]);
  const [least, most] = [Math.min(...at), Math.max(...at)];
  return { best, middle, halfWidth, below, above, places, isBelow, least, most };
}

/** Where the middle is looked for next: a reading of which only the places above are seen to be darker points down. */
function fallsOnlyAbove(line: readonly Sample[], axis: Axis): boolean {
  const top = brightest(line);
  const isFallen = (way: -1 | 1) =>
    line.some((s) => top && way * (s.turned[axis] - top.turned[axis]) > 0 && lower(s, top, SHOULDER_DB));
  return isFallen(1) && !isFallen(-1);
}

/** Where the light is 1 dB lower on either side, between the places that were read. */
function shouldersOf(
  places: readonly Sample[],
  best: Sample,
  axis: Axis,
): { readonly low: number; readonly high: number } | undefined {
  const shoulder = (out: readonly Sample[]): number | undefined => {
    const from = out.indexOf(best);
    const j = out.findIndex((s, k) => k > from && brightness(s) < brightness(best) - SHOULDER_DB);
    const [inner, outer] = [out[j - 1], out[j]];
    if (!inner || !outer) return undefined;
    const [a, b] = [inner.turned[axis], outer.turned[axis]];
    if (outer.level.kind !== 'level') return (a + b) / 2;
    // A top is round: the drop grows as the square of the distance.
    const root = (s: Sample) => Math.sqrt(brightness(best) - brightness(s));
    return a + ((b - a) * (Math.sqrt(SHOULDER_DB) - root(inner))) / (root(outer) - root(inner));
  };
  const [low, high] = [shoulder([...places].reverse()), shoulder(places)];
  return low === undefined || high === undefined ? undefined : { low, high };
}

/**
 * Halfway between the shoulders: on a flat top the readings next to the peak say nothing. Where a place there was
 * read and is darker, as in a ring, the brightest place itself.
 */
function middleOf(
  places: readonly Sample[],
  best: Sample,
  axis: Axis,
  shoulders: { readonly low: number; readonly high: number } | undefined,
): Eighths {
  if (!shoulders) return best.turned[axis];
  const middle = Math.round((shoulders.low + shoulders.high) / 2);
  const isDark = places.some((s) => Math.abs(s.turned[axis] - middle) <= 1 && isDarker(s, best));
  return isDark ? best.turned[axis] : middle;
}

/** The places that a line still lacks, in order: both sides, the middle, and a place next to it on each side. */
export function lacking({ middle, below, above, places, least, most }: Line, axis: Axis): Eighths[] {
  const at = places.map((s) => s.turned[axis]);
  const needed: Eighths[] = [];
  if (!below) needed.push(Math.min(middle - SIDE, least > middle - SIDE ? least : least - SIDE));
  const isNextTo = (way: -1 | 1) =>
    at.some((x) => way * (x - middle) >= NEXT_TO.from && way * (x - middle) <= NEXT_TO.to);
  if (!isNextTo(-1)) needed.push(middle - PITCH);
  if (!at.some((x) => Math.abs(x - middle) <= 1)) needed.push(middle);
  if (!isNextTo(1)) needed.push(middle + PITCH);
  if (!above) needed.push(Math.max(middle + SIDE, most < middle + SIDE ? most : most + SIDE));
  return needed;
}

/** A place that reads less than this below the best of its line may be its peak. dB. */
const AT_PEAK_DB = 0.2;

/**
 * The line through a place along one adjuster, if it proves that place: no gap, a lower reading on each side, and
 * nothing on it brighter. On a wide light it may be an eighth or more off the middle.
 */
export function provenLine(samples: readonly Sample[], place: Sample, axis: Axis): Line | undefined {
  const line = lineAt(samples, place, axis);
  if (!line || lacking(line, axis).length > 0 || !isTakenUp(place, axis)) return undefined;
  const allowed = Math.max(place === line.best ? 1 : 0, Math.floor((line.halfWidth ?? 0) * NEAR_MIDDLE));
  const isMiddle = Math.abs(place.turned[axis] - line.middle) <= allowed;
  return isMiddle && !isDarker(place, line.best, AT_PEAK_DB) ? line : undefined;
}

const isDarker = (a: Sample, than: Sample, by = AS_GOOD_DB): boolean => lower(a, than, by);
