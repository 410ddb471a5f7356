import { describe, expect, it } from 'vitest';
import { type MeterProfile, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { figuresText } from '../../src/phrases/figures.ts';

const meterIn = (unit: string) => NEUTRAL_METERS.find((meter) => meter.unit === unit) as MeterProfile;
const PERCENT = meterIn('percent');
const DB = meterIn('dB');

describe('how far a place may be below its peak', () => {
  it.each<[string, Record<string, number>, MeterProfile, string]>([
    // Ten to the power of 0.03, times 50.
    [
      'is told in the meter’s own numbers',
      { shortfall: 0.3, reading: 50 },
      PERCENT,
      'the peak may read up to 54',
    ],
    // Half the light is 3.01 dB, by definition of the decibel.
    ['is told up to half the light', { shortfall: 3, reading: 20 }, PERCENT, 'the peak may read up to 40'],
    [
      'is not told of a peak that nobody has seen',
      { shortfall: 3.01, reading: 20 },
      PERCENT,
      'the peak is not known yet',
    ],
    ['is not told of 75 dB', { shortfall: 75, reading: 20 }, PERCENT, 'the peak is not known yet'],
    [
      'is not told where nothing is fitted',
      { shortfall: Number.POSITIVE_INFINITY },
      PERCENT,
      'the peak is not known yet',
    ],
    [
      'is told of a peak off the scale',
      { shortfall: 3, reading: 60 },
      PERCENT,
      'the peak may saturate the meter',
    ],
    ['is told in dB on a meter of dB', { shortfall: 0.3, reading: -5 }, DB, 'up to 0.30 dB below the peak'],
    [
      'is not told of an unseen peak in dB either',
      { shortfall: 4, reading: -5 },
      DB,
      'the peak is not known yet',
    ],
  ])('%s', (_, figures, meter, text) => {
    expect(figuresText(figures, meter).replace(/^.*reading -?[\d.]+, |, reading -?[\d.]+$/, '')).toBe(text);
  });
});

describe('how sure a figure is', () => {
  it.each<[string, Record<string, number>, MeterProfile, string]>([
    ['in the meter’s numbers', { peak: 50, uncertaintyDb: 0.3 }, PERCENT, 'peak about 50, plus or minus 4'],
    ['never nought', { expected: 50, uncertaintyDb: 0.01 }, PERCENT, 'expected 50, plus or minus 1'],
    [
      'in dB on a meter of dB',
      { peak: -5, uncertaintyDb: 0.3 },
      DB,
      'peak about -5.0, plus or minus 0.30 dB',
    ],
  ])('%s', (_, figures, meter, text) => {
    expect(figuresText(figures, meter)).toBe(text);
  });
});

describe('what the gain is set to', () => {
  it('beside the peak is told with what the peak then reads: the two do not contradict each other', () => {
    expect(figuresText({ peak: 80, uncertaintyDb: 0.1, toward: 35 }, PERCENT)).toContain(
      '35 here, so that the peak reads 55',
    );
  });

  it('at the peak is told alone', () => {
    expect(figuresText({ reading: 80, low: 40, high: 70, toward: 55 }, PERCENT)).toMatch(/toward 55$/);
  });

  it('while the peak is not known is told to be below the band, where it is, and why', () => {
    const { bandLow } = PERCENT;
    expect(figuresText({ toward: bandLow - 1 }, PERCENT)).toBe(
      'toward 39, below the band: the peak may be brighter',
    );
    expect(figuresText({ toward: bandLow }, PERCENT)).toBe('toward 40');
  });
});
