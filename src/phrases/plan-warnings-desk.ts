/** What only the desk reads of the warnings of the plan check. */

export const NO_WARNINGS = 'None: every figure that has a limit is within it.';

/** Beside a pair: how many, and the first in words. */
export const warningsInShort = ([first, ...more]: readonly string[]): string | undefined =>
  first === undefined ? undefined : `${first}${more.length > 0 ? `; and ${more.length} more` : ''}`;

/** Where a table of pairs is read: how many of its pairs have any. */
export const pairsWithWarnings = (count: number, all: number): string =>
  count === 0
    ? 'The plan check has no warning for these pairs.'
    : `The plan check warns of ${count} of ${all} ${all === 1 ? 'pair' : 'pairs'}. They stand first. They can be imported; look at them before the ladder goes up.`;
