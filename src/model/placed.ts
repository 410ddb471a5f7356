import type { Fact, SearchFact } from './facts.ts';
import type { Seq } from './ids.ts';

/** A fact with its place and time in the log. */
export type Placed<T extends Fact['type']> = Extract<Fact, { type: T }> & { seq: Seq; at: number };

/** A fact the crew reported that still counts. */
export type Counted = Placed<SearchFact['type']>;

/** The latest of the counted facts of one type. */
export function lastOf<T extends SearchFact['type']>(
  counted: readonly Counted[],
  type: T,
): Placed<T> | undefined {
  return counted.findLast((fact) => fact.type === type) as Placed<T> | undefined;
}

const TOUCHES: ReadonlySet<string> = new Set(['move', 'gain', 're-aimed', 'disturbed']);

/** True for a fact that turned or set something: a reading before it says nothing about what comes after. */
export const isTouch = ({ type }: { readonly type: string }): boolean => TOUCHES.has(type);
