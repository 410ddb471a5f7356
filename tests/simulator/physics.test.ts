import { describe, expect, it } from 'vitest';
import { AIRY_HALF, airy, besselJ1 } from '../../src/simulator/airy.ts';
import { type Lobe, lobePower } from '../../src/simulator/beam.ts';
import { polarised, reflectance, wallLight } from '../../src/simulator/fresnel.ts';
import { type LensSource, lensPower } from '../../src/simulator/lens.ts';
import { createBeamPair, shortfallDb, turn } from '../../src/simulator/pair.ts';
import { FAMILIES, physicalPair } from '../../src/simulator/physical-cases.ts';
import { createRng } from '../../src/simulator/rng.ts';

const degrees = (n: number): number => (n * Math.PI) / 180;
const db = (share: number): number => 10 * Math.log10(share);

describe('diffraction at a round opening (Airy; optics textbooks, tables of Bessel functions, from memory)', () => {
  it('has its first dark ring at 1.22 wavelengths over the diameter', () => {
    const first = 1.2197 * Math.PI;
    expect(airy(first)).toBeLessThan(1e-8);
    expect(airy(first - 0.1)).toBeGreaterThan(1e-4);
    expect(airy(first + 0.1)).toBeGreaterThan(1e-4);
  });

  it('has its first bright ring at 1.635 wavelengths over the diameter, 17.6 dB down', () => {
    expect(db(airy(1.635 * Math.PI))).toBeCloseTo(-17.57, 1);
  });

  it('falls to half where the table says, and J1 has its greatest value of 0.5819 at 1.8412', () => {
    expect(airy(AIRY_HALF)).toBeCloseTo(0.5, 5);
    expect(besselJ1(1.8412)).toBeCloseTo(0.5819, 4);
    expect(airy(0)).toBe(1);
  });
});

describe("mirrored light (Fresnel's equations; optics textbooks, from memory)", () => {
  it('is 4 % at glass from straight on', () => {
    expect(reflectance(1.5, 0)).toBeCloseTo(0.04, 6);
  });

  it("has no part that swings in the plane of incidence at Brewster's angle, 56.3 degrees for glass", () => {
    expect(polarised(1.5, Math.atan(1.5)).p).toBeCloseTo(0, 12);
    expect(polarised(1.5, degrees(56.31)).p).toBeLessThan(1e-8);
    expect(polarised(1.5, degrees(56.31)).s).toBeCloseTo(0.1479, 3);
  });

  it('is nearly all along the wall', () => {
    expect(reflectance(1.5, degrees(89.9))).toBeGreaterThan(0.98);
    const near = wallLight(1.5, 40, 0.4);
    const far = wallLight(1.5, 40, 4);
    expect(near.angle).toBeCloseTo(Math.atan(0.8 / 40), 12);
    expect(near.belowDb).toBeLessThan(1);
    expect(far.belowDb).toBeGreaterThan(near.belowDb);
  });
});

describe('a glowing disc behind a lens, by rays', () => {
  const disc: LensSource = { softness: 0.02, dip: 0, hole: 0.5, defocus: 0, clipped: 0 };

  it('in the focus, is a sharp picture of the disc', () => {
    expect(lensPower(disc, 0.8, 0)).toBeCloseTo(1, 3);
    expect(lensPower(disc, 1.2, 0)).toBeLessThan(0.001);
  });

  it('out of the focus, loses its edge over as much as the rays are thrown off (geometrical optics)', () => {
    const blurred = { ...disc, defocus: 0.5 };
    expect(lensPower(blurred, 0.4, 0)).toBeCloseTo(1, 2);
    expect(lensPower(blurred, 0.8, 0)).toBeLessThan(0.9);
    expect(lensPower(blurred, 1.3, 0)).toBeGreaterThan(0.03);
    expect(lensPower(blurred, 1.6, 0)).toBeLessThan(0.001);
  });

  it('half covered, gives half the light in the focus, and leans to one side out of it', () => {
    const half = { ...disc, clipped: 0.5 };
    expect(db(lensPower(half, 0, 0))).toBeCloseTo(-3, 0);
    const leaning = { ...half, defocus: 0.6 };
    expect(lensPower(leaning, -1, 0) / lensPower(leaning, 1, 0)).toBeGreaterThan(3);
  });

  it('with a dark middle, is brighter on a ring around it', () => {
    const ring = { ...disc, dip: 0.5, hole: 0.4 };
    expect(db(lensPower(ring, 0.7, 0) / lensPower(ring, 0, 0))).toBeGreaterThan(2);
  });
});

it('an ellipse whose axes are turned is as bright along its own long axis on either side', () => {
  const lobe: Lobe = {
    shape: { kind: 'gaussian' },
    horizontal: 0,
    vertical: 0,
    halfHorizontal: 8,
    halfVertical: 4,
    belowDb: 0,
    reflected: false,
    turnedBy: degrees(30),
  };
  const along = (angle: number) =>
    lobePower(lobe, 8 * Math.cos(degrees(angle)), 8 * Math.sin(degrees(angle)));
  expect(along(30)).toBeCloseTo(0.5, 9);
  expect(along(210)).toBeCloseTo(0.5, 9);
  expect(along(120)).toBeCloseTo(1 / 16, 9);
  expect(along(-30)).toBeLessThan(along(30));
});

it('what a hand turned too far stays with the screw, and only the hand does not know it', () => {
  const pair = createBeamPair({
    ...physicalPair('wide cosine lobe', createRng(1)),
    backlash: { horizontal: 0, vertical: 0 },
  });
  const turned = turn(turn(pair, 'horizontal', 4, 0, 0.25), 'horizontal', -4, 0, 0);
  expect(turned.turned.horizontal).toBe(0);
  expect(turned.pointing.horizontal).toBeCloseTo(0.25, 12);
});

it.each(FAMILIES)('"%s": no place near the middle is brighter than the one called best', (family) => {
  for (let seed = 1; seed <= 5; seed++) {
    const spec = physicalPair(family, createRng(seed));
    const [main] = spec.lobes;
    const pair = createBeamPair(spec);
    for (const [h, v] of [
      [0, 0],
      [0.6, 0],
      [-0.6, 0],
      [0, 0.6],
      [0, -0.6],
    ] as const) {
      const pointing = {
        horizontal: main.horizontal + h * main.halfHorizontal,
        vertical: main.vertical + v * main.halfVertical,
      };
      expect(shortfallDb({ ...pair, pointing })).toBeGreaterThan(-0.1);
    }
  }
});
