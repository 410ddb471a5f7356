import { AXES, type Eighths } from '../model/turns.ts';
import { brightest, brightness, provenLine, readAtGain } from './line.ts';
import type { PerAxis, Sample } from './sample.ts';
import type { Search } from './search.ts';

/**
 * How far the beam may be from where the eye aimed: 15 cm at 8 m, with 0.7 degrees a turn. The plain search begins with
 * an aim by eye, so a brighter light can only be so near to it. Eighths.
 */
const AIM_ERROR = 12;

/**
 * A light narrower than this, to half its power, may be a side lobe: only then is an aim so far off outside the beam.
 * Eighths.
 */
const NARROW_LIGHT = AIM_ERROR / 2;

/**
 * How far around a narrow light is looked, in its own half-widths. The first side lobe of a round opening peaks 3.2 of
 * the beam's half-widths off, and is 0.65 to 0.9 of them wide (from `airy`): from there, one of eight places on a
 * square of this size is in the beam where it is brighter than the lobe.
 */
const AROUND = 3.3;

/** A line's width is measured where it is 1 dB lower: on a Gaussian, to half its power it is so much wider. */
const HALF_POWER = Math.sqrt(3);

/** A place read so near counts as looked at: a share of half the square's side. */
const LOOKED_AT = 1 / 3;

/** Places that read within this of the brightest may be the same peak. dB. */
const AS_BRIGHT_DB = 0.3;

type Spot = PerAxis<Eighths>;

/** The place that its lines prove to be the peak: the place here, or one that was left to look around. */
export function provenPlace(search: Search, here: Sample): Sample | undefined {
  const samples = readAtGain({ search, here });
  const top = brightest(samples);
  if (!top) return undefined;
  return [...samples]
    .reverse()
    .filter((s) => brightness(s) > brightness(top) - AS_BRIGHT_DB)
    .find((s) => AXES.every((axis) => provenLine(samples, s, axis)));
}

interface Square {
  /** Half its side, eighths. */
  readonly by: Eighths;
  readonly spots: readonly Spot[];
}

/** The places around a narrow light where a brighter one can be; none around a wide one. */
function squareAround(samples: readonly Sample[], proven: Sample, { limits }: Search): Square {
  const widths = AXES.map((axis) => provenLine(samples, proven, axis)?.halfWidth ?? Number.POSITIVE_INFINITY);
  const half = HALF_POWER * Math.min(...widths);
  if (half >= NARROW_LIGHT) return { by: 0, spots: [] };
  const by = Math.round(AROUND * half);
  const { horizontal, vertical } = proven.turned;
  const isWithin = (spot: Spot) =>
    AXES.every((axis) => spot[axis] >= limits[axis].low && spot[axis] <= limits[axis].high);
  const spots = [-by, 0, by]
    .flatMap((h) => [-by, 0, by].map((v) => ({ horizontal: horizontal + h, vertical: vertical + v })))
    .filter((spot) => spot.horizontal !== horizontal || spot.vertical !== vertical)
    .filter((spot) => isWithin(spot) && Math.hypot(spot.horizontal, spot.vertical) <= AIM_ERROR + by / 2);
  return { by, spots };
}

/** The nearest of the places around a proven one that was not read yet. */
export function unreadAround(search: Search, here: Sample, proven: Sample): Spot | undefined {
  const samples = readAtGain({ search, here });
  const { by, spots } = squareAround(samples, proven, search);
  const isRead = (spot: Spot) =>
    samples.some((s) => AXES.every((axis) => Math.abs(s.turned[axis] - spot[axis]) <= LOOKED_AT * by));
  const turns = (spot: Spot) =>
    AXES.reduce(
      (sum, axis) => sum + Math.ceil(Math.abs(spot[axis] - here.turned[axis]) / search.adjusters.maxStep),
      0,
    );
  return spots
    .filter((spot) => !isRead(spot))
    .reduce<Spot | undefined>((best, spot) => (best && turns(best) <= turns(spot) ? best : spot), undefined);
}
