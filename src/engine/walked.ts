import { type Axis, otherAxis } from '../model/turns.ts';
import { CLOSE, halfWidth, predict, sideReach } from './beam.ts';
import { lower } from './compare.ts';
import type { Sample } from './sample.ts';
import type { Sides } from './sides.ts';
import type { View } from './view.ts';

/**
 * What acceptance needs where each number costs a walk: the same two sides of each adjuster, but none is read twice to stand on
 * exactly the same line. A side may have been read before the last change of the gain, if that change is known, and beside the line
 * through the peak; then it must be lower by more than that explains.
 */

/** A line this far beside the peak, in half-widths, still shows its sides. */
const BESIDE = 1 / 2;
/** One side may be this share nearer than it must be, if the other is as much farther out: the peak lies between the two. */
export const NEARER = 0.8;
/** Lower by so much more than lying beside the line explains. dB. */
const LOWER_DB = 0.3;

/** Lower readings on each side of a place along one adjuster. A place that was not read stands with what is foretold for it. */
export function walkedSides(view: View, place: Sample, axis: Axis): Sides {
  const { samples, beam, search } = view;
  if (!beam) return { below: undefined, above: undefined };
  const other = otherAxis(axis);
  const near = Math.max(1, halfWidth(beam, other) * BESIDE);
  const reach = sideReach(beam, axis, search.adjusters.maxStep);
  const top = samples.includes(place) ? place : foretold(view, place);
  const line = samples.filter((s) => {
    const off = Math.abs(s.turned[other] - place.turned[other]);
    const byOff = beam.curvature[other].value * off ** 2;
    return s.gain === place.gain && off <= near && lower(s, top, LOWER_DB + byOff);
  });
  const out = (s: Sample): number => s.turned[axis] - place.turned[axis];
  const below = line.filter((s) => out(s) <= -reach * NEARER);
  const above = line.filter((s) => out(s) >= reach * NEARER);
  const low = below.findLast((s) => out(s) <= -reach || above.some((far) => out(far) - out(s) >= 2 * reach));
  const high = above.findLast((s) => out(s) >= reach || below.some((far) => out(s) - out(far) >= 2 * reach));
  return { below: low, above: high };
}

/** A place as it would be read, as far as is known. */
export function foretold({ beam }: View, place: Sample): Sample {
  const expected = beam && predict(beam, place);
  if (!expected) return place;
  return { ...place, level: { kind: 'level', db: expected.value, sd: 0 } };
}

/** Light that is lower by more says little of the peak: no beam is a parabola all the way down. dB. */
const SHAPE_DB = 10;

/**
 * The side of a place along one adjuster on which no number was read that still shows the shape of the light, beside the line
 * through it: far sides alone would put the peak in the wrong place where one of them is of a side lobe. A crew of two reads one
 * number within the half-width; here one on each side.
 */
export function unseenSide({ samples, beam }: View, place: Sample, axis: Axis): -1 | 1 | undefined {
  const top = place.level;
  if (!beam || top.kind !== 'level') return 1;
  const other = otherAxis(axis);
  const near = Math.max(1, halfWidth(beam, other) * BESIDE);
  const isSeen = (side: -1 | 1): boolean =>
    samples.some(({ turned, level, gain }) => {
      const isOnLine = Math.abs(turned[other] - place.turned[other]) <= near;
      const isOff = side * (turned[axis] - place.turned[axis]) >= CLOSE;
      return (
        isOnLine && isOff && gain === place.gain && level.kind === 'level' && top.db - level.db <= SHAPE_DB
      );
    });
  return ([1, -1] as const).find((side) => !isSeen(side));
}

/** The number at the peak may miss what the readings before it foretold by so much: dB, and standard deviations of both. */
const FORETOLD = { within: 0.2, sds: 2 };

/**
 * The number at the peak is as the readings before it foretold. They stand far out on all sides, so light from elsewhere that
 * brightens one of them, or a beam of another shape, would foretell another number here.
 */
export function isAsForetold({ expected }: View, { level }: Sample): boolean {
  if (!expected || level.kind !== 'level') return false;
  const sd = Math.hypot(expected.sd, level.sd);
  return Math.abs(level.db - expected.value) <= FORETOLD.within + FORETOLD.sds * Math.min(sd, VAGUE_DB);
}

/** A prediction less certain than this counts as if it were no vaguer. dB. */
const VAGUE_DB = 0.7;
