import type { Fact, SearchFact } from './facts.ts';

/** What the crew reported, not what was decided from it. */
const REPORTED: ReadonlySet<Fact['type']> = new Set<SearchFact['type']>([
  'reading',
  'trend',
  'move',
  'gain',
  'path',
  're-aimed',
  'disturbed',
  'choice',
  'cannot',
  'checked',
  'item',
  'panel',
  'accept',
]);

/** Whether a crew member can take it back. */
export const isReported = (fact: Fact): fact is SearchFact => REPORTED.has(fact.type);
