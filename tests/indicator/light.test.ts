import { describe, expect, it } from 'vitest';
import { type Colour, glowOf, linear } from '../../src/indicator/light.ts';

const grey = (value: number): Colour => [value, value, value];

describe('light from the values of a picture', () => {
  // IEC 61966-2-1: black, white, and both sides of the join at 0.04045; 188 is half the light to within a hundredth (from memory).
  it.each([
    [0, 0],
    [255, 1],
    [10, 10 / 255 / 12.92],
    [188, 0.503],
  ])('%d is %d', (value, light) => {
    expect(linear(value)).toBeCloseTo(light, 3);
  });
});

describe('a lamp', () => {
  it('twice as bright is 3 dB brighter, whatever the exposure', () => {
    const [half, full] = [glowOf(grey(188), grey(40)).db, glowOf(grey(255), grey(40)).db];
    expect(full - half).toBeCloseTo(3, 1);
    const dimmed = (value: number): Colour =>
      grey(255 * ((linear(value) * 0.5) ** (1 / 2.4) * 1.055 - 0.055));
    expect(glowOf(dimmed(188), dimmed(120)).db).toBeCloseTo(glowOf(grey(188), grey(120)).db, 2);
  });

  // The corners of the hexagon of hues.
  it.each<[Colour, number | undefined]>([
    [[200, 0, 0], 0],
    [[200, 200, 0], 60],
    [[0, 200, 0], 120],
    [[0, 0, 200], 240],
    [[200, 0, 200], 300],
    [[120, 110, 100], undefined],
    [[124, 110, 100], 25],
  ])('of the colour %j has the hue %s', (colour, hue) => {
    expect(glowOf(colour, grey(40)).hue).toEqual(hue === undefined ? undefined : expect.closeTo(hue, 0));
  });
});
