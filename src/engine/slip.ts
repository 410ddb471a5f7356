import type { MeterProfile } from '../model/profile.ts';
import { AXES, otherAxis } from '../model/turns.ts';
import { type Beam, beamOf } from './beam.ts';
import { REMEMBERED, turnsBetween } from './came-back.ts';
import { type Solved, solveShape } from './fit.ts';
import type { PerAxis, Sample, Turn } from './sample.ts';
import type { Search } from './search.ts';

/**
 * A turn that was not made as it was reported, and that nobody noticed: every reading before it was taken elsewhere than
 * it seems. Moved by the difference, they and the later ones are of one beam again.
 */

/** The usual mistakes: wrong way, wrong adjuster, double, half. */
export function slipsOf({ axis, eighths }: Turn): Turn[] {
  const other = otherAxis(axis);
  return [
    { axis, eighths: -eighths },
    { axis: other, eighths },
    { axis: other, eighths: -eighths },
    { axis, eighths: 2 * eighths },
    ...(eighths % 2 === 0 ? [{ axis, eighths: eighths / 2 }] : []),
  ];
}

/** How far from where it seems the emitter is, if `turn` was made instead of `reported`. Eighths. */
export function difference(reported: Turn, turn: Turn): PerAxis<number> {
  const by = { horizontal: 0, vertical: 0 };
  by[reported.axis] -= reported.eighths;
  by[turn.axis] += turn.eighths;
  return by;
}

export const shifted = (s: Sample, by: PerAxis<number>): Sample => ({
  ...s,
  turned: {
    horizontal: s.turned.horizontal + by.horizontal,
    vertical: s.turned.vertical + by.vertical,
  },
  pointing: {
    horizontal: s.pointing.horizontal.map((p) => p + by.horizontal),
    vertical: s.pointing.vertical.map((p) => p + by.vertical),
  },
});

/** What would explain all readings: this turn instead of the one reported in `seq`. */
export interface Slip {
  readonly move: NonNullable<Sample['move']>;
  readonly turn: Turn;
  /** How many turns ago; the last one is one turn ago. */
  readonly ago: number;
  /** The readings, those before it where they were really taken. */
  readonly samples: readonly Sample[];
  readonly beam: Beam;
}

/** The one mistake in a turn that explains the readings best, of those that were not asked about yet. */
export function bestSlip(
  samples: readonly Sample[],
  meter: MeterProfile,
  { backlash, shape }: Beam,
  confirmed: Search['confirmed'],
): Slip | undefined {
  let best: (Omit<Slip, 'beam'> & { solved: Solved }) | undefined;
  for (let i = Math.max(1, samples.length - REMEMBERED); i < samples.length; i++) {
    const { move, turned } = samples[i] as Sample;
    const before = samples[i - 1] as Sample;
    if (!move || move === before.move || confirmed.includes(move.seq)) continue;
    // Only where one turn lies between the two readings.
    const { axis, eighths } = move.turn;
    if (AXES.some((a) => turned[a] - before.turned[a] !== (a === axis ? eighths : 0))) continue;
    for (const turn of slipsOf(move.turn)) {
      const by = difference(move.turn, turn);
      const back = { horizontal: -by.horizontal, vertical: -by.vertical };
      const moved = samples.map((s, j) => (j < i ? shifted(s, back) : s));
      const solved = solveShape(moved, meter, backlash, shape);
      if (solved && solved.chi2 < (best?.solved.chi2 ?? Number.POSITIVE_INFINITY))
        best = {
          move,
          turn,
          ago: turnsBetween(before, samples[samples.length - 1] as Sample),
          samples: moved,
          solved,
        };
    }
  }
  if (!best) return undefined;
  const { solved, ...slip } = best;
  return { ...slip, beam: beamOf(solved) };
}
