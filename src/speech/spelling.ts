import type { Place, WordGraph } from '../grammar/graph.ts';
import type { Alphabet } from './logits.ts';

/** A place inside a word: the letters that may come next, and whether a word is complete here. */
export interface Stem {
  /** By token. */
  readonly next: Map<number, Stem>;
  /** The word that is complete here, and the place in the sentence after it. */
  word?: { readonly text: string; readonly after: Place };
}

/** A graph of words, spelled out letter by letter. Places are spelled out when first needed, and kept. */
export class Spelling {
  private readonly roots = new Map<Place, Stem>();

  constructor(
    private readonly graph: WordGraph,
    private readonly alphabet: Alphabet,
  ) {}

  get start(): Stem {
    return this.at(this.graph.start);
  }

  ends(place: Place): boolean {
    return this.graph.ends(place);
  }

  at(place: Place): Stem {
    const known = this.roots.get(place);
    if (known) return known;
    const root: Stem = { next: new Map() };
    for (const [text, after] of this.graph.next(place)) {
      const tokens = [...text].map((letter) => this.alphabet.letters.get(letter));
      let stem = root;
      for (const token of tokens) {
        if (token === undefined) throw new RangeError(`The model cannot write "${text}"`);
        const next = stem.next.get(token) ?? { next: new Map() };
        stem.next.set(token, next);
        stem = next;
      }
      stem.word = { text, after };
    }
    this.roots.set(place, root);
    return root;
  }
}
