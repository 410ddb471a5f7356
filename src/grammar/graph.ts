import { type Automaton, Network, oneList } from './automaton.ts';
import { ENGLISH, type Grammar, TYPED, UNBROKEN, wordingsOf } from './grammar.ts';
import { MADE } from './made.ts';
import { type Packed, packed } from './packed.ts';
import type { Part } from './pattern.ts';
import type { RuleName } from './rule.ts';

/** A place in a sentence. Prefixes share a place if the same words may follow them. */
export type Place = number;

/**
 * Which word may follow which, for a decoder that searches for the best-sounding sentence.
 *
 * Begin at `start`; `next(place)` gives each word that may come there and the place after it; `ends(place)`:
 * the words so far are a whole sentence. It is deterministic and as small as can be: a prefix is at one
 * place, and two prefixes are at the same place only if the same words may follow, so places are keys for
 * merging hypotheses. Every place leads to an end. Fillers are words like the others, where they are allowed;
 * a decoder that wants to charge for them looks in `FILLERS`.
 *
 * The graph holds every wording, also the doubtful ones, but no meanings: give the words that were found to
 * `parse`. What is only typed (digits, the text of a remark) is not in it.
 */
export interface WordGraph {
  readonly start: Place;
  /** Number of places; they are 0 to size - 1. */
  readonly size: number;
  /** Throws a RangeError for a place that is not in this graph. */
  next(place: Place): ReadonlyMap<string, Place>;
  ends(place: Place): boolean;
}

/** Rules used only once: they need no automaton of their own. */
function usedOnce(grammar: Grammar): ReadonlySet<RuleName> {
  const times = new Map<string, number>();
  const count = (part: Part): void => {
    if (part.kind === 'rule') times.set(part.rule, (times.get(part.rule) ?? 0) + 1);
    if (part.kind === 'sequence') part.parts.forEach(count);
    if (part.kind === 'choice') part.options.forEach(count);
  };
  for (const rule of Object.keys(grammar.rules))
    for (const { part } of wordingsOf(rule, grammar)) count(part);
  return new Set([...times].filter(([, n]) => n === 1).map(([rule]) => rule as RuleName));
}

const NO_FILLERS: readonly string[] = [];

/** What is known of one grammar's graphs. */
interface Made {
  readonly automata: Map<string, Automaton>;
  readonly once: ReadonlySet<RuleName>;
  readonly fillers: readonly string[];
}
const made = new WeakMap<Grammar, Made>();

function madeOf(grammar: Grammar): Made {
  const known = made.get(grammar);
  if (known) return known;
  const fresh = { automata: new Map(), once: usedOnce(grammar), fillers: [...grammar.fillers] };
  made.set(grammar, fresh);
  return fresh;
}

/** The automaton of one rule; `unbroken`: within a rule that takes no fillers. */
const automatonOf = (rule: RuleName, unbroken: boolean, grammar: Grammar): Automaton => {
  const { automata, once, fillers } = madeOf(grammar);
  const key = `${rule}/${unbroken}`;
  const known = automata.get(key);
  if (known) return known;

  const network = new Network();
  const knot = (unbroken: boolean): number => network.knot(unbroken ? NO_FILLERS : fillers);
  const string = (part: Part, from: number, to: number, unbroken: boolean): void => {
    switch (part.kind) {
      case 'word':
        network.tie(from, to, oneList([part.word]));
        break;
      case 'rule': {
        const name = part.rule as RuleName;
        if (TYPED.has(name)) break;
        const within = unbroken || UNBROKEN.has(name);
        if (once.has(name)) stringRule(name, from, to, within);
        else network.insert(automatonOf(name, within, grammar), from, to);
        break;
      }
      case 'choice':
        for (const option of part.options) string(option, from, to, unbroken);
        break;
      case 'sequence': {
        const last = part.parts.length - 1;
        if (last < 0) network.tie(from, to);
        let at = from;
        for (const [i, next] of part.parts.entries()) {
          const after = i < last ? knot(unbroken) : to;
          string(next, at, after, unbroken);
          at = after;
        }
      }
    }
  };
  const stringRule = (name: RuleName, from: number, to: number, unbroken: boolean): void => {
    for (const { part } of wordingsOf(name, grammar)) string(part, from, to, unbroken);
  };

  const start = knot(unbroken);
  const end = knot(unbroken);
  stringRule(rule, start, end, unbroken);
  const automaton = network.automaton(start, end);
  automata.set(key, automaton);
  return automaton;
};

/** The automaton of all English sentences, made here and now. */
export const sentences = (): Packed => packed(automatonOf('sentence', false, ENGLISH));

const read = ({ start, words, lists, edges, ends }: Packed): WordGraph => {
  const isEnd = new Set(ends);
  return {
    start,
    size: edges.length,
    next: (place) => {
      const written = edges[place];
      if (written === undefined) throw new RangeError(`No such place: ${place}`);
      const after = new Map<string, Place>();
      const numbers = written === '' ? [] : written.split(' ').map(Number);
      for (let i = 0; i < numbers.length; i += 2) {
        for (const word of lists[numbers[i] as number] ?? [])
          after.set(words[word] as string, numbers[i + 1] as Place);
      }
      return after;
    },
    ends: (place) => isEnd.has(place),
  };
};

/** The graph of one rule's sentences; of all sentences, if none is named. */
export const wordGraph = (rule: RuleName = 'sentence', grammar: Grammar = ENGLISH): WordGraph =>
  read(
    (rule === 'sentence' && grammar === ENGLISH ? MADE : undefined) ??
      packed(automatonOf(rule, UNBROKEN.has(rule), grammar)),
  );
