import { AS_LEFT_FIELDS, type AsLeft, type AsLeftField, type HandOverFact } from '../model/hand-over.ts';
import type { Seq } from '../model/ids.ts';
import type { Placed } from '../model/placed.ts';

/** What was written down for the hand-over of a pair. */
export interface HandOver {
  readonly asLeft: AsLeft;
  /** The entry of each value. */
  readonly leftBy: Readonly<Partial<Record<AsLeftField, Seq>>>;
  readonly conditions?: Placed<'conditions'>;
  readonly variations: readonly Placed<'variation'>[];
  readonly nextDue?: Placed<'next-due'>;
  /** The last answer to each step, by its cause. */
  readonly steps: Readonly<Record<string, Placed<'step'>>>;
}

export const NOTHING_HANDED_OVER: HandOver = { asLeft: {}, leftBy: {}, variations: [], steps: {} };

export function afterHandOver(before: HandOver, fact: HandOverFact & { seq: Seq; at: number }): HandOver {
  switch (fact.type) {
    case 'as-left': {
      const named = AS_LEFT_FIELDS.filter((field) => fact.values[field] !== undefined);
      const by = Object.fromEntries(named.map((field) => [field, fact.seq]));
      const values = Object.fromEntries(named.map((field) => [field, fact.values[field]]));
      return {
        ...before,
        asLeft: { ...before.asLeft, ...values },
        leftBy: { ...before.leftBy, ...by },
      };
    }
    case 'conditions':
      return { ...before, conditions: fact };
    case 'variation':
      return { ...before, variations: [...before.variations, fact] };
    case 'next-due':
      return { ...before, nextDue: fact };
    case 'step':
      return { ...before, steps: { ...before.steps, [fact.cause]: fact } };
  }
}
