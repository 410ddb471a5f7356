import type { Entry } from '../model/entry.ts';

/** A log of practice with a simulated pair: nothing in it holds for a building. */
export const isPractice = (entries: readonly Pick<Entry, 'fact'>[]): boolean =>
  entries.some(
    ({ fact }) => fact.type === 'practised' || (fact.type === 'opened' && fact.setup.practice !== undefined),
  );
