import { type Automaton, Network } from './automaton.ts';
import { FILLERS, TYPED, UNBROKEN, wordingsOf } from './grammar.ts';
import type { Part } from './pattern.ts';
import type { RuleName } from './rule.ts';

/** A place in a sentence: all prefixes after which the same words may follow share one. */
export type Place = number;

/**
 * Which word may follow which, for a decoder that searches for the best-sounding sentence.
 *
 * Begin at `start`; `next(place)` gives each word that may come there and the place after it;
 * `ends(place)`: the words so far are a whole sentence. It is deterministic and as small as can be: a
 * prefix is at one place, and two prefixes are at the same place just when the same words may follow, so
 * places serve as keys for merging hypotheses. Every place leads to an end. Fillers are words like the
 * others, where they are allowed; a decoder that wants to charge for them looks in `FILLERS`.
 *
 * The graph holds every wording, the doubtful ones too, and knows nothing of meanings: hand the words that
 * were found to `parse`. What is only typed (figures, the text of a remark) is not in it.
 */
export interface WordGraph {
  readonly start: Place;
  /** Number of places; they are 0 to size - 1. */
  readonly size: number;
  /** Throws a RangeError for a place that is not in this graph. */
  next(place: Place): ReadonlyMap<string, Place>;
  ends(place: Place): boolean;
}

const automata = new Map<string, Automaton>();

/** The automaton of one rule; `unbroken`: within a rule that takes no fillers. */
const automatonOf = (rule: RuleName, unbroken: boolean): Automaton => {
  const key = `${rule}/${unbroken}`;
  const known = automata.get(key);
  if (known) return known;

  const network = new Network();
  const knot = (): number => network.knot(unbroken ? [] : FILLERS);
  const string = (part: Part, from: number, to: number): void => {
    switch (part.kind) {
      case 'word':
        network.tie(from, to, part.word);
        break;
      case 'rule': {
        const name = part.rule as RuleName;
        if (!TYPED.has(name)) network.insert(automatonOf(name, unbroken || UNBROKEN.has(name)), from, to);
        break;
      }
      case 'choice':
        for (const option of part.options) string(option, from, to);
        break;
      case 'sequence': {
        let at = from;
        for (const next of part.parts) {
          const after = knot();
          string(next, at, after);
          at = after;
        }
        network.tie(at, to);
      }
    }
  };

  const start = knot();
  const end = knot();
  for (const { part } of wordingsOf(rule)) string(part, start, end);
  const made = network.automaton(start, end);
  automata.set(key, made);
  return made;
};

/** The graph of one rule's sentences; of all sentences, if none is named. Made once and kept. */
export const wordGraph = (rule: RuleName = 'sentence'): WordGraph => {
  const { start, next, ends } = automatonOf(rule, UNBROKEN.has(rule));
  return {
    start,
    size: next.length,
    next: (place) => {
      const words = next[place];
      if (!words) throw new RangeError(`No such place: ${place}`);
      return words;
    },
    ends: (place) => ends[place] ?? false,
  };
};
