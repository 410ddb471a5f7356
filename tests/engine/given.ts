import type { Beam } from '../../src/engine/beam.ts';
import type { Estimate } from '../../src/engine/fit.ts';
import { exactFromDb, lostDb, saturatedDb } from '../../src/engine/level.ts';
import type { PerAxis, Sample } from '../../src/engine/sample.ts';
import { startSearch } from '../../src/engine/search.ts';
import { BACKLASHES } from '../../src/engine/slack.ts';
import type { View } from '../../src/engine/view.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { NO_SIGNAL, SATURATED, valueReading } from '../../src/model/reading.ts';
import { DECIBELS } from './crew-of-two.ts';

/** Plain data as the engine makes it, with every figure as a test wants it: the decibel meter, and no backlash. */

export const at = (horizontal: number, vertical = 0): PerAxis<number> => ({ horizontal, vertical });

const LEVELS = {
  dark: { reading: NO_SIGNAL, level: { kind: 'below', db: lostDb(DECIBELS) } },
  flooded: { reading: SATURATED, level: { kind: 'above', db: saturatedDb(DECIBELS) } },
} as const;

/** A settled reading, known to 0.04 dB. */
export function seen(
  turned: PerAxis<number>,
  db: number | keyof typeof LEVELS,
  more: Partial<Sample> = {},
): Sample {
  const read =
    typeof db === 'number'
      ? {
          reading: valueReading(exactFromDb(db, DECIBELS)),
          level: { kind: 'level', db, sd: 0.04 } as const,
        }
      : LEVELS[db];
  const pointing = {
    horizontal: BACKLASHES.map(() => turned.horizontal),
    vertical: BACKLASHES.map(() => turned.vertical),
  };
  return {
    ...read,
    seqs: [1],
    from: 0,
    to: 0,
    turned,
    pointing,
    turns: at(0),
    move: undefined,
    gain: 0,
    ...more,
  };
}

interface Drawn {
  /** Eighths. */
  readonly peak?: PerAxis<number>;
  /** Half-power half-widths, eighths. */
  readonly half?: PerAxis<number>;
  /** Height at each gain, dB. */
  readonly tops?: readonly (readonly [gain: number, top: Estimate])[];
  readonly more?: Partial<Beam>;
}

/** A Gaussian beam known exactly, but for its height. */
export function beamOf({
  peak = at(0),
  half = at(9, 9),
  tops = [[0, { value: -4, sd: 0 }]],
  more = {},
}: Drawn = {}): Beam {
  const curve = (axis: 'horizontal' | 'vertical') => ({ value: 3 / half[axis] ** 2, sd: 0 });
  const curvature = { horizontal: curve('horizontal'), vertical: curve('vertical') };
  const x = [0, 0, curvature.horizontal.value, curvature.vertical.value, ...tops.map(([, t]) => t.value), 0];
  const variances = [0, 0, 0, 0, ...tops.map(([, t]) => t.sd ** 2), 0];
  const covariance = variances.map((variance, i) => variances.map((_, j) => (i === j ? variance : 0)));
  return {
    peak: { horizontal: { value: peak.horizontal, sd: 0 }, vertical: { value: peak.vertical, sd: 0 } },
    curvature,
    heights: new Map(tops),
    cross: 0,
    shape: 1,
    backlash: at(0),
    otherLight: [],
    excess: new Map(),
    readDownTo: 40,
    chi2: 0,
    fit: {
      solution: { x, covariance, chi2: 0 },
      turns: at(0),
      origin: peak,
      gains: tops.map(([gain]) => gain),
    },
    ...more,
  };
}

/** What is seen of a search: nothing yet, but for what is given. */
export const viewOf = (more: Partial<View> = {}): View => ({
  search: startSearch(DECIBELS, NEUTRAL_ADJUSTERS),
  here: undefined,
  samples: [],
  beam: undefined,
  surprise: undefined,
  slip: undefined,
  isOneBeam: true,
  isForetold: false,
  expected: undefined,
  ...more,
});
