import { describe, expect, it } from 'vitest';
import { advise } from '../../src/engine/advise.ts';
import { observe } from '../../src/engine/observe.ts';
import { startSearch } from '../../src/engine/search.ts';
import type { SearchFact } from '../../src/model/facts.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { NO_SIGNAL, valueReading } from '../../src/model/reading.ts';
import { DECIBELS, goodPair, Job, PERCENT, workUntil } from './crew-of-two.ts';

describe('settling', () => {
  it('asks for a reading before any turn', () => {
    const job = new Job();
    job.at += PERCENT.settleMs;
    expect(job.action).toEqual({ kind: 'read' });
  });

  it('holds after a turn until the settle time, then asks for a reading', () => {
    const job = new Job();
    job.reads(30);
    job.turns('horizontal', 6);
    const done = job.at;
    const { advice, wakeAt } = advise(job.search, done + 1_000);
    expect(advice.action).toEqual({ kind: 'hold', reason: 'settling', until: done + PERCENT.settleMs });
    expect(wakeAt).toBe(done + PERCENT.settleMs);
    expect(advise(job.search, done + PERCENT.settleMs).advice.action).toEqual({ kind: 'read' });
  });

  it('does not judge one early reading, but two that agree', () => {
    const job = new Job();
    job.reads(30);
    job.turns('horizontal', 6);
    job.reads(36, 1_000);
    expect(job.action.kind).toBe('hold');
    job.reads(36, 1_500);
    expect(job.action.kind).toBe('turn');
  });

  it('asks what moves when the reading will not stand still', () => {
    const job = new Job();
    for (const value of [30, 41, 33, 46, 29]) job.reads(value);
    const { action } = job.advice;
    expect(action.kind).toBe('check');
    expect(action.kind === 'check' && action.causes[0]).toBe('loose-mount');
  });
});

describe('the aim by eye', () => {
  const ruleAfter = (facts: readonly SearchFact[], wasAligned = false): string => {
    const search = facts.reduce(
      (search, fact, seq) => observe(search, { seq, at: 10_000 * (seq + 1), fact }),
      startSearch(PERCENT, NEUTRAL_ADJUSTERS, { wasAligned }),
    );
    return advise(search, 1_000_000).advice.rule;
  };
  const found: SearchFact = { type: 'reading', reading: valueReading(40) };
  const nothing: SearchFact = { type: 'reading', reading: NO_SIGNAL };
  const cannot: SearchFact = { type: 'cannot', why: 'unsaid', instruction: 0 };
  const turned: SearchFact = { type: 'move', axis: 'horizontal', eighths: 1 };

  it.each<[string, SearchFact[], string]>([
    ['comes after the reading that says how the pair was found', [], 'read'],
    ['comes before any turn, for light by way of a wall reads well', [found], 'aim-first'],
    ['comes first where nothing is read', [nothing], 'aim-first'],
    ['still comes after the gain was set', [{ type: 'gain', change: 'set' }, found], 'aim-first'],
    ['is done once', [found, { type: 're-aimed' }, found], 'find-slope'],
    ['comes too late after a turn', [turned, found], 'find-slope'],
    ['is left out where it cannot be done', [found, cannot, found], 'find-slope'],
    ['is still left out after a knock', [cannot, { type: 'disturbed', why: 'knocked' }, found], 'find-slope'],
    [
      'is asked for where without it nothing is read',
      [cannot, { type: 'gain', change: 'full' }, nothing],
      're-aim',
    ],
    ['waits for a free path', [{ type: 'path', state: 'partial' }], 'free-path'],
  ])('%s', (_, facts, rule) => {
    expect(ruleAfter(facts)).toBe(rule);
  });

  it('is left out where an earlier visit left the pair aligned', () => {
    expect(ruleAfter([found], true)).toBe('find-slope');
    expect(ruleAfter([found, { type: 'disturbed', why: 'knocked' }, found], true)).toBe('find-slope');
    expect(ruleAfter([found, turned, { type: 'retract', target: 1, why: 'undo' }, found], true)).toBe(
      'find-slope',
    );
  });
});

describe('the search', () => {
  it('turns back through the peak when the reading falls', () => {
    const job = new Job();
    job.reads(40);
    const first = job.action;
    expect(first).toMatchObject({ kind: 'turn', axis: 'horizontal', reversal: false });
    job.obeys(first);
    job.reads(20);
    // It may come to prove a side of the peak: one misread must not.
    expect(job.advice.rule).toBe('read-twice');
    job.reads(20);
    expect(job.action).toMatchObject({ kind: 'turn', axis: 'horizontal', reversal: true });
    expect(job.advice.rule).toBe('reverse-on-fall');
  });

  it('may still lower a gain that would not go up', () => {
    const job = new Job();
    job.reads(40);
    job.say({ type: 'gain', change: 'raised' });
    job.reads(40);
    job.turns('horizontal', 6);
    job.reads('flooded');
    expect(job.action).toMatchObject({ kind: 'gain', change: 'lower' });
  });

  it('lowers the gain when flooded and goes on with the same adjuster in the same direction', () => {
    const job = new Job();
    job.reads(40);
    const first = job.action;
    job.obeys(first);
    job.reads('flooded');
    const gain = job.action;
    expect(gain).toMatchObject({ kind: 'gain', change: 'lower' });
    job.obeys(gain);
    job.reads(20);
    const next = job.action;
    expect(next).toMatchObject({ kind: 'turn', axis: 'horizontal', reversal: false });
    expect(first.kind === 'turn' && next.kind === 'turn' && next.eighths * first.eighths > 0).toBe(true);
  });

  it('says which entries and figures an instruction rests on', () => {
    const job = new Job();
    const first = job.reads(40);
    job.obeys(job.action);
    const second = job.reads(52);
    expect(job.advice.because).toEqual(expect.arrayContaining([first, second]));
    expect(job.advice.figures).toHaveProperty('fittedPeak');
    expect(job.advice.figures).toHaveProperty('uncertainty');
  });

  it('with no signal goes to full gain, then walks a widening square, then lists causes', () => {
    const job = new Job();
    job.reads('nothing');
    const asked: string[] = [];
    for (let i = 0; i < 80 && job.action.kind !== 'check'; i++) {
      asked.push(job.advice.rule);
      job.obeys(job.action);
      if (job.action.kind === 'hold' || job.action.kind === 'read') job.reads('nothing');
    }
    expect(asked[0]).toBe('full-gain-to-find');
    expect(new Set(asked.slice(1))).toEqual(new Set(['widening-square']));
    expect(job.advice.rule).toBe('nothing-there');
    expect(Math.abs(job.search.turned.horizontal)).toBeLessThanOrEqual(2 * NEUTRAL_ADJUSTERS.maxStep);
  });

  it('leads back by no more than one turn of the hand from beyond the end of a screw', () => {
    const job = new Job();
    const turn = { axis: 'horizontal', eighths: 1 } as const;
    job.say({ type: 'cannot', why: 'stuck', instruction: 0, turn });
    job.say({ type: 're-aimed' });
    job.say({ type: 'cannot', why: 'stuck', instruction: 0, turn });
    job.say({ type: 'gain', change: 'full' });
    job.turns('horizontal', 13);
    job.reads('nothing');
    expect(job.action).toMatchObject({
      kind: 'turn',
      axis: 'horizontal',
      eighths: -NEUTRAL_ADJUSTERS.maxStep,
    });
  });

  it('aims again where the light that was seen is gone from its place at full gain', () => {
    const job = new Job();
    job.reads(40);
    job.turns('horizontal', 6);
    job.reads(30);
    job.reads(30);
    job.turns('horizontal', -12);
    const asked: string[] = [];
    for (let i = 0; i < 30 && job.advice.rule !== 're-aim'; i++) {
      asked.push(job.advice.rule);
      const { action } = job;
      job.obeys(action);
      if (action.kind === 'ask') job.say({ type: 'confirm', target: action.question.about });
      else job.reads('nothing');
    }
    expect(job.advice.rule).toBe('re-aim');
    expect(asked).toContain('full-gain-to-find');
    expect(asked).not.toContain('widening-square');
  });

  it('begins again where fifty places have proven nothing', () => {
    const job = new Job();
    for (let i = 0; i < 60 && job.advice.rule !== 'begin-again'; i++) {
      if (i > 0) job.turns(i % 2 ? 'horizontal' : 'vertical', i % 4 < 2 ? 1 : -1);
      // Brighter wherever it turns: there is no such beam.
      job.reads(5 + i);
      job.reads(5 + i);
      // Every turn was made as reported.
      const { action } = job;
      if (action.kind === 'ask') job.say({ type: 'confirm', target: action.question.about });
    }
    expect(job.advice).toMatchObject({ rule: 'begin-again', action: { kind: 're-aim' } });
    job.obeys(job.action);
    expect(job.search.samples).toEqual([]);
  });

  it('goes no further on a screw that has reached its end', () => {
    const job = new Job();
    job.reads(40);
    job.say({
      type: 'cannot',
      why: 'end-of-travel',
      instruction: 0,
      turn: { axis: 'horizontal', eighths: 6 },
    });
    job.reads(40);
    const next = job.action;
    expect(next.kind === 'turn' && (next.axis === 'vertical' || next.eighths < 0)).toBe(true);
  });
});

describe('people err', () => {
  /** Both peaks are proven and the last turn leads back to the peak: the reading there is foretold. */
  const onTheWayBack = () =>
    workUntil(
      goodPair(PERCENT),
      ({ advice, search }) => advice.rule === 'return-to-peak' && search.moves > 9,
      2,
    );

  const turnedBack = () => {
    const { search, crew } = onTheWayBack();
    const { action } = advise(search, crew.at).advice;
    if (action.kind !== 'turn') throw new Error('a turn was expected');
    const { axis, eighths } = action;
    const turned = observe(search, { seq: 900, at: crew.at, fact: { type: 'move', axis, eighths } });
    const at = crew.at + 10_000;
    const hears = (value: number) =>
      observe(turned, { seq: 901, at, fact: { type: 'reading', reading: valueReading(value) } });
    return { hears, at, action };
  };

  it('asks "fifteen or fifty?" where fifty was to be expected', () => {
    const { hears, at } = turnedBack();
    const { advice } = advise(hears(15), at);
    expect(advice.rule).toBe('doubt-reading');
    expect(advice.action).toMatchObject({
      question: { kind: 'which-value', about: 901, options: expect.arrayContaining([15, 50]) },
    });
    expect(advice.figures.expected).toBeGreaterThan(40);
  });

  it('asks which turn was made when the reading stands', () => {
    const { hears, at, action } = turnedBack();
    const doubted = hears(17);
    expect(advise(doubted, at).advice.action).toMatchObject({ kind: 'ask', question: { about: 901 } });
    const stands = observe(doubted, { seq: 902, at: at + 1, fact: { type: 'confirm', target: 901 } });
    const { advice } = advise(stands, at + 1);
    if (advice.action.kind === 'ask') {
      expect(advice.action.question).toMatchObject({ kind: 'which-move', about: 900 });
      expect(advice.rule).toBe('doubt-turn');
    } else {
      // No usual slip explains it: what was known before no longer counts.
      expect(stands.restartedAt).toBe(901);
    }
    const other = action.axis === 'horizontal' ? 'vertical' : 'horizontal';
    const corrected = observe(stands, {
      seq: 903,
      at: at + 2,
      fact: { type: 'move', axis: other, eighths: action.eighths, replaces: 900 },
    });
    expect(corrected.turned[other]).toBe(stands.turned[other] + action.eighths);
    expect(corrected.turned[action.axis]).toBe(stands.turned[action.axis] - action.eighths);
  });

  it('does not doubt a number that was read there before, whatever the beam says', () => {
    const { search, crew } = onTheWayBack();
    const { action } = advise(search, crew.at).advice;
    if (action.kind !== 'turn') throw new Error('a turn was expected');
    const { axis, eighths } = action;
    // Read as fifteen there and believed, left and come back to: fifteen again is no misread and no slip.
    const facts = [
      { type: 'move', axis, eighths },
      { type: 'reading', reading: valueReading(15) },
      { type: 'confirm', target: 901 },
      { type: 'move', axis, eighths: -eighths },
      { type: 'reading', reading: valueReading(30) },
      { type: 'confirm', target: 904 },
      { type: 'move', axis, eighths },
      { type: 'reading', reading: valueReading(15) },
    ] as const;
    const told = facts.map((_, n) =>
      facts
        .slice(0, n + 1)
        .reduce((s, fact, i) => observe(s, { seq: 900 + i, at: crew.at + 10_000 * (i + 1), fact }), search),
    );
    const rules = told.map((s, i) => advise(s, crew.at + 10_000 * (i + 1)).advice.rule);
    expect(rules[1]).toBe('doubt-reading');
    expect(rules[7]).not.toBe('doubt-reading');
  });

  it('counts a correction where the reading it corrects was taken', () => {
    const job = new Job();
    const wrong = job.reads(50);
    job.turns('horizontal', 6);
    job.reads(30);
    job.say({ type: 'reading', reading: valueReading(15), replaces: wrong });
    expect(job.search.samples[0]?.reading).toEqual(valueReading(15));
    expect(job.search.samples[0]?.turned.horizontal).toBe(0);
    expect(job.search.turned.horizontal).toBe(6);
  });
});

describe('acceptance', () => {
  const atTheEnd = () => workUntil(goodPair(PERCENT), ({ advice }) => advice.rule === 'offer-accept');

  it('says all that is missing at the start', () => {
    const job = new Job();
    expect(job.missing).toEqual(['settled-reading']);
    job.reads(55);
    expect(job.missing).toEqual(
      expect.arrayContaining(['bracket-horizontal', 'bracket-vertical', 'blocking-check', 'steady-hold']),
    );
  });

  it('is offered with the entries it rests on, and marked as backed', () => {
    const { search, crew, advice } = atTheEnd();
    expect(advice.because.length).toBeGreaterThanOrEqual(5);
    const reading = { kind: 'value', value: 55 } as const;
    const accepted = observe(search, { seq: 990, at: crew.at, fact: { type: 'accept', reading } }).accepted;
    expect(accepted).toMatchObject({ backed: true, missing: [] });
  });

  it('is taken back by a turn made after it', () => {
    const { search, crew } = atTheEnd();
    const accepted = observe(search, {
      seq: 990,
      at: crew.at,
      fact: { type: 'accept', reading: valueReading(55) },
    });
    const moved = observe(accepted, {
      seq: 991,
      at: crew.at,
      fact: { type: 'move', axis: 'vertical', eighths: 2 },
    });
    expect(moved.accepted).toBeUndefined();
  });

  it('against missing evidence is marked with its reason for ever', () => {
    const job = new Job();
    job.reads(55);
    job.say({
      type: 'accept',
      reading: valueReading(55),
      override: { reason: 'the ladder has to go', missing: job.missing },
    });
    expect(job.search.accepted).toMatchObject({ backed: false, reason: 'the ladder has to go' });
    expect(job.search.accepted?.missing.length).toBeGreaterThan(3);
  });

  it('needs the light to go to nothing when the path is blocked: else the beam is aimed again', () => {
    const { search, crew } = workUntil(goodPair(PERCENT), ({ advice }) => advice.action.kind === 'block');
    const events = [
      { type: 'path', state: 'blocked' },
      { type: 'reading', reading: valueReading(31) },
      { type: 'reading', reading: valueReading(31) },
      { type: 'path', state: 'clear' },
    ] as const;
    let told = search;
    events.forEach((fact, i) => {
      told = observe(told, { seq: 980 + i, at: crew.at + 5_000 * (i + 1), fact });
    });
    const { advice } = advise(told, crew.at + 60_000);
    expect(advice.rule).toBe('not-by-reflection');
    expect(advice.action.kind).toBe('re-aim');
  });

  it('is not passed by one misread while the path is blocked', () => {
    const { search, crew } = workUntil(goodPair(DECIBELS), ({ advice }) => advice.action.kind === 'block');
    const blocked = (...values: number[]) =>
      [
        { type: 'path', state: 'blocked' } as const,
        ...values.map((value) => ({ type: 'reading', reading: valueReading(value) }) as const),
      ].reduce(
        (told, fact, i) => observe(told, { seq: 980 + i, at: crew.at + 5_000 * (i + 1), fact }),
        search,
      ).blocking.dark;
    // "Minus three point five", then the point is lost.
    expect(blocked(-3.5, -35)).toBeUndefined();
    expect(blocked(-3.5, -35, -3.5, -3.5)).toBe(false);
    expect(blocked(-35, -35)).toBe(true);
  });

  it('asks which turn was made when a place next to the peak no longer reads what it did', () => {
    const { search, crew } = workUntil(goodPair(DECIBELS), ({ advice }) => advice.action.kind === 'block');
    const peak = search.stay.run[0]?.reading;
    if (peak?.kind !== 'value') throw new Error('no reading at the peak');
    const facts = [
      { type: 'move', axis: 'vertical', eighths: 4 },
      { type: 'reading', reading: valueReading(peak.value - 0.8) },
      { type: 'move', axis: 'vertical', eighths: -4 },
      { type: 'reading', reading: valueReading(peak.value - 1) },
    ] as const;
    const back = facts.reduce(
      (told, fact, i) => observe(told, { seq: 980 + i, at: crew.at + 5_000 * (i + 1), fact }),
      search,
    );
    expect(advise(back, crew.at + 60_000).advice.rule).toBe('doubt-reading');
  });

  it('does not hold for a reading that drifts out of tolerance', () => {
    const { search, crew } = workUntil(
      goodPair(PERCENT),
      ({ advice }) => advice.action.kind === 'hold' && advice.action.reason === 'proving-steady',
    );
    const drifted = observe(search, {
      seq: 970,
      at: crew.at + 11_000,
      fact: { type: 'reading', reading: valueReading(58.5) },
    });
    expect(advise(drifted, crew.at + 11_000).advice.rule).not.toBe('offer-accept');
  });
});
