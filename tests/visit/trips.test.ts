import { describe, expect, it } from 'vitest';
import type { Counted } from '../../src/model/placed.ts';
import { tripsOf } from '../../src/visit/trips.ts';

const READ = { type: 'reading', reading: { kind: 'value', value: 25 } } as const;
const TURN = { type: 'move', axis: 'vertical', eighths: 2 } as const;
const BLOCK = { type: 'path', state: 'blocked' } as const;
const trips = (...facts: object[]) =>
  tripsOf(facts.map((fact, seq) => ({ ...fact, seq, at: seq }) as Counted));

describe('the trips of a person who does both', () => {
  it.each([
    ['none, before anything was read', [TURN], 0],
    ['one for the first reading', [READ], 1],
    ['one, however often it is read there', [READ, READ, { type: 'trend', trend: 'steady' }, READ], 1],
    ['one more after a turn', [READ, TURN, READ], 2],
    ['one more after two turns on one climb', [READ, TURN, TURN, READ], 2],
    [
      'one each behind the card and without it',
      [READ, BLOCK, READ, { type: 'path', state: 'clear' }, READ],
      3,
    ],
  ])('%s', (_, facts, wanted) => {
    expect(trips(...facts)).toBe(wanted);
  });
});
