import { readFileSync } from 'node:fs';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../src/engine/leastsq.ts';
import { createRng, normal } from '../../src/simulator/rng.ts';

/** Number of leading digits two figures share: the NIST scoring, -log10 of the relative error. */
const digits = (value: number, certified: number): number =>
  -Math.log10(Math.abs(value - certified) / Math.abs(certified));

describe('weighted least squares', () => {
  // Certified values: NIST StRD, linear regression, data set Pontius.
  const CERTIFIED = {
    b: [0.673565789473684e-3, 0.732059160401003e-6, -0.316081871345029e-14],
    sd: [0.107938612033077e-3, 0.157817399981659e-9, 0.486652849992036e-16],
    residualSd: 0.205177424076185e-3,
  };
  const rows = readFileSync(new URL('data/nist-strd-pontius.csv', import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => /^\d/.test(line))
    .map((line) => line.split(',').map(Number))
    .map(([x = 0, y = 0]) => ({ coefficients: [1, x, x * x], value: y, sd: 1 }));
  const solution = leastSquares(rows);

  it('reproduces the certified quadratic of NIST Pontius', () => {
    expect(rows).toHaveLength(40);
    CERTIFIED.b.forEach((certified, i) => {
      expect(digits(solution?.x[i] ?? 0, certified)).toBeGreaterThan(12);
    });
  });

  it('reproduces its certified standard deviations', () => {
    const residualSd = Math.sqrt((solution?.chi2 ?? 0) / (40 - 3));
    expect(digits(residualSd, CERTIFIED.residualSd)).toBeGreaterThan(10);
    CERTIFIED.sd.forEach((certified, i) => {
      const sd = residualSd * Math.sqrt(solution?.covariance[i]?.[i] ?? 0);
      expect(digits(sd, certified)).toBeGreaterThan(10);
    });
  });

  it('agrees with a general-purpose fitting library on the same samples', () => {
    const rng = createRng(5);
    const x = Array.from({ length: 15 }, (_, i) => i - 6);
    const y = x.map((at) => -3 + 0.9 * at - 0.07 * at * at + 0.05 * normal(rng));
    const ours = leastSquares(
      x.map((at, i) => ({ coefficients: [1, at, at * at], value: y[i] ?? 0, sd: 0.05 })),
    );
    const theirs = levenbergMarquardt(
      { x, y },
      ([a = 0, b = 0, c = 0]: readonly number[]) =>
        (at: number) =>
          a + b * at + c * at * at,
      {
        initialValues: [-1, 1, -0.1],
        maxIterations: 500,
        errorTolerance: 0,
        jacobianFunction: () => (at: number) => [1, at, at * at],
      },
    );
    theirs.parameterValues.forEach((value: number, i: number) => {
      expect(ours?.x[i]).toBeCloseTo(value, 5);
    });
  });

  it('weighs each reading by its own uncertainty', () => {
    const constant = leastSquares([
      { coefficients: [1], value: 10, sd: 1 },
      { coefficients: [1], value: 13, sd: 2 },
    ]);
    // The weighted mean and its uncertainty, any statistics textbook: (10/1 + 13/4) / (1 + 1/4), 1/sqrt(5/4).
    expect(constant?.x[0]).toBeCloseTo(10.6, 12);
    expect(Math.sqrt(constant?.covariance[0]?.[0] ?? 0)).toBeCloseTo(1 / Math.sqrt(1.25), 12);
  });

  it('says so when the readings do not determine the answer', () => {
    expect(leastSquares([{ coefficients: [1, 2], value: 1, sd: 1 }])).toBeUndefined();
    const twice = { coefficients: [1, 2], value: 1, sd: 1 };
    expect(leastSquares([twice, twice, twice])).toBeUndefined();
  });
});
