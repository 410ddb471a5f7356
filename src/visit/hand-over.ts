import { AS_LEFT_FIELDS, type AsLeft, type AsLeftField, type HandOverFact } from '../model/hand-over.ts';
import type { Seq } from '../model/ids.ts';
import type { Placed } from '../model/placed.ts';

/** What was written down for the hand-over of a pair. */
export interface HandOver {
  readonly asLeft: AsLeft;
  /** The entry of each value. */
  readonly leftBy: Readonly<Partial<Record<AsLeftField, Seq>>>;
  readonly conditions?: Placed<'conditions'>;
  readonly variations: readonly Variation[];
  /** Values that were written and no longer hold, as they were. */
  readonly struckOut: readonly StruckValue[];
  readonly nextDue?: Placed<'next-due'>;
  /** The last answer to each step, by its cause. */
  readonly steps: Readonly<Record<string, Placed<'step'>>>;
}

/** A variation as it was agreed, and what struck it out since. */
export type Variation = Placed<'variation'> & { readonly struck?: Placed<'struck-out'> };

export interface StruckValue {
  readonly field: AsLeftField;
  readonly was: AsLeft;
  readonly struck: Placed<'struck-out'>;
}

export const NOTHING_HANDED_OVER: HandOver = {
  asLeft: {},
  leftBy: {},
  variations: [],
  struckOut: [],
  steps: {},
};

/** True where the entry wrote a variation, or the value of that field, and it still holds. */
export const canStrikeOut = (
  { leftBy, variations }: HandOver,
  { entry, field }: Pick<Placed<'struck-out'>, 'entry' | 'field'>,
): boolean =>
  field === undefined
    ? variations.some(({ seq, struck }) => seq === entry && !struck)
    : leftBy[field] === entry;

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
    case 'struck-out':
      return canStrikeOut(before, fact) ? afterStriking(before, fact) : before;
    case 'step':
      return { ...before, steps: { ...before.steps, [fact.cause]: fact } };
  }
}

function afterStriking(before: HandOver, struck: Placed<'struck-out'>): HandOver {
  const { entry, field } = struck;
  if (field === undefined) {
    const variations = before.variations.map((each) => (each.seq === entry ? { ...each, struck } : each));
    return { ...before, variations };
  }
  const { [field]: was, ...asLeft } = before.asLeft;
  const { [field]: _, ...leftBy } = before.leftBy;
  return {
    ...before,
    asLeft,
    leftBy,
    struckOut: [...before.struckOut, { field, was: { [field]: was }, struck }],
  };
}
