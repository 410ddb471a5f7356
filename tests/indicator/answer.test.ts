import { describe, expect, it } from 'vitest';
import { AGAIN_MS, isDue, type Told } from '../../src/indicator/answer.ts';
import type { Sensed } from '../../src/indicator/sense.ts';
import type { Sensing } from '../../src/indicator/watch.ts';
import type { Action, Advice } from '../../src/model/advice.ts';

const order = (action: Action, seq = 12) => {
  const advice: Advice = { to: 'both', action, rule: 'look', because: [], figures: {} };
  return { seq, advice };
};
const now = (word: Sensed): Sensing => ({ kind: 'sensed', word, place: 0.5, moments: 30 });
const told = (of: number, at = 0, word: Sensed = 'steady'): Told => ({ for: of, at, word });

const LOOK: Action = { kind: 'read', as: 'trend' };
const PROVING: Action = { kind: 'hold', reason: 'proving-steady', until: 1 };

describe('what a phone tells of the light, and when', () => {
  it.each<[string, Action, Sensing, Told | undefined, number, boolean]>([
    ['an order to look', LOOK, now('rising'), undefined, 0, true],
    ['an order that was answered', LOOK, now('rising'), told(12), 100, false],
    ['one that was answered, and still stands', LOOK, now('rising'), told(12), AGAIN_MS, true],
    ['one that was answered just before', LOOK, now('rising'), told(12), AGAIN_MS - 1, false],
    ['a new order to look', LOOK, now('steady'), told(11), 100, true],
    ['an order to read a number', { kind: 'read' }, now('rising'), undefined, 0, false],
    ['what is not settled', LOOK, { kind: 'settling' }, undefined, 0, false],
    ['what it lost', LOOK, { kind: 'lost', why: 'moved' }, undefined, 0, false],
    ['light that holds while it should', PROVING, now('steady'), told(11), 100, false],
    ['light that falls while it should hold', PROVING, now('falling'), told(11), 100, true],
    ['light that goes while it should hold', PROVING, now('nothing'), told(11), 100, true],
    ['light that falls before the acceptance', { kind: 'offer-accept' }, now('falling'), told(11), 100, true],
    ['light that settles', { ...PROVING, reason: 'settling' }, now('falling'), told(11), 100, false],
    [
      'light that changes while a screw is turned',
      { kind: 'turn', axis: 'vertical', eighths: 2, reversal: false },
      now('rising'),
      told(11),
      100,
      false,
    ],
  ])('%s: %j', (_, action, sensing, before, at, due) => {
    expect(isDue(sensing, order(action), before, at)).toBe(due);
  });

  it('tells nothing where there is no order', () => {
    expect(isDue(now('rising'), undefined, undefined, 0)).toBe(false);
  });
});
