import { describe, expect, it } from 'vitest';
import { spoken } from '../../src/grammar/speak.ts';
import type { Action, Advice } from '../../src/model/advice.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { AXES } from '../../src/model/turns.ts';
import { instructionText } from '../../src/phrases/instruct.ts';

const wordsIn = (text: string): number => spoken(text).split(/\s+/).length;

/** The most words of a spoken order: a person on a ladder keeps no more. Our own figure, no source. */
const MOST = 8;

const turns: Action[] = AXES.flatMap((axis) =>
  Array.from({ length: 2 * NEUTRAL_ADJUSTERS.maxStep }, (_, i) => i - NEUTRAL_ADJUSTERS.maxStep)
    .filter((eighths) => eighths !== 0)
    .flatMap((eighths) =>
      [true, false].map((reversal) => ({ kind: 'turn' as const, axis, eighths, reversal })),
    ),
);

const ORDERS: Action[] = [
  ...turns,
  { kind: 'gain', change: 'full' },
  { kind: 'read' },
  ...(['settling', 'wandering', 'proving-steady', 'waiting'] as const).map((reason) => ({
    kind: 'hold' as const,
    reason,
    until: 0,
  })),
  { kind: 're-aim' },
  { kind: 'block' },
  { kind: 'unblock' },
  { kind: 'uncover' },
  { kind: 'offer-accept' },
  { kind: 'settle-issue', issue: 1 },
  { kind: 'offer-sign' },
  { kind: 'finished' },
];

describe.each(NEUTRAL_METERS)('on a meter of $unit an order of the alignment', (meter) => {
  const setup = { site: 'Hall', pair: 'B2', meter, adjusters: NEUTRAL_ADJUSTERS, pathLength: 62 };
  const said = (action: Action, rule = 'read') =>
    instructionText({ to: 'both', action, rule, because: [], figures: {} } satisfies Advice, setup).say;
  const gains: Action[] = (['lower', 'raise'] as const).map((change) => ({
    kind: 'gain',
    change,
    toward: (meter.bandLow + meter.bandHigh) / 2,
  }));

  it('has at most eight words as it is spoken', () => {
    const long = [...ORDERS, ...gains].map((action) => said(action)).filter((say) => wordsIn(say) > MOST);
    expect([...long, ...[said({ kind: 'read' }, 'read-twice')].filter((say) => wordsIn(say) > MOST)]).toEqual(
      [],
    );
  });

  it('does not say its reason', () => {
    const { say, why } = instructionText(
      { to: 'emitter', action: turns[0] as Action, rule: 'climb', because: [], figures: {} },
      setup,
    );
    expect(why).not.toBe('');
    expect(say).not.toContain(why);
  });
});
