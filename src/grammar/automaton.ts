/** A deterministic automaton over words: for each state the words that may come and the state after each. */
export interface Automaton {
  readonly start: number;
  readonly next: readonly ReadonlyMap<string, number>[];
  readonly ends: readonly boolean[];
}

/** A network of knots tied by words, or by nothing, from which an automaton is made. */
export class Network {
  private readonly free: number[][] = [];
  private readonly words: [word: string, to: number][][] = [];

  /** A new knot; `loops` are words that may be said there without going anywhere. */
  knot(loops: Iterable<string> = []): number {
    const id = this.free.push([]) - 1;
    this.words.push([...loops].map((word) => [word, id]));
    return id;
  }

  tie(from: number, to: number, word?: string): void {
    if (word === undefined) this.free[from]?.push(to);
    else this.words[from]?.push([word, to]);
  }

  /** Ties a whole automaton in. */
  insert(part: Automaton, from: number, to: number): void {
    const knots = part.next.map(() => this.knot());
    for (const [state, edges] of part.next.entries()) {
      const knot = knots[state] as number;
      for (const [word, next] of edges) this.tie(knot, knots[next] as number, word);
      if (part.ends[state]) this.tie(knot, to);
    }
    this.tie(from, knots[part.start] as number);
  }

  /** The smallest automaton that takes the sentences which lead from `start` to `end`. */
  automaton(start: number, end: number): Automaton {
    return smallest(this.determine(start, end));
  }

  /** Subset construction. */
  private determine(start: number, end: number): Automaton {
    const sets: number[][] = [];
    const known = new Map<string, number>();
    const stateOf = (reached: Iterable<number>): number => {
      const all = new Set(reached);
      for (const knot of all) for (const to of this.free[knot] ?? []) all.add(to);
      const set = [...all].sort((a, b) => a - b);
      const key = set.join();
      const state = known.get(key) ?? sets.push(set) - 1;
      known.set(key, state);
      return state;
    };

    const first = stateOf([start]);
    const next: ReadonlyMap<string, number>[] = [];
    for (let state = 0; state < sets.length; state++) {
      const reached = new Map<string, number[]>();
      for (const knot of sets[state] ?? []) {
        for (const [word, to] of this.words[knot] ?? []) {
          const tos = reached.get(word);
          if (tos) tos.push(to);
          else reached.set(word, [to]);
        }
      }
      next.push(new Map([...reached].map(([word, tos]) => [word, stateOf(tos)])));
    }
    return { start: first, next, ends: sets.map((set) => set.includes(end)) };
  }
}

/** Merges states from which the same words lead to the same ends, by refining a partition until it holds. */
const smallest = ({ start, next, ends }: Automaton): Automaton => {
  const edges = next.map((edges) => [...edges].sort(([a], [b]) => (a < b ? -1 : 1)));
  const targets = edges.map((edges) => edges.map(([, to]) => to));
  // States are told apart by their words and by ending, then by the groups those words lead to.
  let groups = numbered(edges.map((edges, state) => `${ends[state]} ${edges.map(([word]) => word).join()}`));
  for (let count = 0; count < groups.count; ) {
    const { of } = groups;
    count = groups.count;
    groups = numbered(targets.map((tos, state) => `${of[state]};${tos.map((to) => of[to]).join()}`));
  }

  const { of } = groups;
  const merged: ReadonlyMap<string, number>[] = [];
  const mergedEnds: boolean[] = [];
  for (const [state, group] of of.entries()) {
    merged[group] ??= new Map(edges[state]?.map(([word, to]) => [word, of[to] as number]));
    mergedEnds[group] = ends[state] ?? false;
  }
  return { start: of[start] as number, next: merged, ends: mergedEnds };
};

/** Numbers for keys, equal keys getting the same one. */
const numbered = (keys: readonly string[]): { of: number[]; count: number } => {
  const known = new Map<string, number>();
  const of = keys.map((key) => {
    const number = known.get(key) ?? known.size;
    known.set(key, number);
    return number;
  });
  return { of, count: known.size };
};
