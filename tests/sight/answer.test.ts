import { describe, expect, it } from 'vitest';
import { type Given, isDue, type Order } from '../../src/sight/answer.ts';
import type { Watched } from '../../src/sight/watch.ts';

const METER = { tolerance: 1 };
const shows = (value: number): Watched => ({
  kind: 'settled',
  value,
  text: `${value}`,
  frames: 5,
  belief: 1,
});
const READ: Order = { seq: 12, kind: 'read' };
const given = (value: number, seq = 8): Given => ({ value, for: seq });

describe('when the phone that watches tells the number', () => {
  const cases: [string, Watched, Order | undefined, Given | undefined, boolean][] = [
    ['it is asked for, the first time', shows(47), READ, undefined, true],
    ['it is asked for again, though it is the same', shows(47), READ, given(47), true],
    ['not twice for one order', shows(49), READ, given(47, 12), false],
    ['not while it settles', { kind: 'settling', value: 47 }, READ, undefined, false],
    ['not without sight', { kind: 'lost', why: 'dark' }, READ, undefined, false],
    ['not without an order', shows(47), undefined, given(40), false],
    ['not while a screw is turned', shows(47), { seq: 12, kind: 'turn' }, given(40), false],
    [
      'not in a hold while it stands within the tolerance',
      shows(48),
      { seq: 12, kind: 'hold' },
      given(47),
      false,
    ],
    ['in a hold when it leaves the tolerance', shows(49), { seq: 12, kind: 'hold' }, given(47), true],
    [
      'before accepting when it leaves the tolerance',
      shows(45),
      { seq: 12, kind: 'offer-accept' },
      given(47),
      true,
    ],
    ['not in a hold when nothing was told before', shows(49), { seq: 12, kind: 'hold' }, undefined, false],
  ];
  it.each(cases)('%s', (_, watched, order, last, due) =>
    expect(isDue(watched, order, last, METER)).toBe(due),
  );
});
