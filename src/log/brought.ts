import type { Entry } from '../model/entry.ts';
import { type Fact, SearchFact } from '../model/facts.ts';
import { HandOverFact } from '../model/hand-over.ts';
import type { Head } from '../model/ids.ts';
import { kindsOf } from '../model/kinds.ts';
import { findFault, headAfter } from './chain.ts';

/**
 * What a phone writes that keeps a log alone: what people say and do at it and at the phone that it has met, what these phones say
 * of themselves, and what the rules answer. All else is by a server (keys, what lies beside the log) or by people at a desk
 * (plans, signatures), and would prove nothing here.
 */
const BY_PHONES: ReadonlySet<string> = new Set<Fact['type']>([
  'opened',
  'seated',
  'said',
  ...kindsOf(SearchFact, 'type'),
  'pause',
  'resume',
  'remark',
  'mounted',
  'camera',
  'sensor',
  'link',
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
export type BroughtFault = 'damaged' | 'practice' | 'foreign';

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
  if (first.fact.type !== 'opened') return 'foreign';
  if (first.fact.setup.practice) return 'practice';
  return entries.every(isByPhones) ? undefined : 'foreign';
}

function isByPhones({ seq, actor, fact }: Entry): boolean {
  if (!BY_PHONES.has(fact.type) || actor === 'supervisor') return false;
  if (fact.type === 'opened') return seq === 0;
  return fact.type !== 'said' || fact.sound === undefined;
}
