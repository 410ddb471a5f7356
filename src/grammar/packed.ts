import type { Automaton } from './automaton.ts';

/** An automaton as a few long lists, so that it can be written into a file and is read quickly. */
export interface Packed {
  readonly start: number;
  readonly words: readonly string[];
  /** Words that lead to the same place, by their numbers. */
  readonly lists: readonly (readonly number[])[];
  /** By state: the number of a list and the next state, in turn, as text. Most are never asked for, and stay text. */
  readonly edges: readonly string[];
  /** The states where a sentence may end. */
  readonly ends: readonly number[];
}

export function packed({ start, edges, ends }: Automaton): Packed {
  const words = numbered<string>();
  const lists = numbered<readonly string[]>();
  const written = edges.map((here) => here.flatMap(({ words: list, to }) => [lists.of(list), to]).join(' '));
  return {
    start,
    edges: written,
    lists: lists.all.map((list) => list.map(words.of)),
    words: words.all,
    ends: [...ends.keys()].filter((state) => ends[state]),
  };
}

/** Gives the same thing the same number, from 0 on. */
function numbered<T>(): { readonly all: T[]; of(one: T): number } {
  const all: T[] = [];
  const numbers = new Map<T, number>();
  return {
    all,
    of(one) {
      const number = numbers.get(one) ?? all.push(one) - 1;
      numbers.set(one, number);
      return number;
    },
  };
}
