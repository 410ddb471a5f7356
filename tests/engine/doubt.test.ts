import { describe, expect, it } from 'vitest';
import { doubt, mustRestart, readTwice } from '../../src/engine/doubt.ts';
import type { Search } from '../../src/engine/search.ts';
import { look } from '../../src/engine/view.ts';
import { DECIBELS } from './crew-of-two.ts';
import { at, beamOf, seen, viewOf } from './given.ts';
import { Proof } from './proven.ts';

const { search } = viewOf();

describe('A reading that contradicts those before it', () => {
  const samples = [
    seen(at(0), -4, { seqs: [3] }),
    seen(at(5), -5, { seqs: [6, 7] }),
    seen(at(8), -9, { seqs: [10, 11] }),
  ];
  const here = samples[2];
  const surprise = { past: beamOf(), expected: { value: -5.04, sd: 0.123 } };
  const view = (more = {}) => viewOf({ search, here, samples, surprise, ...more });

  it('is asked about, beside the one before it and with what it should have been', () => {
    expect(doubt(view())?.advice).toEqual({
      to: 'both',
      rule: 'doubt-reading',
      action: { kind: 'ask', question: { kind: 'is-it-so', about: 11, what: 'reading' } },
      because: [7, 11],
      figures: { expected: -5, uncertaintyDb: 0.12 },
    });
  });

  it('is asked about as the turn before it, once it stands', () => {
    const lastMove = { seq: 9, turn: { axis: 'horizontal', eighths: 3 } } as const;
    const stands: Search = { ...search, confirmed: [11], lastMove, touched: 'move' };
    // Twice that turn would lead to 11, where the beam is 4.5 dB down; the reading is 5 dB down.
    expect(doubt(view({ search: stands }))?.advice).toMatchObject({
      rule: 'doubt-turn',
      action: { kind: 'ask', question: { kind: 'which-move', about: 9 } },
      because: [7, 11],
    });
  });

  it.each([
    ['brighter than the meter can show', 4, DECIBELS.saturatedAt],
    ['darker than the meter can show', -70, DECIBELS.lostAt],
  ])('is held against what the meter can show: %s', (_, value, shown) => {
    const told = doubt(view({ surprise: { ...surprise, expected: { value, sd: 0.1 } } }));
    expect(told?.advice.figures.expected).toBe(shown);
  });

  it.each([
    ['where there is none', { here: undefined }],
    ['where it contradicts nothing', { surprise: undefined }],
    ['once it stands and no turn was made', { search: { ...search, confirmed: [10] } }],
  ])('is not asked about %s', (_, more) => {
    expect(doubt(view(more))).toBeUndefined();
  });
});

describe('A low reading is read twice', () => {
  const bright = seen(at(0), -4);
  const low = seen(at(8), -5.01, { seqs: [7] });
  const twice = (more: Parameters<typeof viewOf>[0] = {}) =>
    readTwice(viewOf({ search, here: low, samples: [bright, low], ...more }));

  it('more than 1 dB below the best, before it may prove a side of the peak', () => {
    expect(twice()?.advice).toMatchObject({ rule: 'read-twice', action: { kind: 'read' }, because: [7] });
  });

  const reading = (db: Parameters<typeof seen>[1], more = {}) => seen(at(8), db, { seqs: [7], ...more });
  it.each([
    ['1 dB below', reading(-5), [bright], false],
    ['no signal', reading('dark'), [bright], true],
    ['a level where another was flooded', reading(-1.51), [seen(at(0), 'flooded')], true],
    ['flooded itself', reading('flooded'), [seen(at(0), 5)], false],
    ['low beside what was lost', reading(-45), [seen(at(0), 'dark')], false],
    ['low beside what was read at another gain', reading(-9), [seen(at(0), -4, { gain: 1 })], false],
    ['low beside one of many', reading(-9), [seen(at(1), -9), bright, seen(at(2), -9)], true],
    ['low beside nothing', reading(-9), [], false],
  ])('or not: %s', (_, here, samples, expected) => {
    expect(twice({ here, samples: [...samples, here] }) !== undefined).toBe(expected);
  });

  it.each([
    ['there is none', { here: undefined }],
    ['two that agree stand already', { here: { ...low, seqs: [7, 8] } }],
    ['one broke away from it here', { search: { ...search, stay: { ...search.stay, breaks: 1 } } }],
    ['it was asked about and stands', { search: { ...search, confirmed: [7] } }],
    ['those before it foretold it', { isForetold: true }],
  ])('not where %s', (_, more) => {
    expect(twice(more)).toBeUndefined();
  });

  it('though another was asked about and stands', () => {
    expect(twice({ search: { ...search, confirmed: [6] } })).toBeDefined();
  });
});

describe('What was known before no longer holds', () => {
  /** Bracketed, then read half an eighth of a turn off the vertical peak, lower than foretold. */
  const reading = (by: number | 'nothing') => {
    const proof = new Proof().brackets();
    proof.turns('vertical', 4);
    const seq = proof.reads(by === 'nothing' ? by : proof.level - by);
    return { proof, seq };
  };

  it.each([
    [0, 'contradicts nothing', false],
    [0.8, 'contradicts the beam, and one beam still explains all', false],
    [3, 'contradicts it, and a turn of twice as much would explain it', false],
    [4, 'contradicts it, and no one beam explains all', true],
    [20, 'contradicts it, and no turn explains it', true],
  ] as const)('once a reading stands that is %d dB lower than foretold, which %s: %s', (by, _, expected) => {
    const { proof, seq } = reading(by);
    expect(mustRestart(proof.search)).toBe(false);
    proof.say({ type: 'confirm', target: seq });
    expect(mustRestart(proof.search)).toBe(expected);
  });

  it('not for light that is gone', () => {
    const { proof, seq } = reading('nothing');
    proof.say({ type: 'confirm', target: seq });
    expect(mustRestart(proof.search)).toBe(false);
  });

  it('once the turn that would explain it stands, too', () => {
    const { proof, seq } = reading(3);
    proof.say({ type: 'confirm', target: seq });
    proof.say({ type: 'confirm', target: seq - 1 });
    expect(mustRestart(proof.search)).toBe(true);
  });

  it('not while the next one, beside a reading that stands and fits no beam, waits for its answer', () => {
    const { proof, seq } = reading(4);
    proof.say({ type: 'confirm', target: seq });
    proof.turns('vertical', -8);
    const next = proof.reads(proof.level - 6);
    expect(look(proof.search)).toMatchObject({ isOneBeam: false });
    expect(proof.action).toMatchObject({ kind: 'ask', question: { about: next } });
    expect(mustRestart(proof.search)).toBe(false);
  });

  it('never before there is a settled reading', () => {
    expect(mustRestart(new Proof().search)).toBe(false);
  });
});
