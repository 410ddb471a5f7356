import { describe, expect, it } from 'vitest';
import { advise } from '../../src/engine/advise.ts';
import { beginAgain } from '../../src/engine/restart.ts';
import { look } from '../../src/engine/view.ts';
import { Job } from './crew-of-two.ts';
import { at, seen } from './given.ts';
import { Proof } from './proven.ts';

/** So many places with light, after as many dark ones; then the newest, where the crew stands. */
const afterPlaces = (lit: number, dark = 0) => {
  const job = new Job();
  const places = [
    ...Array.from({ length: dark }, () => seen(at(0), 'dark')),
    ...Array.from({ length: lit }, (_, i) => seen(at(i), i % 7 === 1 ? 'dark' : -20 - i)),
  ];
  job.search = { ...job.search, samples: places };
  job.reads(40);
  return job;
};
const again = (job: Job) => beginAgain(look(job.search), job.at);

describe('A search begins again', () => {
  it('after 30 places since there was light', () => {
    const job = afterPlaces(30);
    expect(again(job)?.advice).toEqual({
      to: 'emitter',
      rule: 'begin-again',
      action: { kind: 're-aim' },
      because: [job.seq - 1],
      figures: { places: 30 },
    });
  });

  it.each([
    ['after 29', afterPlaces(29)],
    ['for dark places before them', afterPlaces(29, 3)],
    ['for dark places alone', afterPlaces(0, 60)],
  ])('not %s', (_, job) => {
    expect(again(job)).toBeUndefined();
  });

  it('not where all is proven with the screws', () => {
    const proof = new Proof().brackets();
    const lit = Array.from({ length: 30 }, () => seen(at(0), proof.course.top));
    proof.search = { ...proof.search, samples: [...lit, ...proof.search.samples] };
    expect(again(proof)).toBeUndefined();
    const unproven = new Proof({ above: 7 }).brackets();
    unproven.search = { ...unproven.search, samples: [...lit, ...unproven.search.samples] };
    expect(again(unproven)?.advice.rule).toBe('begin-again');
  });
});

describe('A search that does not end is stopped, and says what may be wrong', () => {
  const ruleAfter = (moves: number, more = {}) => {
    const job = new Job();
    for (let i = 0; i < 2; i++) job.reads(40);
    return advise({ ...job.search, moves, ...more }, job.at).advice;
  };

  it.each([
    ['124 turns: not yet', 124, {}, false],
    ['125 turns', 125, {}, true],
    ['125 turns by the plain search', 125, { floor: { since: 0 } }, true],
    ['124 turns by the plain search: not yet', 124, { floor: { since: 0 } }, false],
    [
      '124 turns after causes were looked into: not yet',
      164,
      { looked: { moves: 40, behindCard: 0 } },
      false,
    ],
    ['125 turns after that', 165, { looked: { moves: 40, behindCard: 0 } }, true],
  ])('%s', (_, moves, more, isStopped) => {
    const { rule, action } = ruleAfter(moves, more);
    expect(rule === 'no-single-peak').toBe(isStopped);
    if (isStopped)
      expect(action).toMatchObject({
        kind: 'check',
        causes: expect.arrayContaining(['miscounted-turns', 'loose-mount']),
      });
  });

  it('but not where only the blocking check and the hold are left', () => {
    const proof = new Proof().brackets();
    proof.search = { ...proof.search, moves: 200 };
    expect(proof.advice.rule).toBe('blocking-check');
  });

  it('and counts anew from the looking into', () => {
    const job = new Job();
    job.turns('horizontal', 3);
    job.say({ type: 'checked', instruction: 0 });
    expect(job.search.looked).toEqual({ moves: 1, behindCard: 0 });
  });
});

describe('Light that stays behind the card', () => {
  /** The card is held so many times, with an aim by eye between; nothing is read darker. */
  const afterCards = (n: number) => {
    const job = new Job();
    for (let i = 0; i < n; i++) {
      if (i > 0) job.say({ type: 're-aimed' });
      job.reads(50);
      job.say({ type: 'path', state: 'blocked' });
      job.reads(50);
      job.reads(50);
      job.say({ type: 'path', state: 'clear' });
    }
    return job;
  };

  it.each([
    [1, 'not-by-reflection'],
    [2, 'not-by-reflection'],
    [3, 'light-stays'],
  ])('held %i times: %s', (n, rule) => {
    expect(afterCards(n).advice.rule).toBe(rule);
  });

  it('names what to look for, and aims again afterwards', () => {
    const job = afterCards(3);
    expect(job.action).toMatchObject({
      kind: 'check',
      causes: ['reflected-light', 'card-beside-line', 'stray-light', 'wrong-pair'],
    });
    job.obeys(job.action);
    expect(job.advice.rule).toBe('not-by-reflection');
  });

  it('is not counted where an aim was made for another reason', () => {
    const job = new Job();
    job.say({ type: 're-aimed' });
    expect(job.search.looked.behindCard).toBe(0);
  });
});
