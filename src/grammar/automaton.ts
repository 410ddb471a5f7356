/** A deterministic automaton over words: the words allowed in each state, and the next state. */
export interface Automaton {
  readonly start: number;
  /** By state; no word is on two edges of one state. */
  readonly edges: readonly (readonly Edge[])[];
  readonly ends: readonly boolean[];
}

/** Words that lead to the same place. */
export interface Edge {
  readonly words: readonly string[];
  readonly to: number;
}

const lists = new Map<string, readonly string[]>();

/** The same array for the same words, so that lists compare fast. */
export const oneList = (words: readonly string[]): readonly string[] => {
  const key = words.join();
  const list = lists.get(key) ?? words;
  lists.set(key, list);
  return list;
};

/** A network of knots tied by words, or by nothing. An automaton is made from it. */
export class Network {
  private readonly free: number[][] = [];
  private readonly edges: Edge[][] = [];

  /** A new knot; `loops` are words that may be said there without moving on. */
  knot(loops: readonly string[] = []): number {
    const id = this.free.push([]) - 1;
    this.edges.push(loops.length > 0 ? [{ words: oneList(loops), to: id }] : []);
    return id;
  }

  /** `words`: as `oneList` gives them. */
  tie(from: number, to: number, words?: readonly string[]): void {
    if (words === undefined) this.free[from]?.push(to);
    else this.edges[from]?.push({ words, to });
  }

  /** Ties a whole automaton in. */
  insert(part: Automaton, from: number, to: number): void {
    const knots = part.edges.map(() => this.knot());
    for (const [state, edges] of part.edges.entries()) {
      const knot = knots[state] as number;
      for (const { words, to: next } of edges) this.tie(knot, knots[next] as number, words);
      if (part.ends[state]) this.tie(knot, to);
    }
    this.tie(from, knots[part.start] as number);
  }

  /** The smallest automaton for the sentences that lead from `start` to `end`. */
  automaton(start: number, end: number): Automaton {
    const symbols = new Symbols(this.edges.flat().map(({ words }) => words));
    const { tos, ends } = this.determine(start, end, symbols);
    const group = equals(tos, ends);
    const edges: Edge[][] = [];
    const merged: boolean[] = [];
    for (const [state, id] of group.entries()) {
      if (edges[id]) continue;
      const words = new Map<number, string[]>();
      for (const [symbol, next] of tos[state] ?? []) {
        const to = group[next] as number;
        const some = words.get(to);
        if (some) some.push(...symbols.words(symbol));
        else words.set(to, [...symbols.words(symbol)]);
      }
      edges[id] = [...words].map(([to, words]) => ({ words: oneList(words), to }));
      merged[id] = ends[state] as boolean;
    }
    return { start: group[0] as number, edges, ends: merged };
  }

  /** Subset construction over symbols. State 0 is the start. */
  private determine(start: number, end: number, symbols: Symbols): Determined {
    const sets: number[][] = [];
    const states = new Map<string, number>();
    const known = new Map<string, number>();
    const stateOf = (reached: readonly number[]): number => {
      const said = reached.join();
      const before = known.get(said);
      if (before !== undefined) return before;
      const all = new Set(reached);
      for (const knot of all) for (const to of this.free[knot] ?? []) all.add(to);
      const set = [...all].sort((a, b) => a - b);
      const key = set.join();
      const state = states.get(key) ?? sets.push(set) - 1;
      states.set(key, state);
      known.set(said, state);
      return state;
    };

    stateOf([start]);
    const tos: Map<number, number>[] = [];
    for (let state = 0; state < sets.length; state++) {
      const reached = new Map<number, number[]>();
      for (const knot of sets[state] ?? []) {
        for (const { words, to } of this.edges[knot] ?? []) {
          for (const symbol of symbols.of(words)) {
            const others = reached.get(symbol);
            if (others) others.push(to);
            else reached.set(symbol, [to]);
          }
        }
      }
      const sorted = [...reached].sort(([a], [b]) => a - b);
      tos.push(new Map(sorted.map(([symbol, knots]) => [symbol, stateOf(knots)])));
    }
    return { tos, ends: sets.map((set) => set.includes(end)) };
  }
}

/** For each state: the next state for each symbol, in order of the symbols, and whether a sentence ends there. */
interface Determined {
  readonly tos: readonly ReadonlyMap<number, number>[];
  readonly ends: readonly boolean[];
}

/** Words that are always on the same edges lead to the same states; together they are one symbol. */
class Symbols {
  private readonly byList = new Map<readonly string[], number[]>();
  private readonly members: string[][] = [];

  constructor(lists: Iterable<readonly string[]>) {
    const distinct = [...new Set(lists)];
    const places = new Map<string, number[]>();
    for (const [list, words] of distinct.entries()) {
      for (const word of words) {
        const on = places.get(word);
        if (on) on.push(list);
        else places.set(word, [list]);
      }
      this.byList.set(words, []);
    }
    const symbols = new Map<string, number>();
    for (const [word, on] of places) {
      const key = on.join();
      const symbol = symbols.get(key) ?? this.members.push([]) - 1;
      this.members[symbol]?.push(word);
      if (symbols.has(key)) continue;
      symbols.set(key, symbol);
      for (const list of on) this.byList.get(distinct[list] as string[])?.push(symbol);
    }
  }

  /** The symbols that a list of words, one of those given, is made of. */
  of(words: readonly string[]): readonly number[] {
    return this.byList.get(words) ?? [];
  }

  words(symbol: number): readonly string[] {
    return this.members[symbol] ?? [];
  }
}

/**
 * A number for each state: two states have the same number only if the same symbols lead from them to the
 * same ends.
 */
const equals = (tos: Determined['tos'], ends: Determined['ends']): number[] => {
  const groups = new Map<string, number>();
  const group = tos.map((edges, state) => {
    const key = `${ends[state]} ${[...edges.keys()].join()}`;
    const id = groups.get(key) ?? groups.size;
    groups.set(key, id);
    return id;
  });
  // Groups are split by the groups that their states lead to, until nothing changes. A group of one stays as
  // it is.
  const targets = tos.map((edges) => [...edges.values()]);
  let count = groups.size;
  for (let before = 0; before < count; ) {
    before = count;
    const sizes = new Array<number>(count).fill(0);
    for (const id of group) sizes[id] = (sizes[id] as number) + 1;
    const crowded = [...group.keys()].filter((state) => (sizes[group[state] as number] as number) > 1);
    const keys = crowded.map((state) => `${group[state]};${targets[state]?.map((to) => group[to]).join()}`);
    const ids = new Map<string, number>();
    const kept = new Set<number>();
    for (const [i, state] of crowded.entries()) {
      const key = keys[i] as string;
      const old = group[state] as number;
      const id = ids.get(key) ?? (kept.has(old) ? count++ : old);
      kept.add(old);
      ids.set(key, id);
      group[state] = id;
    }
  }
  return group;
};
