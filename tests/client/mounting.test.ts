import { describe, expect, it } from 'vitest';
import { kindOf } from '../../client/instruction/kinds.tsx';
import { CUES, cueFor } from '../../client/speak/cues.ts';
import { lineFor } from '../../client/speak/script.ts';
import type { Action } from '../../src/model/advice.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Seat } from '../../src/model/facts.ts';
import { type Along, type Mounting, movesAlong } from '../../src/model/mounting.ts';
import type { Axis, Eighths } from '../../src/model/turns.ts';
import { instructionText } from '../../src/phrases/instruct.ts';
import { instruction, logOf, SETUP } from './fixtures.ts';

const turn = (axis: Axis, eighths: Eighths): Action => ({ kind: 'turn', axis, eighths, reversal: false });
const UP_DOWN = 'It moves the beam up and down.';
const LEFT_RIGHT = 'It moves the beam left and right.';

/** A quarter turn in its plane puts what was beside on top: geometry, no source. Clockwise stays, for the screw is faced. */
const TABLE: readonly [Mounting, Axis, Eighths, Along, extra: string, band: string][] = [
  ['upright', 'horizontal', 2, 'left-right', '', 'horizontal adjuster'],
  ['upright', 'horizontal', -2, 'left-right', '', 'horizontal adjuster'],
  ['upright', 'vertical', 2, 'up-down', '', 'vertical adjuster'],
  ['upright', 'vertical', -2, 'up-down', '', 'vertical adjuster'],
  ['top-left', 'horizontal', 2, 'up-down', UP_DOWN, 'adjuster marked horizontal'],
  ['top-left', 'horizontal', -2, 'up-down', UP_DOWN, 'adjuster marked horizontal'],
  ['top-left', 'vertical', 2, 'left-right', LEFT_RIGHT, 'adjuster marked vertical'],
  ['top-left', 'vertical', -2, 'left-right', LEFT_RIGHT, 'adjuster marked vertical'],
  ['top-right', 'horizontal', 2, 'up-down', UP_DOWN, 'adjuster marked horizontal'],
  ['top-right', 'horizontal', -2, 'up-down', UP_DOWN, 'adjuster marked horizontal'],
  ['top-right', 'vertical', 2, 'left-right', LEFT_RIGHT, 'adjuster marked vertical'],
  ['top-right', 'vertical', -2, 'left-right', LEFT_RIGHT, 'adjuster marked vertical'],
  ['upside-down', 'horizontal', 2, 'left-right', '', 'horizontal adjuster'],
  ['upside-down', 'horizontal', -2, 'left-right', '', 'horizontal adjuster'],
  ['upside-down', 'vertical', 2, 'up-down', '', 'vertical adjuster'],
  ['upside-down', 'vertical', -2, 'up-down', '', 'vertical adjuster'],
];

const said = (action: Action, seat: Seat, mounting: Mounting | undefined): string => {
  const entry = logOf([instruction(action, '', 60_000)])[0] as Entry;
  if (entry.fact.type !== 'instruction') throw new Error('an instruction was made');
  const { say } = instructionText(entry.fact.advice, SETUP);
  const [event] = lineFor(
    { ...entry, fact: { ...entry.fact, say } },
    seat,
    { now: 0, offset: 0 },
    { mounting },
  );
  if (event?.on !== 'say') throw new Error('nothing is said');
  return event.announcement.text;
};

describe('an order to turn follows how the unit hangs', () => {
  it.each(TABLE)('%s, %s by %i eighths', (mounting, axis, eighths, along, extra, band) => {
    const action = turn(axis, eighths);
    expect(movesAlong(mounting, axis)).toBe(along);
    const arrow = kindOf(turn(along === 'left-right' ? 'horizontal' : 'vertical', 1)).shape;
    const kind = kindOf(action, mounting);
    expect([kind.word, kind.look]).toEqual([band, axis]);
    expect(kind.shape).toBe(arrow);
    const name = axis === 'horizontal' ? 'Horizontal' : 'Vertical';
    const order = `${name}: a quarter, ${eighths > 0 ? 'clockwise' : 'anticlockwise'}.`;
    expect(said(action, 'emitter', mounting)).toBe(extra ? `${order} ${extra}` : order);
    // The panel cannot see how it hangs: it hears the name that is right for both.
    expect(said(action, 'panel', mounting)).toBe(order);
  });

  it('and says nothing of it while nobody has said how it hangs', () => {
    expect(said(turn('horizontal', 2), 'emitter', undefined)).toBe('Horizontal: a quarter, clockwise.');
    expect(kindOf(turn('horizontal', 2)).word).toBe('horizontal adjuster');
  });
});

describe('the phone in a glove', () => {
  it.each<[string, readonly number[], buzz: readonly number[]]>([
    ['a turn: short, then long', CUES[cueFor(turn('vertical', 1))].buzz, [90, 60, 160]],
    ['hands off: one long', CUES[cueFor({ kind: 'hold', reason: 'proving-steady', until: 0 })].buzz, [600]],
    ['stop: four short', CUES.stop.buzz, [120, 50, 120, 50, 120, 50, 120]],
  ])('vibrates for %s', (_, buzz, expected) => {
    expect(buzz).toEqual(expected);
  });
});
