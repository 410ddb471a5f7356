import { describe, expect, it } from 'vitest';
import { missingForAccept } from '../../src/engine/accept.ts';
import { shortfallDb } from '../../src/engine/beam.ts';
import { look } from '../../src/engine/view.ts';
import { at } from './given.ts';
import { Proof, proven } from './proven.ts';

const missing = (proof: Proof, now = proof.at) => missingForAccept(proof.search, now);

describe('Acceptance', () => {
  it('lacks nothing once all of it is proven', () => {
    expect(missing(proven())).toEqual([]);
  });

  it('looks at nothing else while the path is not clear', () => {
    const proof = proven();
    proof.say({ type: 'path', state: 'partial' });
    expect(missing(proof)).toEqual([{ id: 'clear-path', figures: {} }]);
  });

  it('looks at nothing else before there is a settled reading', () => {
    const proof = new Proof().brackets().blocks();
    expect(missing(proof)).toEqual([{ id: 'settled-reading', figures: {} }]);
  });

  it('asks for the band where the meter shows no number in it', () => {
    const proof = new Proof();
    proof.reads('flooded');
    const found = missing(proof);
    expect(found).toContainEqual({ id: 'not-saturated', figures: {} });
    expect(found).toContainEqual({ id: 'in-band', figures: { low: -6, high: -3 } });
    proof.turns('horizontal', 12);
    proof.reads('nothing');
    expect(missing(proof)).not.toContainEqual({ id: 'not-saturated', figures: {} });
    expect(missing(proof)).toContainEqual({ id: 'in-band', figures: { low: -6, high: -3 } });
  });

  it('names no higher reading where there is no signal to hold against it', () => {
    const proof = new Proof();
    proof.reads(proof.level);
    proof.turns('horizontal', 12);
    proof.reads('nothing');
    expect(missing(proof).map(({ id }) => id)).not.toContain('highest-reading');
  });

  it.each([
    [-6, []],
    [-6.01, [{ id: 'in-band', figures: { reading: -6.01, low: -6, high: -3 } }]],
    [-3, []],
    [-2.99, [{ id: 'in-band', figures: { reading: -2.99, low: -6, high: -3 } }]],
  ])('at a peak of %f on a band from -6 to -3 lacks %j', (top, expected) => {
    expect(missing(proven({ top }))).toEqual(expected);
  });

  // One turn of the hand is 12 eighths; a side counts from 0.6 of it, 7.2.
  it.each([
    [-8, 8, undefined],
    [-7, 8, { below: 0, above: 1 }],
    [-8, 7, { below: 1, above: 0 }],
    [-7, 7, { below: 0, above: 0 }],
  ])('with sides read at %i and %i eighths lacks brackets as %j', (below, above, figures) => {
    const expected = figures
      ? [
          { id: 'bracket-horizontal', figures },
          { id: 'bracket-vertical', figures },
        ]
      : [];
    expect(missing(proven({ below, above }))).toEqual(expected);
  });

  it.each([
    [2, 2, []],
    [1, 2, ['at-peak']],
    [2, 1, ['at-peak']],
    [7, 7, []],
    [8, 7, ['at-peak']],
    [7, 8, ['at-peak']],
  ])(
    'with the nearest readings %i and %i eighths from peaks that fall to half at 8 lacks %j',
    (h, v, expected) => {
      expect(missing(proven({ close: at(h, v) })).map(({ id }) => id)).toEqual(expected);
    },
  );

  it.each([
    [2, 0.19, []],
    [2.08, 0.21, ['at-peak']],
  ])(
    'with the beam peaking %f eighths away, higher by %f dB of 0.2, lacks %j',
    (off, shortfall, expected) => {
      const proof = proven({ peak: at(off) });
      const { beam, here } = look(proof.search);
      expect(beam && here && shortfallDb(beam, here)).toBeCloseTo(shortfall, 2);
      expect(missing(proof).map(({ id }) => id)).toEqual(expected);
    },
  );

  // Read 3 eighths away, on the side where the beam peaks.
  it.each([
    [2.53, 0.29, undefined],
    [2.61, 0.31, { best: -4.5, reading: -4.8 }],
  ])(
    'with the beam peaking %f eighths away and read higher by %f dB there names the readings: %j',
    (off, by, figures) => {
      const found = missing(proven({ peak: at(off) }));
      const drop = (from: number) => 3 * ((from - off) / 8) ** 2;
      expect(drop(0) - drop(3)).toBeCloseTo(by, 2);
      expect(found.map(({ id }) => id)).toEqual(figures ? ['highest-reading', 'at-peak'] : ['at-peak']);
      if (figures) expect(found[0]?.figures).toEqual(figures);
      expect(found.at(-1)?.figures.shortfall).toBeGreaterThan(0.3);
    },
  );

  it.each([
    [0, 'does not wait'],
    [3, 'waits'],
  ])('at a reading %f dB below what those before foretell %s for an answer', (by, says) => {
    const proof = proven();
    proof.turns('vertical', 4);
    proof.reads(proof.level - by);
    const doubts = missing(proof).filter(({ id }) => id === 'settled-doubt');
    expect(doubts).toEqual(says === 'waits' ? [{ id: 'settled-doubt', figures: {} }] : []);
  });

  it.each([
    [19, 'has looked far enough'],
    [20, 'looks as far on the other side of the aim'],
  ])('at a peak %i eighths from the aim, of a beam that falls to half at 8, %s', (far, says) => {
    const found = missing(proven({ place: at(far) })).map(({ id }) => id);
    expect(found).toEqual(says === 'has looked far enough' ? [] : ['second-peak']);
  });

  it('lacks the path blocked and free again', () => {
    expect(missing(new Proof().brackets().holds())).toEqual([{ id: 'blocking-check', figures: {} }]);
  });

  it.each([
    [10_000, []],
    [9_999, [{ id: 'steady-hold', figures: { held: 9.999, needed: 10 } }]],
  ])('with a reading held for %i ms of ten seconds lacks %j', (ms, expected) => {
    expect(missing(new Proof().brackets().blocks().holds(ms))).toEqual(expected);
  });

  it.each([
    [300_000, []],
    [300_001, [{ id: 'fresh-reading', figures: { age: 300.001 } }]],
  ])('%i ms after the last reading, of five minutes, lacks %j', (age, expected) => {
    const proof = proven();
    expect(missing(proof, proof.at + age)).toEqual(expected);
  });
});
