import { type Axis, otherAxis } from '../model/turns.ts';
import { halfWidth, predict, sideReach } from './beam.ts';
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
const NEARER = 0.8;
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

function foretold({ beam }: View, place: Sample): Sample {
  const expected = beam && predict(beam, place);
  if (!expected) return place;
  return { ...place, level: { kind: 'level', db: expected.value, sd: 0 } };
}

/** The others foretell the number here this well, and it is as foretold: dB, and standard deviations of both. */
const FORETOLD = { sd: 0.7, within: 0.2, sds: 2 };

/**
 * The number at the peak is as the others foretold it. They stand far out on all sides, so light from elsewhere that brightens one of
 * them, or a beam of another shape, would foretell another number here.
 */
export function isAsForetold({ expected }: View, { level }: Sample): boolean {
  if (!expected || level.kind !== 'level' || expected.sd > FORETOLD.sd) return false;
  const sd = Math.hypot(expected.sd, level.sd);
  return Math.abs(level.db - expected.value) <= FORETOLD.within + FORETOLD.sds * sd;
}
