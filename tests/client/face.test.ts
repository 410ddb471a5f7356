import type { ComponentChildren, VNode } from 'preact';
import { describe, expect, it } from 'vitest';
import { Drawing } from '../../client/instruction/drawings.tsx';
import { Face } from '../../client/instruction/face.tsx';
import {
  ASKING,
  type Kind,
  kindOf,
  PAUSED,
  RESTING,
  STOPPED,
  UNSURE,
} from '../../client/instruction/kinds.tsx';
import { arcPath } from '../../client/instruction/screw.ts';
import type { Action, Advice } from '../../src/model/advice.ts';
import type { Placed } from '../../src/model/placed.ts';
import { awayText } from '../../src/phrases/presence.ts';
import { QUARTER_TURN } from './fixtures.ts';

/** All elements that a picture without a state of its own draws. */
function drawn(node: ComponentChildren): VNode<Record<string, unknown>>[] {
  if (Array.isArray(node)) return node.flatMap(drawn);
  if (node === null || typeof node !== 'object' || !('props' in node)) return [];
  const { type, props } = node as VNode<Record<string, unknown>>;
  if (typeof type === 'function') return drawn((type as (given: unknown) => ComponentChildren)(props));
  return [node as VNode<Record<string, unknown>>, ...drawn(props.children as ComponentChildren)];
}
const texts = (node: ComponentChildren): unknown[] => drawn(node).flatMap(({ props }) => props.children);

/** One order of each kind: the compiler asks for every new one. */
const EVERY: { [K in Action['kind']]: Extract<Action, { kind: K }> } = {
  turn: { kind: 'turn', axis: 'horizontal', eighths: 2, reversal: false },
  gain: { kind: 'gain', change: 'lower' },
  read: { kind: 'read' },
  hold: { kind: 'hold', reason: 'settling', until: 0 },
  're-aim': { kind: 're-aim' },
  block: { kind: 'block' },
  unblock: { kind: 'unblock' },
  ask: { kind: 'ask', question: { kind: 'is-it-so', about: 0, what: 'reading' } },
  check: { kind: 'check', causes: ['x'] },
  'offer-accept': { kind: 'offer-accept' },
  'confirm-item': { kind: 'confirm-item', list: 'before', item: 'people-told' },
  cover: { kind: 'cover', how: 'half' },
  uncover: { kind: 'uncover' },
  'watch-panel': { kind: 'watch-panel', expect: 'alarm' },
  'settle-issue': { kind: 'settle-issue', issue: 0 },
  'offer-sign': { kind: 'offer-sign' },
  finished: { kind: 'finished' },
};

/** WCAG 2.2, 1.4.1: colour is not the only means of telling apart. */
describe('the head of an order', () => {
  const vertical: Action = { ...EVERY.turn, axis: 'vertical' };
  const kinds: Kind[] = [
    ...[...Object.values(EVERY), vertical].map((action) => kindOf(action)),
    ...[ASKING, PAUSED, RESTING, STOPPED, UNSURE],
  ];
  const shapeOf = ({ shape }: Kind) => JSON.stringify(drawn(shape).map(({ type, props }) => [type, props.d]));

  it('has a shape and words of its own for each colour', () => {
    expect(kinds.every(({ word }) => word !== '')).toBe(true);
    for (const one of kinds)
      for (const other of kinds)
        if (one.look !== other.look) {
          expect(one.word).not.toBe(other.word);
          expect(shapeOf(one)).not.toBe(shapeOf(other));
        }
  });
});

describe('the picture of a change of the gain', () => {
  /** Of the stroke of the arrow, in the style sheet; its ends are round. Units of the drawing. */
  const HALF_STROKE = 3.5;

  /** The corners of a path of M, l, h and H, which is all that the arrow is made of. */
  function corners(path: string): [number, number][] {
    const found: [number, number][] = [];
    let at: [number, number] = [0, 0];
    for (const [, letter, args = ''] of path.matchAll(/([MmlhH])([^MmlhH]*)/g)) {
      const numbers = (args.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
      if (letter === 'H') at = [numbers[0] as number, at[1]];
      if (letter === 'h') at = [at[0] + (numbers[0] as number), at[1]];
      if (letter === 'H' || letter === 'h') found.push(at);
      else
        for (let i = 0; i + 1 < numbers.length; i += 2) {
          const [x, y] = [numbers[i] as number, numbers[i + 1] as number];
          const fromHere = letter === 'l' || letter === 'm';
          at = fromHere ? [at[0] + x, at[1] + y] : [x, y];
          found.push(at);
        }
    }
    return found;
  }

  it.each(['lower', 'raise'] as const)('has its whole arrow inside the picture: %s', (change) => {
    const all = drawn(Drawing({ action: { kind: 'gain', change } as Action }));
    const [width, height] = String(all[0]?.props.viewBox).split(' ').slice(2).map(Number) as [number, number];
    const arrow = corners(String(all.find(({ props }) => props.class === 'picture-arrow')?.props.d));
    expect(arrow.length).toBeGreaterThan(3);
    for (const [x, y] of arrow) {
      expect(Math.min(x, width - x)).toBeGreaterThanOrEqual(HALF_STROKE);
      expect(Math.min(y, height - y)).toBeGreaterThanOrEqual(HALF_STROKE);
    }
  });
});

describe('the picture of more than a full turn', () => {
  /** Of the stroke of the arc, in the style sheet. */
  const STROKE = 15;

  it.each([9, -9, 10, 12])('shows both windings of %i eighths with a gap between', (eighths) => {
    const radii = arcPath(eighths)
      .slice(1)
      .split('L')
      .map((point) => Math.hypot(...(point.split(' ').map(Number) as [number, number])));
    // A point of the first winding, and the point of the second in the same direction from the centre.
    const aTurn = Math.round(((radii.length - 1) * 8) / (Math.abs(eighths) - 0.32));
    expect((radii[aTurn] as number) - (radii[0] as number)).toBeGreaterThan(STROKE - 1);
  });
});

describe('an order for the other phone', () => {
  const advice: Advice = { to: 'emitter', action: QUARTER_TURN, rule: 'test', because: [], figures: {} };
  const placed = { seq: 1, at: 0, advice, say: 'x', show: 'x', why: '' } as unknown as Placed<'instruction'>;
  const shown = (seat: 'panel' | 'emitter', otherIsAway: boolean) =>
    texts(Face({ instruction: placed, seat, now: 0, otherIsAway }));

  it('says that this phone is away, and only then', () => {
    expect(shown('panel', true)).toContain(awayText('emitter'));
    expect(shown('panel', false)).not.toContain(awayText('emitter'));
  });

  it('says nothing of the panel phone beside a step that the emitter makes alone', () => {
    expect(shown('emitter', true)).not.toContain(awayText('panel'));
  });
});
