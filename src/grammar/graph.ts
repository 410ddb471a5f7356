import { FILLERS, TYPED, UNBROKEN, wordingsOf } from './grammar.ts';
import type { Part } from './pattern.ts';
import type { RuleName } from './rule.ts';

/** A place in a sentence: all prefixes after which the same words may follow share one. */
export type Place = number;

/**
 * Which word may follow which, for a decoder that searches for the best-sounding sentence.
 *
 * Begin at `start`; `next(place)` gives each word that may come there and the place after it;
 * `ends(place)`: the words so far are a whole sentence. Deterministic, so that a prefix is always at one
 * place, and places can be compared and used as keys. Fillers are words like the others, where they are
 * allowed; a decoder that wants to charge for them looks in `FILLERS`. Places are made when first asked
 * for and kept; there are a few thousand.
 *
 * The graph holds every wording, the doubtful ones too, and knows nothing of meanings: hand the words that
 * were found to `parse`. What is only typed (figures, the text of a remark) is not in it.
 */
export interface WordGraph {
  readonly start: Place;
  next(place: Place): ReadonlyMap<string, Place>;
  ends(place: Place): boolean;
}

/** A knot of the network that the rules are strung into; `free`: it takes no word. */
interface Knot {
  readonly free: number[];
  readonly words: Map<string, number[]>;
}

const networkOf = (rule: RuleName): { knots: Knot[]; start: number; end: number } => {
  const knots: Knot[] = [];

  const knot = (unbroken: boolean): number => {
    const id = knots.push({ free: [], words: new Map() }) - 1;
    if (!unbroken) for (const filler of FILLERS) link(id, filler, id);
    return id;
  };
  const link = (from: number, word: string, to: number): void => {
    const { words } = knots[from] as Knot;
    words.set(word, [...(words.get(word) ?? []), to]);
  };
  const join = (from: number, to: number): void => {
    (knots[from] as Knot).free.push(to);
  };

  /** Strings the part in from knot to knot. */
  const string = (part: Part, from: number, to: number, unbroken: boolean): void => {
    switch (part.kind) {
      case 'word':
        link(from, part.word, to);
        break;
      case 'rule':
        stringRule(part.rule as RuleName, from, to, unbroken);
        break;
      case 'sequence': {
        let at = from;
        for (const [i, next] of part.parts.entries()) {
          const after = i === part.parts.length - 1 ? to : knot(unbroken);
          string(next, at, after, unbroken);
          at = after;
        }
        if (part.parts.length === 0) join(from, to);
        break;
      }
      case 'choice':
        for (const option of part.options) string(option, from, to, unbroken);
    }
  };
  const stringRule = (name: RuleName, from: number, to: number, unbroken: boolean): void => {
    if (TYPED.has(name)) return;
    for (const { part } of wordingsOf(name)) string(part, from, to, unbroken || UNBROKEN.has(name));
  };

  const start = knot(false);
  const end = knot(false);
  stringRule(rule, start, end, false);
  return { knots, start, end };
};

const determined = (rule: RuleName): WordGraph => {
  const { knots, start, end } = networkOf(rule);
  const places: { knots: readonly number[]; next?: ReadonlyMap<string, Place> }[] = [];
  const known = new Map<string, Place>();

  const placeOf = (reached: Iterable<number>): Place => {
    const all = new Set(reached);
    for (const id of all) for (const to of (knots[id] as Knot).free) all.add(to);
    const sorted = [...all].sort((a, b) => a - b);
    const key = sorted.join();
    const place = known.get(key) ?? places.push({ knots: sorted }) - 1;
    known.set(key, place);
    return place;
  };

  const follow = (from: readonly number[]): ReadonlyMap<string, Place> => {
    const reached = new Map<string, number[]>();
    for (const id of from) {
      for (const [word, to] of (knots[id] as Knot).words)
        reached.set(word, [...(reached.get(word) ?? []), ...to]);
    }
    return new Map([...reached].map(([word, to]) => [word, placeOf(to)]));
  };

  return {
    start: placeOf([start]),
    next: (at) => {
      const place = places[at];
      if (!place) throw new RangeError(`No such place: ${at}`);
      place.next ??= follow(place.knots);
      return place.next;
    },
    ends: (at) => places[at]?.knots.includes(end) ?? false,
  };
};

const graphs = new Map<RuleName, WordGraph>();

/** The graph of one rule's sentences, of all sentences if none is named. Made once and kept. */
export const wordGraph = (rule: RuleName = 'sentence'): WordGraph => {
  const graph = graphs.get(rule) ?? determined(rule);
  graphs.set(rule, graph);
  return graph;
};
