import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import canonicalize from 'canonicalize';
import type { Draft, Entry, Log } from '../model/entry.ts';
import type { Salt } from '../model/forgotten.ts';
import type { Head, JobId } from '../model/ids.ts';
import type { ChainFault, CheckedLog } from './fault.ts';
import { forgottenIn, namesIn, withoutNames } from './names.ts';
import { namesFault, namesHash, namesText } from './sealing.ts';

export const GENESIS = '0'.repeat(64);

export const emptyHead = (job: JobId): Head => ({ job, count: 0, hash: GENESIS });

/**
 * The exact text an entry's hash is taken over: RFC 8785 canonical JSON of all but the hash, and but the names that lie beside
 * it.
 */
export function bodyOf(entry: Entry | Omit<Entry, 'hash'>): string {
  const { hash: _, ...body } = entry as Entry;
  if (body.sealed === undefined) return canonicalize(body) as string;
  const { salt: __, fact, ...rest } = body;
  return canonicalize({ ...rest, fact: withoutNames(fact) }) as string;
}

export const hashOf = (body: string): string => bytesToHex(sha256(utf8ToBytes(body)));

/** Bodies of entries sealed here. For storing only: what checks an entry makes its body from the entry itself. */
const SEALED = new WeakMap<Entry, string>();

/**
 * Chains one draft onto a head. `at`: ms since 1970. `hash`: SHA-256 of a text, in hex. `salt`: gives new salts; without it,
 * as in older logs, names stand in the hashed body.
 */
export function seal(head: Head, draft: Draft, at: number, hash = hashOf, salt?: () => Salt): Entry {
  const beside = salt && sealedNames(draft.fact, salt);
  const unsealed = { job: head.job, seq: head.count, at, ...draft, ...beside, prev: head.hash };
  const body = bodyOf(unsealed);
  const entry = { ...unsealed, hash: hash(body) };
  SEALED.set(entry, body);
  return entry;
}

function sealedNames(fact: Draft['fact'], newSalt: () => Salt): Pick<Entry, 'sealed' | 'salt'> | undefined {
  const names = namesIn(fact);
  if (!names) return undefined;
  const salt = newSalt();
  return { sealed: namesHash(salt, namesText(names)), salt };
}

/** The text that the hash was taken over when the entry was sealed. */
export const sealedBody = (entry: Entry): string => SEALED.get(entry) ?? bodyOf(entry);

/** The entry as JSON; of one that was sealed here, from the text that is there already. */
export function entryJson(entry: Entry): string {
  const body = SEALED.get(entry);
  return body === undefined || entry.sealed !== undefined
    ? JSON.stringify(entry)
    : `${body.slice(0, -1)},"hash":"${entry.hash}"}`;
}

export const headAfter = (entry: Entry): Head => ({
  job: entry.job,
  count: entry.seq + 1,
  hash: entry.hash,
});

/** A log that something names, checked from end to end: with nothing in it, it is lost. */
export const checked = (log: Log): CheckedLog => ({
  ...log,
  fault: log.head.count === 0 ? { seq: 0, fault: 'missing' } : findFault(log.entries, log.head),
});

/**
 * The first fault in a chain of entries, or undefined if it is whole and ends at `head`. Entries up to
 * `checked` were checked before.
 */
export function findFault(
  entries: readonly Entry[],
  head: Head,
  checked: Head = emptyHead(head.job),
): ChainFault | undefined {
  let at = checked;
  const forgotten = forgottenIn(entries);
  for (const entry of entries.slice(checked.count)) {
    const seq = at.count;
    if (entry.job !== head.job) return { seq, fault: 'job' };
    if (entry.seq !== seq) return { seq, fault: 'order' };
    if (entry.prev !== at.hash) return { seq, fault: 'prev' };
    if (hashOf(bodyOf(entry)) !== entry.hash) return { seq, fault: 'hash' };
    const names = namesFault(entry, forgotten.has(seq));
    if (names) return { seq, fault: names };
    at = headAfter(entry);
  }
  if (at.count !== head.count || at.hash !== head.hash) return { seq: at.count, fault: 'head' };
  return undefined;
}
