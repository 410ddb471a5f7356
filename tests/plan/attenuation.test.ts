import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dbOfPercent,
  HALF_COVER_DB,
  LOSS_FORMS,
  lossInAllForms,
  percentOfDb,
} from '../../src/plan/attenuation.ts';

describe('loss of light', () => {
  // Definition used by EN 54-12 and ISO 7240-12 (from memory); the values are its arithmetic.
  it.each([
    [25, 1.249],
    [35, 1.871],
    [50, 3.01],
    [60, 3.979],
    [90, 10],
  ])('%d percent is %d dB', (percent, db) => {
    expect(dbOfPercent(percent)).toBeCloseTo(db, 3);
    expect(percentOfDb(dbOfPercent(percent))).toBeCloseTo(percent, 9);
  });

  // Common practice, no source.
  it('half the face covered leaves half the power: 3 dB', () => {
    expect(HALF_COVER_DB).toBeCloseTo(3.0103, 4);
  });

  // EN 54-7 (decibels a metre) and Beer-Lambert (optical density a metre), from memory: 1 dB/m is OD 0.1 a metre.
  it('1 dB/m is an optical density of 0.1 a metre, over any path', () => {
    expect(lossInAllForms(1, 'dB/m', 40)).toMatchObject({ dB: 40, 'OD/m': 0.1 });
  });

  // UL 268 (from memory): Ou = 100 * (1 - (P/P0)^(1/d)), d in feet. Worked from that formula, not from ours.
  it.each([
    [0.5, 100],
    [0.8, 32.81],
    [0.05, 300],
  ])('P/P0 = %d over %d ft', (left, feet) => {
    const perFoot = 100 * (1 - left ** (1 / feet));
    expect(lossInAllForms(100 * (1 - left), 'percent', feet * 0.3048)?.['percent/ft']).toBeCloseTo(
      perFoot,
      9,
    );
  });

  // EN 54-7 (from memory): m = (10/d) * log10(P0/P).
  it.each([
    [0.5, 10],
    [0.65, 62],
  ])('P/P0 = %d over %d m', (left, metres) => {
    const perMetre = (10 / metres) * Math.log10(1 / left);
    expect(lossInAllForms(100 * (1 - left), 'percent', metres)?.['dB/m']).toBeCloseTo(perMetre, 9);
  });

  it('every form can be turned into every other and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 30, noNaN: true }),
        fc.double({ min: 1, max: 300, noNaN: true }),
        (db, metres) => {
          const all = lossInAllForms(db, 'dB', metres);
          for (const form of LOSS_FORMS) {
            const again = all && lossInAllForms(all[form], form, metres);
            expect(again?.dB).toBeCloseTo(db, 6);
          }
        },
      ),
    );
  });

  it.each([
    [-1, 'dB'],
    [100, 'percent'],
    [101, 'percent'],
    [Number.NaN, 'dB/m'],
  ] as const)('%d %s is no loss', (value, form) => {
    expect(lossInAllForms(value, form, 50)).toBeUndefined();
  });

  it('there is no loss per metre when there is no path', () => {
    expect(lossInAllForms(1, 'dB', 0)).toBeUndefined();
  });
});
