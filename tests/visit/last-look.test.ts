import { describe, expect, it } from 'vitest';
import type { SearchFact } from '../../src/model/facts.ts';
import type { Counted } from '../../src/model/placed.ts';
import { NO_SIGNAL, SATURATED, valueReading } from '../../src/model/reading.ts';
import { lastLook } from '../../src/visit/last-look.ts';

const log = (...facts: SearchFact[]): Counted[] => facts.map((fact, seq) => ({ ...fact, seq, at: seq }));
const trend = (from: number, word: 'rising' | 'steady' | 'wandering' = 'rising'): SearchFact => ({
  type: 'trend',
  trend: word,
  from,
});

describe('what the next look is held against', () => {
  it.each<[string, SearchFact[], ReturnType<typeof lastLook>]>([
    ['nothing, at the beginning', [], undefined],
    ['the last word', [trend(3), trend(7, 'steady')], { from: 7, seen: 'light' }],
    [
      'that nothing was there',
      [trend(3), { type: 'reading', reading: NO_SIGNAL, from: 7 }],
      { from: 7, seen: 'nothing' },
    ],
    [
      'that it was too strong',
      [{ type: 'reading', reading: SATURATED, from: 7 }],
      { from: 7, seen: 'too-strong' },
    ],
    ['not that it kept changing', [trend(3), trend(7, 'wandering')], { from: 3, seen: 'light' }],
    [
      'not a number',
      [trend(3), { type: 'reading', reading: valueReading(140), from: 7 }],
      { from: 3, seen: 'light' },
    ],
    [
      'not what was seen behind the card',
      [trend(3), { type: 'path', state: 'blocked' }, { type: 'reading', reading: NO_SIGNAL, from: 7 }],
      { from: 3, seen: 'light' },
    ],
    [
      'what was seen once the card was away',
      [trend(3), { type: 'path', state: 'blocked' }, { type: 'path', state: 'clear' }, trend(9, 'steady')],
      { from: 9, seen: 'light' },
    ],
  ])('%s', (_, facts, last) => {
    expect(lastLook(log(...facts))).toEqual(last);
  });
});
