/** What the tool hands a mutator of each piece of a file, as far as one of numbers looks. */
interface Piece {
  readonly node: { readonly type: string; readonly value?: unknown };
}

interface Mutator {
  readonly name: string;
  mutate(piece: Piece): Iterable<object>;
}

/** Every number doubled and halved; nought becomes one. */
const numbers: Mutator = {
  name: 'Number',
  *mutate({ node }) {
    if (node.type !== 'NumericLiteral') return;
    const value = node.value as number;
    for (const other of value === 0 ? [1] : [2 * value, value / 2]) {
      yield { type: 'NumericLiteral', value: other };
    }
  },
};

/**
 * The tool changes operators and conditions and leaves numbers alone, and a threshold is a number. It has no door
 * for mutators of one's own, so this one is put into its list, by the file's path: its package does not export it.
 */
export async function mutateNumbers(): Promise<void> {
  const tool = new URL('.', import.meta.resolve('@stryker-mutator/instrumenter'));
  const { allMutators }: { allMutators: Mutator[] } = await import(`${tool}mutators/mutate.js`);
  allMutators.push(numbers);
}
