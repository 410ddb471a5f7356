import { isOnePhone } from '../model/alone.ts';
import type { Entry } from '../model/entry.ts';
import { type Fact, SearchFact } from '../model/facts.ts';
import { HandOverFact } from '../model/hand-over.ts';
import { kindsOf } from '../model/kinds.ts';
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

/** `foreign`: it holds what only a server or a desk writes. */
export type BroughtFault = 'damaged' | 'not-alone' | 'foreign';

/** Why the server cannot take over this log from the phone that kept it; undefined where it can. */
export function faultOfBrought(entries: readonly Entry[]): BroughtFault | undefined {
  const [first, last] = [entries[0], entries.at(-1)];
  if (!first || !last || findFault(entries, headAfter(last))) return 'damaged';
  if (first.fact.type !== 'opened' || first.fact.setup.practice || !isOnePhone(first.fact.setup.alone))
    return 'not-alone';
  return entries.every(isByOnePhone) ? undefined : 'foreign';
}

function isByOnePhone({ seq, actor, fact }: Entry): boolean {
  if (!BY_ONE_PHONE.has(fact.type) || actor === 'supervisor') return false;
  if (fact.type === 'opened') return seq === 0;
  return fact.type !== 'said' || fact.sound === undefined;
}
