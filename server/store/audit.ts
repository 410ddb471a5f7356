import { createHash } from 'node:crypto';
import { emptyHead, sealedBody } from '../../src/log/chain.ts';
import type { ChainFault } from '../../src/log/fault.ts';
import { namesIn, withNames } from '../../src/log/names.ts';
import { areSealed, namesText } from '../../src/log/sealing.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Head, JobId, Seq } from '../../src/model/ids.ts';

/** An entry as it lies in the store: the hashed text, and what is kept beside it. */
export interface StoredEntry {
  seq: number;
  ref: string | null;
  body: string;
  hash: string;
  /** The names beside it: canonical JSON, and their salt. Null where there are none, or none any more. */
  salt: string | null;
  names: string | null;
}

/** An entry on its way into the store. */
export type EntryRow = StoredEntry & Pick<Entry, 'job' | 'prev'>;

export const rowOf = (entry: Entry): EntryRow => {
  const { job, seq, ref = null, prev, hash, sealed, salt = null, fact } = entry;
  const names = sealed === undefined || salt === null ? undefined : namesIn(fact);
  const beside = names ? { salt, names: namesText(names) } : { salt: null, names: null };
  return { job, seq, ref, prev, hash, body: sealedBody(entry), ...beside };
};

/** Throws where the text is no JSON. */
export function entryOf({ body, hash, salt, names }: StoredEntry): Entry {
  const entry = JSON.parse(body);
  if (entry.sealed === undefined) return { ...entry, hash };
  const beside = names === null || salt === null ? undefined : { names: JSON.parse(names), salt };
  return {
    ...entry,
    fact: withNames(entry.fact, beside?.names),
    ...(beside && { salt: beside.salt }),
    hash,
  };
}

/** The entries up to the first text that is none: a damaged log is given as far as it can be read. */
export function readable(rows: readonly StoredEntry[]): Entry[] {
  const entries: Entry[] = [];
  for (const row of rows) {
    try {
      entries.push(entryOf(row));
    } catch {
      break;
    }
  }
  return entries;
}

/** As `findFault` of the log, over the stored bytes themselves, row by row. */
export class Audit {
  private at: Head;
  /** Of the messages that the rows came in: where each is. */
  private readonly refs = new Map<string, number>();
  /** Entries that names lie beside, and those whose names are not there: until the log says why. */
  private readonly named = new Set<Seq>();
  private readonly nameless = new Set<Seq>();
  private readonly witnessed = new Map<number, Set<string>>();

  /** `witnesses`: heads that this log is known to have had, from somewhere else than the log. */
  constructor(
    job: JobId,
    private readonly witnesses: readonly Pick<Head, 'count' | 'hash'>[] = [],
  ) {
    this.at = emptyHead(job);
    for (const { count, hash } of witnesses) {
      this.witnessed.set(count, (this.witnessed.get(count) ?? new Set()).add(hash));
    }
  }

  /** How many entries were sound so far. */
  get count(): number {
    return this.at.count;
  }

  add(row: StoredEntry): ChainFault | undefined {
    const { job, count: seq, hash } = this.at;
    if (row.seq !== seq) return { seq, fault: 'order' };
    if (createHash('sha256').update(row.body, 'utf8').digest('hex') !== row.hash)
      return { seq, fault: 'hash' };
    const body = parsed(row.body);
    if (!body) return { seq, fault: 'hash' };
    if (body.job !== job) return { seq, fault: 'job' };
    if (body.seq !== seq) return { seq, fault: 'order' };
    if (body.prev !== hash) return { seq, fault: 'prev' };
    // The hash does not cover the column, and a message whose id stands there would count as logged.
    if ((body.ref ?? null) !== row.ref) return { seq, fault: 'ref' };
    if (row.ref !== null) this.refs.set(row.ref, seq);
    const wrong = this.addNames(row, body);
    if (wrong) return wrong;
    this.at = { job, count: seq + 1, hash: row.hash };
    const isAsWitnessed = [...(this.witnessed.get(seq + 1) ?? [])].every((each) => each === row.hash);
    return isAsWitnessed ? undefined : { seq, fault: 'rewritten' };
  }

  /** What lies beside the row held to its hash, and to what the log says of it. */
  private addNames({ seq, salt, names }: StoredEntry, { sealed, fact }: Body): ChainFault | undefined {
    if (typeof sealed !== 'string') {
      if (names !== null) return { seq, fault: 'names' };
    } else if (names === null || salt === null) this.nameless.add(seq);
    else if (!areSealed(salt, names, sealed)) return { seq, fault: 'names' };
    else this.named.add(seq);
    const forgotten = fact?.type === 'names-forgotten' && Array.isArray(fact.entries) ? fact.entries : [];
    for (const each of forgotten as Seq[]) {
      if (this.named.has(each)) return { seq: each, fault: 'names-back' };
      this.nameless.delete(each);
    }
    return undefined;
  }

  /**
   * After the last row. `head`: where the log ends by what is stored beside it. `index`: by which the store finds a message, all
   * of it; where it is wrong, a message that is sent again would count as new.
   */
  end(head: Head, index?: readonly { readonly seq: number; readonly ref: string }[]): ChainFault | undefined {
    const seq = this.at.count;
    const wrong = index?.find((row) => this.refs.get(row.ref) !== row.seq);
    if (wrong) return { seq: wrong.seq, fault: 'ref' };
    if (index && index.length !== this.refs.size) return { seq, fault: 'ref' };
    if (this.witnesses.some(({ count }) => count > seq)) return { seq, fault: seq === 0 ? 'missing' : 'cut' };
    if (seq !== head.count || this.at.hash !== head.hash) return { seq, fault: 'head' };
    const [missing] = this.nameless;
    return missing === undefined ? undefined : { seq: missing, fault: 'names-missing' };
  }
}

interface Body {
  job?: unknown;
  seq?: unknown;
  prev?: unknown;
  ref?: unknown;
  sealed?: unknown;
  fact?: { type?: unknown; entries?: unknown };
}

/** Undefined for text that no entry has: somebody who edits the file can also give the hash of it. */
function parsed(text: string): Body | undefined {
  try {
    const body: unknown = JSON.parse(text);
    return typeof body === 'object' && body !== null ? body : undefined;
  } catch {
    return undefined;
  }
}
