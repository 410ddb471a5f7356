import { describe, expect, it } from 'vitest';
import { missingForAccept } from '../../src/engine/accept.ts';
import { advise } from '../../src/engine/advise.ts';
import { toLevel } from '../../src/engine/level.ts';
import { readAtGain } from '../../src/engine/line.ts';
import { lostOnReturn } from '../../src/engine/loss.ts';
import { observe } from '../../src/engine/observe.ts';
import type { Sample, Turn } from '../../src/engine/sample.ts';
import { type Search, startSearch } from '../../src/engine/search.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { valueReading } from '../../src/model/reading.ts';
import { physicalPair } from '../../src/simulator/physical-cases.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { DECIBELS } from './crew-of-two.ts';
import { at, seen, viewOf } from './given.ts';

const STEPS = physicalPair('meter of 0 to 8 steps', createRng(1)).meter;

/** A number read twice on a meter, after so many turns of the horizontal adjuster. */
const shown = (meter: MeterProfile, value: number, turns: number, place = 0, seq = 10 * turns + 6): Sample =>
  seen(at(place), 0, {
    reading: valueReading(value),
    level: toLevel(valueReading(value), meter, 2),
    seqs: [seq, seq + 1],
    turns: at(turns),
    move: { seq: 10 * turns + 5, turn: turnOf(turns) },
  });

/** Turn number `n` of the horizontal adjuster is entry `10 n + 5`. */
const turnOf = (n: number): Turn => ({ axis: 'horizontal', eighths: n });
const made = (n: number): Search['made'] =>
  Array.from({ length: n }, (_, i) => ({
    seq: 10 * (n - i) + 5,
    turn: turnOf(n - i),
    corrected: false,
  })).slice(0, 8);

const searchOf = (meter: MeterProfile, samples: readonly Sample[], more: Partial<Search> = {}): Search => ({
  ...startSearch(meter, NEUTRAL_ADJUSTERS),
  floor: { since: 0 },
  made: made(4),
  samples,
  ...more,
});

/** Which turn is asked about, by its entry; or what else is asked for. */
function asked(search: Search, here: Sample): number | string | undefined {
  const action = lostOnReturn(viewOf({ search, here }))?.advice.action;
  if (action?.kind !== 'ask') return action?.kind;
  return action.question.about;
}

describe('A place near the top should read as it did when the crew comes back (common practice, no source)', () => {
  it.each([
    [5, 5, false],
    [5, 4, true],
    [4, 3, true],
    [4, 5, false],
    [6, 5, true],
  ])(
    'on a meter of 8 steps, where a step is a whole decibel: %i, then %i: asked %s',
    (before, now, isAsked) => {
      const search = searchOf(STEPS, [shown(STEPS, before, 0), shown(STEPS, 3, 2, 5)]);
      expect(asked(search, shown(STEPS, now, 4)) !== undefined).toBe(isAsked);
    },
  );

  // Of a meter of tenths of a decibel, and 0.2 dB of tolerance.
  it.each([
    [-4.31, true],
    [-4.29, false],
    [-4, false],
    [-3, false],
  ])('on a fine meter by more than 0.3 dB: -4, then %f dB: asked %s', (now, isAsked) => {
    const search = searchOf(DECIBELS, [shown(DECIBELS, -4, 0)]);
    expect(asked(search, shown(DECIBELS, now, 4)) !== undefined).toBe(isAsked);
  });

  it.each([
    [0.5, true],
    [0.6, false],
  ])('and by more than the tolerance of the meter: %f dB of it', (tolerance, isAsked) => {
    const meter = { ...DECIBELS, tolerance };
    const search = searchOf(meter, [shown(meter, -4, 0)]);
    expect(asked(search, shown(meter, -4.55, 4)) !== undefined).toBe(isAsked);
  });

  it.each([
    [-4.99, true],
    [-5.01, false],
  ])('within 1 dB of the brightest, for hands stray on a flank: %f dB below -4', (before, isAsked) => {
    const search = searchOf(DECIBELS, [shown(DECIBELS, -4, 1, 5), shown(DECIBELS, before, 0)]);
    expect(asked(search, shown(DECIBELS, -7, 4)) !== undefined).toBe(isAsked);
  });

  it('at this gain, and since the search began', () => {
    const other = { ...shown(STEPS, 5, 0), gain: 1 };
    expect(asked(searchOf(STEPS, [other]), shown(STEPS, 4, 4))).toBeUndefined();
    const since = (floor: number) => searchOf(STEPS, [shown(STEPS, 5, 0)], { floor: { since: floor } });
    expect(asked(since(6), shown(STEPS, 4, 4))).toBe(45);
    expect(asked(since(7), shown(STEPS, 4, 4))).toBeUndefined();
  });

  it('and where nothing is left of the light, too', () => {
    const dark = seen(at(0), 'dark', { seqs: [46, 47], turns: at(4) });
    expect(asked(searchOf(DECIBELS, [shown(DECIBELS, -4, 0)]), dark)).toBe(45);
  });

  it('is read twice before anybody is asked', () => {
    const once = { ...shown(STEPS, 4, 4), seqs: [46] };
    expect(asked(searchOf(STEPS, [shown(STEPS, 5, 0)]), once)).toBe('read');
  });
});

describe('Where it does not, each turn since is asked about', () => {
  const before = [shown(STEPS, 5, 1), shown(STEPS, 3, 2, 5)];
  const now = shown(STEPS, 4, 4);

  it.each([
    [[], 45],
    [[45], 35],
    [[45, 35], 25],
    // Turn 1 was made before the place was read.
    [[45, 35, 25], undefined],
    [[35], 45],
  ])('the newest first, until all are sure: %j are, %s is asked', (confirmed, entry) => {
    expect(asked(searchOf(STEPS, before, { confirmed }), now)).toBe(entry);
  });

  it('but for one that was corrected, which is sure', () => {
    const [last, ...others] = made(4);
    const search = searchOf(STEPS, before, { made: last ? [{ ...last, corrected: true }, ...others] : [] });
    expect(asked(search, now)).toBe(35);
  });

  it('as it was reported, and how many turns ago', () => {
    const question = (confirmed: number[]) =>
      lostOnReturn(viewOf({ search: searchOf(STEPS, before, { confirmed }), here: now }))?.advice;
    expect(question([])).toMatchObject({
      rule: 'doubt-turn',
      action: { question: { kind: 'which-move', about: 45, options: [turnOf(4)] } },
    });
    expect(question([])?.action).not.toHaveProperty('question.ago');
    expect(question([45])?.action).toMatchObject({ question: { about: 35, options: [turnOf(3)], ago: 2 } });
  });

  it('and not those after the light was lost', () => {
    const samples = [...before, now];
    const later = { ...shown(STEPS, 4, 6) };
    const search = searchOf(STEPS, samples, { made: made(6), confirmed: [25, 35] });
    expect(asked(search, later)).toBe(45);
    expect(asked({ ...search, confirmed: [25, 35, 45] }, later)).toBeUndefined();
  });

  it('and nothing is accepted before', () => {
    const run = [46, 47].map((seq) => ({ seq, at: 1_000 * seq, reading: valueReading(4) }));
    const search = searchOf(STEPS, before, { turns: at(4), stay: { since: 0, run, breaks: 0 } });
    const lacks = (confirmed: number[]) =>
      missingForAccept({ ...search, confirmed }, 50_000).some(({ id }) => id === 'settled-doubt');
    expect(lacks([])).toBe(true);
    expect(lacks([45, 35])).toBe(true);
    expect(lacks([45, 35, 25])).toBe(false);
    expect(advise(search, 50_000).advice.rule).toBe('doubt-turn');
  });

  it('by the newest eight that were counted; a correction says which was made', () => {
    let search = startSearch(STEPS, NEUTRAL_ADJUSTERS);
    for (let seq = 0; seq < 10; seq++)
      search = observe(search, { seq, at: seq, fact: { type: 'move', axis: 'vertical', eighths: 2 } });
    expect(search.made.map(({ seq }) => seq)).toEqual([9, 8, 7, 6, 5, 4, 3, 2]);
    const fact = { type: 'move', axis: 'vertical', eighths: 1, replaces: 8 } as const;
    search = observe(search, { seq: 10, at: 10, fact });
    expect(search.made[1]).toEqual({ seq: 10, turn: { axis: 'vertical', eighths: 1 }, corrected: true });
    expect(observe(search, { seq: 11, at: 11, fact: { type: 're-aimed' } }).made).toEqual([]);
  });
});

describe('Where every turn was right, the light itself changes', () => {
  /** It fell from -4 by so much in the first two turns, which are sure, and has now fallen from -4 to `now`. */
  const asksAgain = (meter: MeterProfile, [first, then, third, now]: [number, number, number, number]) => {
    const samples = [
      shown(meter, first, 0),
      shown(meter, -9, 1, 5),
      shown(meter, then, 2),
      shown(meter, third, 3),
    ];
    const search = searchOf(meter, samples, { confirmed: [15, 25] });
    return asked(search, shown(meter, now, 4)) !== undefined;
  };

  it.each([
    [-4.69, false],
    [-4.71, true],
  ])(
    'and is asked about again only where it fell by 0.3 dB more than it did: -4, -4.4, -4, %f dB',
    (now, isAsked) => {
      expect(asksAgain(DECIBELS, [-4, -4.4, -4, now])).toBe(isAsked);
    },
  );

  it('which a fall of no more than 0.3 dB does not tell', () => {
    expect(asksAgain(DECIBELS, [-4, -4.29, -4, -4.5])).toBe(true);
    expect(asksAgain(DECIBELS, [-4, -4.31, -4, -4.5])).toBe(false);
  });

  it('but not while a turn is not sure', () => {
    const samples = [shown(DECIBELS, -4, 0), shown(DECIBELS, -4.4, 2), shown(DECIBELS, -4, 3)];
    expect(asked(searchOf(DECIBELS, samples), shown(DECIBELS, -4.4, 4))).toBe(45);
  });

  it('but always where one step of the meter may hide a slip', () => {
    expect(asksAgain(STEPS, [5, 4, 5, 4])).toBe(true);
  });
});

it.each([
  ['few steps', STEPS, 5, 4, 45],
  ['many', DECIBELS, -4, -5, undefined],
] as const)(
  'With a model a meter of %s is asked about: others contradict the beam',
  (_, meter, before, now, entry) => {
    const search = searchOf(meter, [shown(meter, before, 0)], { floor: undefined });
    expect(asked(search, shown(meter, now, 4))).toBe(entry);
  },
);

it.each([
  ['few steps', STEPS, 5, 4, 8, 2],
  ['few steps', STEPS, 5, 4, 9, 1],
  ['few steps', STEPS, 5, 5, 9, 2],
  ['many', DECIBELS, -4, -5, 9, 2],
] as const)(
  'After more turns than people remember, what was read before on a meter of %s counts no more: %#',
  (_, meter, before, now, turns, left) => {
    const here = shown(meter, now, turns);
    const search = searchOf(meter, [shown(meter, before - 0.1, 0, 3), shown(meter, before, 0)]);
    expect(readAtGain({ search, here })).toHaveLength(left);
  },
);

it('but not on a flank, where hands that stray change it', () => {
  const search = searchOf(STEPS, [shown(STEPS, 6, 0, 3), shown(STEPS, 4, 0)]);
  expect(readAtGain({ search, here: shown(STEPS, 3, 9) })).toHaveLength(2);
});
