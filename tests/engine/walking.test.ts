import { describe, expect, it } from 'vitest';
import { missingForAccept } from '../../src/engine/accept.ts';
import { advise } from '../../src/engine/advise.ts';
import { DARK_DB, isGoneBehind, isStillDark } from '../../src/engine/behind.ts';
import { inGain } from '../../src/engine/bridged.ts';
import { observe } from '../../src/engine/observe.ts';
import type { Sample } from '../../src/engine/sample.ts';
import { type Search, startSearch } from '../../src/engine/search.ts';
import { START_POINTING } from '../../src/engine/slack.ts';
import { isAsForetold, unseenSide, walkedSides } from '../../src/engine/walked.ts';
import type { Action } from '../../src/model/advice.ts';
import type { SearchFact } from '../../src/model/facts.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { valueReading } from '../../src/model/reading.ts';
import { randomPair } from '../../src/simulator/cases.ts';
import { CAREFUL, carryOut, newCrew } from '../../src/simulator/crew.ts';
import { createBeamPair, type PairSpec } from '../../src/simulator/pair.ts';
import { physicalPair } from '../../src/simulator/physical-cases.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { runEngine } from '../bench/engine-run.ts';
import { DECIBELS, goodPair } from './crew-of-two.ts';
import { beamOf, viewOf } from './given.ts';

const WALKS = { walks: true };
const walker = (): Search => startSearch(DECIBELS, NEUTRAL_ADJUSTERS, WALKS);

let seq = 0;
/** A settled number, dB of the meter, at a place. */
function sampleAt(db: number, horizontal = 0, vertical = 0, gain = 0): Sample {
  seq += 1;
  const pointing = (at: number) => START_POINTING.map(() => at);
  return {
    reading: valueReading(db),
    level: { kind: 'level', db, sd: 0.02 },
    seqs: [seq],
    from: 0,
    to: 0,
    turned: { horizontal, vertical },
    pointing: { horizontal: pointing(horizontal), vertical: pointing(vertical) },
    turns: { horizontal: 0, vertical: 0 },
    move: undefined,
    gain,
  };
}

/** What a person who walks is asked to do, and where the screws stand, until `stop`. */
function walk(spec: PairSpec, seed = 1): { kinds: Action['kind'][]; search: Search; accepted: boolean } {
  const rng = createRng(seed);
  let crew = newCrew(createBeamPair(spec));
  let search = startSearch(spec.meter, NEUTRAL_ADJUSTERS, WALKS);
  const kinds: Action['kind'][] = [];
  for (let i = 0; i < 300 && !search.accepted; i++) {
    const { advice } = advise(search, crew.at);
    kinds.push(advice.action.kind);
    const done = carryOut(crew, advice, CAREFUL, rng);
    crew = done.crew;
    for (const event of done.events) search = observe(search, event);
  }
  return { kinds, search, accepted: search.accepted?.backed ?? false };
}

describe('a person who walks to the meter', () => {
  it('reads the meter only when both adjusters are where the trip leads, and twice while there', () => {
    const { kinds, accepted } = walk(goodPair(DECIBELS));
    expect(accepted).toBe(true);
    const stays = kinds.filter((kind) => kind !== 'hold').join(' ');
    expect(stays).toMatch(/turn turn/);
    // Behind the card no signal counts at once, as for a crew of two.
    expect(stays.replace(/block read/g, '')).not.toMatch(
      /(turn|re-aim|unblock) read (turn|re-aim|block|offer)/,
    );
  });

  it('puts the card up on the way to the peak, before that place was read', () => {
    const { kinds, accepted } = walk(goodPair(DECIBELS));
    expect(accepted).toBe(true);
    expect(kinds.filter((kind) => kind === 'block')).toHaveLength(1);
    expect(kinds.join(' ')).toMatch(/turn block/);
  });

  it('tells before a trip how many turns it has, and counts down', () => {
    const rng = createRng(3);
    let crew = newCrew(createBeamPair(goodPair(DECIBELS)));
    let search = walker();
    let before: number | undefined;
    for (let i = 0; i < 60; i++) {
      const { advice } = advise(search, crew.at);
      const { turnsOnTrip } = advice.figures;
      if (advice.action.kind === 'turn' && before !== undefined && before > 1)
        expect(turnsOnTrip).toBe(before - 1);
      before = advice.action.kind === 'turn' ? turnsOnTrip : undefined;
      const done = carryOut(crew, advice, CAREFUL, rng);
      crew = done.crew;
      for (const event of done.events) search = observe(search, event);
    }
  });

  // Found by the bench while the rules were made, when one number beside the peak, or none, was enough.
  it.each([
    ['diffraction at a round opening', 8_100_014],
    ['ellipse, turned 20 to 40 degrees', 7_100_015],
    ['backlash of 2 to 5 eighths', 7_100_027],
    ['reflection, covered in the line', 7_100_015],
  ] as const)('is never accepted more than 1 dB off: %s (seed %i)', (family, seed) => {
    const rng = createRng(seed);
    const outcome = runEngine(physicalPair(family, rng), CAREFUL, rng, undefined, true, WALKS);
    expect(outcome.accepted && (outcome.shortfall > 1 || outcome.onReflection)).toBe(false);
  });

  it('is never accepted on a flank of the first simulator that once passed (seed 7001411)', () => {
    const rng = createRng(7_001_411);
    const outcome = runEngine(randomPair(rng), CAREFUL, rng, undefined, true, WALKS);
    expect(outcome.accepted && outcome.shortfall > 1).toBe(false);
  });
});

describe('what counts at another gain', () => {
  it('a number counts with the change that the same place showed, and is less certain by it', () => {
    const [far, before, after] = [sampleAt(-12, 9), sampleAt(-6), sampleAt(-3, 0, 0, 1)];
    const [moved] = inGain([far, before, after], 1);
    expect(moved?.level).toMatchObject({ kind: 'level', db: -9 });
    expect(moved?.level.kind === 'level' && moved.level.sd).toBeGreaterThan(0.02);
  });

  it('a flooded meter shows no number that could count', () => {
    const flooded: Sample = { ...sampleAt(0, 9), level: { kind: 'above', db: 0 } };
    const [before, after] = [sampleAt(-6), sampleAt(-3, 0, 0, 1)];
    expect(inGain([flooded, before, after], 1).map(({ turned }) => turned.horizontal)).toEqual([0, 0]);
  });

  it('nothing counts across a change that no place shows', () => {
    const after = sampleAt(-3, 4, 0, 1);
    expect(inGain([sampleAt(-12, 9), sampleAt(-6), after], 1)).toEqual([after]);
  });
});

describe('the card before the number', () => {
  const behind = (db: number): Sample => sampleAt(db, 5, 5);
  const searchWith = (left: Sample): Search => ({
    ...walker(),
    gain: 1,
    samples: [sampleAt(-20, 5, 5), sampleAt(-5, 5, 5, 0)],
    blocking: { seqs: [1], dark: true, behind: left },
  });

  it.each([
    [-5 - DARK_DB - 0.1, true],
    [-5 - DARK_DB, false],
    [-10, false],
  ])('left %f behind it, then the gain raised by 3 dB: dark %s', (left, wanted) => {
    expect(isGoneBehind(searchWith(behind(left)), sampleAt(-2, 5, 5, 1))).toBe(wanted);
  });

  it.each([
    [5, 5, true],
    [6, 4, true],
    [7, 5, false],
    [5, 3, false],
  ])('it counts at %i/%i, an eighth from where it was read: %s', (horizontal, vertical, wanted) => {
    expect(isStillDark(searchWith(behind(-40)), { horizontal, vertical })).toBe(wanted);
  });

  it.each([
    ['more than 13 dB below the brightest number', [-17.1, -17.1], true],
    ['so much below it, read once', [-17.1], undefined],
    ['13 dB below it', [-17, -17], undefined],
    ['nearly as bright', [-4.5, -4.5], undefined],
  ])(
    'is dark against the brightest number read, and light that stays is not known to be too much: %s',
    (_, readings, dark) => {
      const facts: SearchFact[] = [
        { type: 'path', state: 'blocked' },
        ...readings.map((db) => ({ type: 'reading', reading: valueReading(db) }) as const),
      ];
      const before: Search = { ...walker(), samples: [sampleAt(-9, 9), sampleAt(-4, 5), sampleAt(-12)] };
      const after = facts.reduce(
        (search, fact, i) => observe(search, { seq: 1_000 + i, at: 5_000 * (i + 1), fact }),
        before,
      );
      expect(after.blocking.dark).toBe(dark);
    },
  );

  it('is not passed before it was dark', () => {
    const search = { ...walker(), samples: [sampleAt(-5)], blocking: { seqs: [1] } };
    expect(missingForAccept(search, 0).map(({ id }) => id)).not.toEqual([]);
    expect(
      isGoneBehind({ ...search, blocking: { seqs: [1], behind: behind(-4) } }, sampleAt(-4, 5, 5, 1)),
    ).toBe(false);
  });
});

/** A beam eight eighths wide, its peak at zero and -4 dB. */
const beam = beamOf({ tops: [[0, { value: -4, sd: 0 }]], half: { horizontal: 8, vertical: 8 } });
const sidesOf = (...samples: Sample[]) => {
  const here = sampleAt(-4);
  return walkedSides(
    viewOf({ search: walker(), beam, here, samples: [...samples, here] }),
    here,
    'horizontal',
  );
};
const both = ({ below, above }: { below: unknown; above: unknown }) => [
  below !== undefined,
  above !== undefined,
];

describe('the sides of a peak for who walks', () => {
  it.each([
    ['both far enough', [-8, -8, 0], [8, -8, 0], [true, true]],
    ['one nearer, the other as much farther', [-6, -6, 0], [9, -8, 0], [true, true]],
    ['one nearer, the other not farther', [-6, -6, 0], [8, -8, 0], [false, true]],
    ['one too near, however far the other', [-5, -6, 0], [14, -12, 0], [false, true]],
    ['the other nearer, the first as much farther', [-9, -8, 0], [6, -6, 0], [true, true]],
    ['the other nearer, the first not farther', [-8, -8, 0], [6, -6, 0], [true, false]],
    ['the other too near, however far the first', [-14, -12, 0], [5, -6, 0], [true, false]],
    ['half a half-width beside the line', [-8, -8, 4], [8, -8, 4], [true, true]],
    ['farther beside the line', [-8, -8, 5], [8, -8, 0], [false, true]],
    ['beside the line, lower by no more than that explains', [-8, -5, 4], [8, -8, 0], [false, true]],
    ['on the line, as bright', [-8, -4.2, 0], [8, -8, 0], [false, true]],
  ] as const)('%s', (_, low, high, wanted) => {
    const at = ([horizontal, db, vertical]: readonly [number, number, number]) =>
      sampleAt(db, horizontal, vertical);
    expect(both(sidesOf(at(low), at(high)))).toEqual(wanted);
  });
});

describe('the shape of the light beside the peak', () => {
  it.each([
    ['one number on each side, 10 dB lower at most', [-14, -14], undefined],
    ['one side too far down', [-14.1, -8], -1],
    ['the other too far down', [-8, -14.1], 1],
  ] as const)('%s', (_, [low, high], wanted) => {
    const here = sampleAt(-4);
    const view = viewOf({
      search: walker(),
      beam,
      here,
      samples: [sampleAt(low, -8), sampleAt(high, 8), here],
    });
    expect(unseenSide(view, here, 'horizontal')).toBe(wanted);
  });

  it.each([
    ['half a half-width beside the line', sampleAt(-8, -8, 4), undefined],
    ['farther beside the line', sampleAt(-8, -8, 5), -1],
    ['at another gain', { ...sampleAt(-8, -8), gain: sampleAt(0).gain + 1 }, -1],
  ] as const)('one side %s', (_, side, wanted) => {
    const here = sampleAt(-4);
    const view = viewOf({ search: walker(), beam, here, samples: [side, sampleAt(-8, 8), here] });
    expect(unseenSide(view, here, 'horizontal')).toBe(wanted);
  });

  it('where nothing was foretold, no number is as foretold', () => {
    expect(isAsForetold(viewOf({ expected: undefined }), sampleAt(-4))).toBe(false);
  });

  it.each([
    [-4.2, 0, true],
    [-4.3, 0, false],
    [-4.9, 0.4, true],
    [-5.1, 0.4, false],
    // So vague a prediction excuses no more than this.
    [-5.5, 3, true],
    [-5.7, 3, false],
  ])('foretold %f give or take %f, read -4: as foretold %s', (value, sd, wanted) => {
    expect(isAsForetold(viewOf({ expected: { value, sd } }), sampleAt(-4))).toBe(wanted);
  });
});
