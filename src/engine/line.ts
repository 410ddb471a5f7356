import type { Seq } from '../model/ids.ts';
import { AXES, type Axis, type Eighths, otherAxis } from '../model/turns.ts';
import { lower } from './compare.ts';
import type { Sample } from './sample.ts';
import type { Search } from './search.ts';
import { BACKLASHES } from './slack.ts';

/**
 * What the readings alone show along one adjuster, with no model of the beam: where the middle of the light is, and
 * whether a lower settled reading stands on each side of it.
 */

/** Backlash up to this is taken up before a place counts. Eighths, an entry of `BACKLASHES`. */
export const SLACK = 6;
const SLACK_INDEX = BACKLASHES.indexOf(SLACK);

/** Places next to the peak are read this far apart, and its sides at least so far from it. Eighths. */
export const PITCH = 3;
export const SIDE = 8;

/** The middle of the light lies between the two places where it is this much lower. dB. */
const SHOULDER_DB = 1;

/** A place whose reading is less than this below the best is as good. dB. */
const AS_GOOD_DB = 0.12;

/** A place that reads so differently now has moved: nothing read before it counts. dB, standard deviations. */
const CHANGED = { db: 0.5, sds: 3 };

type State = Pick<Sample, 'turned' | 'pointing'>;

/** How far the emitter is behind the screw, if the backlash is `SLACK`: half of it after a turn clockwise. */
export const lag = (s: State, axis: Axis): number => s.turned[axis] - (s.pointing[axis][SLACK_INDEX] ?? 0);

/** The last turns were clockwise by so much that no backlash is left: places can be compared. */
export const isTakenUp = (s: State, axis: Axis): boolean => lag(s, axis) >= SLACK / 2 - 1e-9;

const isSameState = (a: State, b: State, axis: Axis): boolean =>
  a.turned[axis] === b.turned[axis] && Math.abs(lag(a, axis) - lag(b, axis)) < 1e-9;

const lastSeq = (s: Sample): Seq => s.seqs[s.seqs.length - 1] ?? 0;

const db = ({ level }: Sample): number => (level.kind === 'below' ? Number.NEGATIVE_INFINITY : level.db);

/** The readings since the plain search began, at the gain of `here`, as far back as places still read the same. */
export function trusted(search: Search, here: Sample): readonly Sample[] {
  const since = search.floor?.since ?? 0;
  const known = [...search.samples.filter((s) => lastSeq(s) >= since && s.gain === here.gain), here];
  let from = 0;
  known.forEach((s, i) => {
    const before = known.slice(from, i).findLast((b) => AXES.every((axis) => isSameState(b, s, axis)));
    if (before && isChanged(before, s)) from = i;
  });
  return known.slice(from);
}

function isChanged(a: Sample, b: Sample): boolean {
  if (a.level.kind !== 'level' || b.level.kind !== 'level') return a.level.kind !== b.level.kind;
  const sd = Math.hypot(a.level.sd, b.level.sd);
  return Math.abs(a.level.db - b.level.db) > Math.max(CHANGED.db, CHANGED.sds * sd);
}

/** The readings along one adjuster, the other standing still within `near` eighths of where it stands in `at`. */
export const lineThrough = (samples: readonly Sample[], at: State, axis: Axis, near = 0): Sample[] => {
  const other = otherAxis(axis);
  return samples.filter((s) =>
    near === 0
      ? isSameState(s, at, other)
      : Math.abs(s.turned[other] - at.turned[other]) <= near && Math.abs(lag(s, other) - lag(at, other)) < 1,
  );
};

export const brightest = (samples: readonly Sample[]): Sample | undefined =>
  samples.reduce<Sample | undefined>((best, s) => (best && db(best) >= db(s) ? best : s), undefined);

/** One adjuster's line as read: its middle, and its sides where they have been read low. */
export interface Line {
  readonly best: Sample;
  /** Where the screw should stand. */
  readonly middle: Eighths;
  /** Half the way between its shoulders; undefined while one is not read. Eighths. */
  readonly halfWidth: number | undefined;
  readonly below: Sample | undefined;
  readonly above: Sample | undefined;
  /** The places read with the backlash taken up, the newest reading of each, in order. */
  readonly places: readonly Sample[];
}

/** Reads a line; undefined while no place of it has light with the backlash taken up. */
export function readLine(line: readonly Sample[], axis: Axis): Line | undefined {
  const newest = new Map<Eighths, Sample>();
  for (const s of line) if (isTakenUp(s, axis)) newest.set(s.turned[axis], s);
  const places = [...newest.values()].sort((a, b) => a.turned[axis] - b.turned[axis]);
  const best = brightest(places);
  if (best?.level.kind !== 'level') return undefined;
  const shoulders = shouldersOf(places, best, axis);
  const middle = middleOf(places, best, axis, shoulders);
  const halfWidth = shoulders && (shoulders.high - shoulders.low) / 2;
  const below = places.findLast((s) => s.turned[axis] <= middle - SIDE && lower(s, best));
  const above = places.find((s) => s.turned[axis] >= middle + SIDE && lower(s, best));
  return { best, middle, halfWidth, below, above, places };
}

/** Where the light is 1 dB lower on either side, between the places that were read. */
function shouldersOf(
  places: readonly Sample[],
  best: Sample,
  axis: Axis,
): { readonly low: number; readonly high: number } | undefined {
  const shoulder = (out: readonly Sample[]): number | undefined => {
    const from = out.indexOf(best);
    const j = out.findIndex((s, k) => k > from && db(s) < db(best) - SHOULDER_DB);
    const [inner, outer] = [out[j - 1], out[j]];
    if (!inner || !outer) return undefined;
    const [a, b] = [inner.turned[axis], outer.turned[axis]];
    if (outer.level.kind !== 'level') return (a + b) / 2;
    return a + ((b - a) * (db(inner) - (db(best) - SHOULDER_DB))) / (db(inner) - db(outer));
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

/** The places that a line still lacks: both sides, and no gap wider than `PITCH` next to the middle. */
export function lacking({ middle, below, above, places }: Line, axis: Axis): Eighths[] {
  const at = places.map((s) => s.turned[axis]);
  const [least, most] = [Math.min(...at), Math.max(...at)];
  const needed: Eighths[] = [];
  if (!below) needed.push(Math.min(middle - SIDE, least > middle - SIDE ? least : least - SIDE));
  for (const by of [-PITCH, 0, PITCH]) {
    if (!at.some((x) => Math.abs(x - middle - by) <= 1)) needed.push(middle + by);
  }
  if (!above) needed.push(Math.max(middle + SIDE, most < middle + SIDE ? most : most + SIDE));
  return needed;
}

/** On a beam no narrower than this between its shoulders, an eighth of a turn costs no more than 0.1 dB. */
const NARROW = 3;

/** A place that reads less than this below the best of its line may be its peak. dB. */
const AT_PEAK_DB = 0.3;

/**
 * The line through `here` along one adjuster, if it proves this place: no gap, a lower reading on each side, and
 * nothing on it brighter than here. On a wide beam, both adjusters may be an eighth off.
 */
export function provenLine(search: Search, here: Sample, axis: Axis): Line | undefined {
  const samples = trusted(search, here);
  const proves = (line: Line | undefined, near: Eighths): line is Line =>
    line !== undefined &&
    (near === 0 || (line.halfWidth ?? 0) >= NARROW) &&
    lacking(line, axis).length === 0 &&
    isTakenUp(here, axis) &&
    isAtPeak(line, here, axis);
  for (const near of [0, 1]) {
    const line = readLine(lineThrough(samples, here, axis, near), axis);
    if (proves(line, near)) return line;
  }
  return undefined;
}

function isAtPeak({ best, middle, halfWidth }: Line, here: Sample, axis: Axis): boolean {
  const off = Math.abs(here.turned[axis] - middle);
  return off <= ((halfWidth ?? 0) >= NARROW ? 1 : 0) && !isDarker(here, best, AT_PEAK_DB);
}

const isDarker = (a: Sample, than: Sample, by = AS_GOOD_DB): boolean => lower(a, than, by);
