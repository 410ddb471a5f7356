import type { MeterProfile } from '../model/profile.ts';
import { type Beam, beamOf, dropAt, predict } from './beam.ts';
import { type Solved, shapeSd, solveShape } from './fit.ts';
import type { PerAxis, Sample } from './sample.ts';
import { RARE_SHAPES } from './shape.ts';

/** Which shape the beam has, and which readings are not of it. */

/** Light from elsewhere: this much brighter than predicted, dB and standard deviations, this far below the peak, dB. */
const OTHER_LIGHT = { excess: 3, sds: 2.5, below: 4, levels: 5, suspect: 0.7, most: 12 };

/** Another shape is used only if it explains the readings better than a Gaussian by this much. */
const FLATTER_BY = 6;

/**
 * Fits the beam; undefined without any level. Readings too far above what the others predict are light from
 * elsewhere: they are named and left out. Several of them hide each other, so the brightest are first set
 * aside one by one, and those that the rest can explain come back. `rare`: with the shapes that few beams have, too.
 */
export function fitBeam(
  samples: readonly Sample[],
  meter: MeterProfile,
  backlash: PerAxis<number>,
  rare = false,
): Beam | undefined {
  const whole = fitBestShape(samples, meter, backlash, rare);
  // With an unknown law, a low reading cannot be told from light from elsewhere.
  if (!whole || meter.law === 'unknown') return whole;
  let [beam, rest]: [Beam | undefined, readonly Sample[]] = [whole, samples];
  const suspects: Sample[] = [];
  while (beam && suspects.length < OTHER_LIGHT.most) {
    const suspect = brightest(beam, rest);
    if (!suspect) break;
    suspects.push(suspect);
    rest = rest.filter((s) => s !== suspect);
    beam = fitBestShape(rest, meter, backlash, rare);
  }
  if (!beam || suspects.length === 0) return whole;
  const found = beam;
  const otherLight = suspects.filter((s) => isFromElsewhere(found, s, meter));
  if (otherLight.length === 0) return whole;
  if (otherLight.length === suspects.length) return { ...beam, otherLight };
  const own = fitBestShape(
    samples.filter((s) => !otherLight.includes(s)),
    meter,
    backlash,
    rare,
  );
  return own && { ...own, otherLight };
}

/** Too bright for the beam at its place; false at a gain whose height is not known. */
export function isFromElsewhere(beam: Beam, s: Sample, meter: MeterProfile): boolean {
  const expected = predict(beam, s);
  if (!expected || s.level.kind === 'below') return false;
  const sd = Math.hypot(expected.sd, shapeSd(dropAt(beam, s), meter));
  return s.level.db - expected.value > Math.max(OTHER_LIGHT.excess, OTHER_LIGHT.sds * sd);
}

/** The reading that is highest above what the others predict, among those too low to be near the peak. */
function brightest(beam: Beam, samples: readonly Sample[]): Sample | undefined {
  if (samples.filter((s) => s.level.kind === 'level').length < OTHER_LIGHT.levels) return undefined;
  const excess = (s: Sample): number => {
    const top = beam.heights.get(s.gain);
    if (s.level.kind !== 'level' || !top) return 0;
    return top.value - s.level.db > OTHER_LIGHT.below ? (beam.excess.get(s) ?? 0) : 0;
  };
  return samples.reduce<Sample | undefined>(
    (best, s) => (excess(s) > (best ? excess(best) : OTHER_LIGHT.suspect) ? s : best),
    undefined,
  );
}

function fitBestShape(
  samples: readonly Sample[],
  meter: MeterProfile,
  backlash: PerAxis<number>,
  rare: boolean,
): Beam | undefined {
  const solved = solveBestShape(samples, meter, backlash, rare);
  return solved && beamOf(solved);
}

function solveBestShape(
  samples: readonly Sample[],
  meter: MeterProfile,
  backlash: PerAxis<number>,
  rare: boolean,
): Solved | undefined {
  const gaussian = solveShape(samples, meter, backlash, 1);
  const levels = samples.filter((s) => s.level.kind === 'level').length;
  const enough = levels + FLATTER_BY;
  if (!gaussian || levels < OTHER_LIGHT.levels || gaussian.chi2 < enough) return gaussian;
  const flat = solveShape(samples, meter, backlash, 2);
  const usual = flat && flat.chi2 + FLATTER_BY < gaussian.chi2 ? flat : gaussian;
  if (!rare || usual.chi2 < enough) return usual;
  return RARE_SHAPES.reduce<Solved>((best, shape) => {
    const other = solveShape(samples, meter, backlash, shape);
    // It must explain the readings wholly: else it would explain a slip, too.
    const isGood = other && other.chi2 < enough;
    return isGood && other.chi2 + FLATTER_BY < best.chi2 ? other : best;
  }, usual);
}
