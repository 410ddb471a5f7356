import type { Search } from '../engine/search.ts';
import type { Checklist, ChecklistItem } from '../model/checklists.ts';
import type { SearchFact } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import type { Placed } from '../model/placed.ts';
import type { JobSetup } from '../model/setup.ts';

/** Something that must be settled before the pair can be signed. `seq`: the entry that opened it. */
export interface Issue {
  readonly seq: Seq;
  readonly at: number;
  /** The entry that began the test, or gave the answer, that failed. */
  readonly about: Seq;
  readonly text: string;
  readonly closed?: { readonly seq: Seq; readonly at: number; readonly how: string };
}

/** What the commissioning of a pair is judged by. The state of every open job is one. */
export interface Commission {
  readonly setup: JobSetup;
  readonly search: Search;
  /** What the crew reported and still counts, oldest first. */
  readonly counted: readonly Placed<SearchFact['type']>[];
  readonly issues: readonly Issue[];
  readonly signed?: Placed<'signed'>;
}

/** True where the work before and after the alignment is guided, too: also on a periodic visit. */
export const isCommissioning = ({ setup }: Pick<Commission, 'setup'>): boolean =>
  setup.scope === 'commissioning' || isPeriodic({ setup });

/** True for a visit to a pair in service. */
export const isPeriodic = ({ setup }: Pick<Commission, 'setup'>): boolean => setup.scope === 'periodic';

/** The last answer to an item of a checklist. */
export function answerTo(
  { counted }: Pick<Commission, 'counted'>,
  list: Checklist,
  item: ChecklistItem,
): Placed<'item'> | undefined {
  return counted.findLast(
    (fact): fact is Placed<'item'> => fact.type === 'item' && fact.list === list && fact.item === item,
  );
}

/** True if an item needs words, not only yes: it matters who was told. */
export const needsNote = (item: ChecklistItem): boolean => item === 'people-told';

export const isAnswered = (answer: Placed<'item'> | undefined): answer is Placed<'item'> =>
  answer?.done === true && (answer.note !== undefined || !needsNote(answer.item));
