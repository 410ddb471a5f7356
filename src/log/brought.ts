import { isOnePhone } from '../model/alone.ts';
import type { Entry } from '../model/entry.ts';
import { type Fact, SearchFact } from '../model/facts.ts';
import { HandOverFact } from '../model/hand-over.ts';
import { kindsOf } from '../model/kinds.ts';
import { BROUGHT_DAMAGED, BROUGHT_FOREIGN, BROUGHT_NOT_ALONE } from '../phrases/brought.ts';
import { findFault, headAfter } from './chain.ts';

/**
 * What a phone writes that keeps a log alone: what its person says and does, and what the rules answer. All else is by a server
 * (keys, other phones, what lies beside the log) or by people at a desk (plans, signatures), and would prove nothing here.
 */
const BY_ONE_PHONE: ReadonlySet<string> = new Set<Fact['type']>([
  'opened',
  'seated',
  'said',
  ...kindsOf(SearchFact, 'type'),
  'pause',
  'resume',
  'remark',
  'mounted',
  'readback',
  'query',
  'notice',
  'instruction',
  'withdrawn',
  'stopped',
  'restarted',
  'issue-opened',
  'issue-closed',
  ...kindsOf(HandOverFact, 'type'),
]);

/**
 * Why the server cannot take over this log from the phone that kept it, in words for its person; undefined where it can. It
 * must be whole, of one person with one phone, and hold nothing that only a server or a desk writes.
 */
export function faultOfBrought(entries: readonly Entry[]): string | undefined {
  const [first, last] = [entries[0], entries.at(-1)];
  if (!first || !last || findFault(entries, headAfter(last))) return BROUGHT_DAMAGED;
  if (first.fact.type !== 'opened' || first.fact.setup.practice || !isOnePhone(first.fact.setup.alone))
    return BROUGHT_NOT_ALONE;
  return entries.every(isByOnePhone) ? undefined : BROUGHT_FOREIGN;
}

function isByOnePhone({ seq, actor, fact }: Entry): boolean {
  if (!BY_ONE_PHONE.has(fact.type) || actor === 'supervisor') return false;
  if (fact.type === 'opened') return seq === 0;
  return fact.type !== 'said' || fact.sound === undefined;
}
