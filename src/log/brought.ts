import { isOnePhone } from '../model/alone.ts';
import type { Entry } from '../model/entry.ts';
import { type Fact, SearchFact } from '../model/facts.ts';
import { HandOverFact } from '../model/hand-over.ts';
import type { Head } from '../model/ids.ts';
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

/** So many entries are looked at before others have their turn. */
export const PART = 100;

/** Why the server cannot take over this log from the phone that kept it; undefined where it can. Yields between its parts. */
export function* findBroughtFault(entries: readonly Entry[]): Generator<undefined, BroughtFault | undefined> {
  const [first] = entries;
  if (!first) return 'damaged';
  let checked: Head | undefined;
  for (let to = PART; to < entries.length + PART; to += PART) {
    const part = entries.slice(0, to);
    const upTo = headAfter(part.at(-1) ?? first);
    if (findFault(part, upTo, checked)) return 'damaged';
    checked = upTo;
    yield;
  }
  if (first.fact.type !== 'opened' || first.fact.setup.practice || !isOnePhone(first.fact.setup.alone))
    return 'not-alone';
  return entries.every(isByOnePhone) ? undefined : 'foreign';
}

function isByOnePhone({ seq, actor, fact }: Entry): boolean {
  if (!BY_ONE_PHONE.has(fact.type) || actor === 'supervisor') return false;
  if (fact.type === 'opened') return seq === 0;
  return fact.type !== 'said' || fact.sound === undefined;
}
