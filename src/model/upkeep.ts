import type { Fact } from './facts.ts';

/**
 * What is added to a log when a time is over, or when somebody is to be forgotten, perhaps years after the last visit: no part of
 * the work, and nothing that a signer has to read again.
 */
export const isUpkeep = (fact: Fact): boolean =>
  fact.type === 'names-forgotten' || (fact.type === 'photo-removed' && fact.afterDays !== undefined);
