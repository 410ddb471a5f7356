import { type Grammar, TYPED, wordingsOf } from './grammar.ts';
import type { Token } from './normalise.ts';
import type { Part } from './pattern.ts';
import type { RuleName, Wording } from './rule.ts';
import { knows } from './vocabulary.ts';

/** How a part can begin. With it the parser skips nearly all of the grammar. */
export interface Beginnings {
  /** Words it can begin with, and the names of typed rules. */
  readonly words: ReadonlySet<string>;
  /** It can be empty. */
  readonly empty: boolean;
}

/** How the parts of one grammar begin; each is worked out once. */
class Index {
  readonly #ofRules = new Map<string, Beginnings>();
  readonly #ofParts = new WeakMap<Part, Beginnings>();
  readonly #candidates = new Map<string, readonly Wording<unknown>[]>();

  constructor(private readonly grammar: Grammar) {}

  #rule(name: string): Beginnings {
    const before = this.#ofRules.get(name);
    if (before) return before;
    const made: Beginnings = TYPED.has(name as RuleName)
      ? { words: new Set([name]), empty: false }
      : oneOf(wordingsOf(name, this.grammar).map(({ part }) => this.begins(part)));
    this.#ofRules.set(name, made);
    return made;
  }

  begins(part: Part): Beginnings {
    const made = this.#ofParts.get(part) ?? this.#work(part);
    this.#ofParts.set(part, made);
    return made;
  }

  #work(part: Part): Beginnings {
    switch (part.kind) {
      case 'word':
        return { words: new Set([part.word]), empty: false };
      case 'rule':
        return this.#rule(part.rule);
      case 'choice':
        return oneOf(part.options.map((option) => this.begins(option)));
      case 'sequence': {
        const words = new Set<string>();
        for (const next of part.parts.map((each) => this.begins(each))) {
          for (const word of next.words) words.add(word);
          if (!next.empty) return { words, empty: false };
        }
        return { words, empty: true };
      }
    }
  }

  /** The name of a token among the beginnings; all tokens that begin no sentence share one name. */
  beginning(token: Token): string {
    if (token.kind !== 'word') return token.kind;
    return knows(token.word, this.grammar) ? token.word : '';
  }

  /** The wordings of a rule that can begin with it; after a filler, any wording may follow. */
  wordingsBeginning(rule: string, first: string): readonly Wording<unknown>[] {
    const all = wordingsOf(rule, this.grammar);
    if (this.grammar.fillers.has(first)) return all;
    const key = `${rule} ${first}`;
    const found =
      this.#candidates.get(key) ??
      all.filter(({ part }) => this.begins(part).empty || this.begins(part).words.has(first));
    this.#candidates.set(key, found);
    return found;
  }
}

const oneOf = (options: readonly Beginnings[]): Beginnings => ({
  words: new Set(options.flatMap(({ words }) => [...words])),
  empty: options.some(({ empty }) => empty),
});

const known = new WeakMap<Grammar, Index>();

export const beginningsIn = (grammar: Grammar): Index => {
  const index = known.get(grammar) ?? new Index(grammar);
  known.set(grammar, index);
  return index;
};
