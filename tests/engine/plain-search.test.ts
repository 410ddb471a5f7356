import { describe, expect, it } from 'vitest';
import { lacking, PITCH, readLine, SIDE, trusted } from '../../src/engine/line.ts';
import type { Sample } from '../../src/engine/sample.ts';
import { startSearch } from '../../src/engine/search.ts';
import { BACKLASHES } from '../../src/engine/slack.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { CAREFUL } from '../../src/simulator/crew.ts';
import { physicalPair } from '../../src/simulator/physical-cases.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { runEngine } from '../bench/engine-run.ts';
import { DECIBELS } from './crew-of-two.ts';
import { at, seen } from './given.ts';

/** A reading with the horizontal screw's backlash taken up clockwise; `up` false: not taken up. */
function read(place: number, db: number | 'dark' | 'flooded', { up = true, seq = 1 } = {}): Sample {
  const behind = (backlash: number) => (up ? backlash / 2 : -backlash / 2);
  return seen(at(place), db, {
    seqs: [seq],
    pointing: { horizontal: BACKLASHES.map((b) => place - behind(b)), vertical: BACKLASHES.map(() => 0) },
  });
}

const line = (...readings: [number, number | 'dark' | 'flooded'][]) =>
  readLine(
    readings.map(([place, db]) => read(place, db)),
    'horizontal',
  );

describe('The plain search reads a line (bracketing, common practice)', () => {
  it('and takes the middle between the places that are 1 dB lower, whatever the shape between them', () => {
    // Flat from -6 to 6: the readings on the top say nothing, their noise least of all.
    const flat = line([-9, -9], [-6, -4.02], [-3, -4], [0, -4.03], [3, -4.01], [6, -4], [9, -9]);
    expect(flat?.middle).toBe(0);
  });

  it('and takes the brightest place where the middle is darker: a ring', () => {
    const ring = line([-9, -12], [-6, -4], [-3, -4.6], [0, -4.8], [3, -4.6], [6, -4.2], [9, -12]);
    expect(ring?.middle).toBe(-6);
  });

  it.each([
    [-SIDE, true],
    [-SIDE + 1, false],
  ])('and needs a lower reading %i eighths below the middle: proven %s', (place, isProven) => {
    const found = line([place, -9], [-PITCH, -5.2], [0, -4], [PITCH, -5.2], [SIDE, -9]);
    expect(found?.middle).toBe(0);
    expect(found?.below !== undefined).toBe(isProven);
    expect(found && lacking(found, 'horizontal').length === 0).toBe(isProven);
  });

  it.each([
    ['as bright', -4],
    ['within noise', -4.1],
  ])('and goes further out where a side reads %s', (_, db) => {
    const found = line([-SIDE, db], [-PITCH, -4], [0, -4], [PITCH, -4], [SIDE, -9]);
    expect(found && lacking(found, 'horizontal').some((place) => place < -SIDE)).toBe(true);
  });

  it('and does not count places that were not reached clockwise: backlash', () => {
    const found = readLine(
      [read(-SIDE, -9, { up: false }), read(-3, -5), read(0, -4), read(3, -5), read(SIDE, -9)],
      'horizontal',
    );
    expect(found?.places.map((s) => s.turned.horizontal)).toEqual([-3, 0, 3, SIDE]);
    expect(found?.below).toBeUndefined();
  });
});

describe('What was read before a place that reads differently now no longer counts', () => {
  it.each([
    [-4.45, 3],
    [-4.55, 1],
  ])('first -4, then %f: %i readings are left', (db, left) => {
    const search = {
      ...startSearch(DECIBELS, NEUTRAL_ADJUSTERS),
      floor: { since: 0, moves: 0 },
      samples: [read(0, -4), read(3, -5)],
    };
    expect(trusted(search, read(0, db))).toHaveLength(left);
  });
});

it.each([60002, 60003, 60004])(
  'a ring with a dip in the middle ends accepted on the ring: seed %i',
  (seed) => {
    const rng = createRng(seed);
    const rules = new Set<string>();
    const outcome = runEngine(physicalPair('ring with a dip in the middle', rng), CAREFUL, rng, (step) => {
      rules.add(step.advice.rule);
    });
    expect(outcome.accepted).toBe(true);
    expect(outcome.shortfall).toBeLessThan(0.3);
    expect(outcome.turns).toBeLessThanOrEqual(150);
    expect(rules).toContain('plain-search');
  },
);
