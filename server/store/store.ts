import type { Enclosure } from '../../src/log/enclosure.ts';
import type { ChainFault } from '../../src/log/fault.ts';
import type { Names } from '../../src/log/names.ts';
import type { SignedHead, TimeStamp, TreeHead } from '../../src/log/signed-head.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Seat } from '../../src/model/facts.ts';
import type { Hash, Head, JobId, MessageId, Seq } from '../../src/model/ids.ts';
import type { Role } from '../../src/protocol/access.ts';
import type { SiteRole } from '../../src/protocol/site.ts';
import type { ReadBook } from './reads.ts';

/** SHA-256 of a token or join code, hexadecimal: what is kept in place of the secret itself. */
export type Digest = string;

/** Who may come in with a token, to a job or a site. */
export interface Pass {
  job: JobId;
  role: Role | SiteRole;
  /** `seat-lost`: another phone has the seat; `revoked`: somebody has taken this key away. */
  revoked: false | 'seat-lost' | 'revoked';
}

/** A token that is good, by its digest. */
export interface HeldPass {
  token: Digest;
  role: Role | SiteRole;
}

/** A token that was ever given out, by its digest. */
export interface GivenPass extends HeldPass, Pick<Pass, 'revoked'> {}

/** What a join code opens. */
export interface CodeGrant {
  job: JobId;
  seat: Seat;
}

/** A change of passes and codes that belongs to the entries it is appended with. */
export interface KeyChange {
  /** Use this code up; when it is gone or past its time at `now`, nothing at all is stored. */
  spend?: { code: Digest; now: number };
  /** No pass that this role had before is good any more. */
  revoke?: Role;
  /** This pass is not good any more. */
  withdraw?: Digest;
  issue?: { token: Digest; role: Role | SiteRole }[];
  /** No join code of this seat is good any more. */
  voids?: Seat;
  /** The seat's join code from now on; an earlier one for the same seat is void. */
  code?: { code: Digest; seat: Seat; expiresAt: number };
}

/** What is stored beside the chain, or taken away for good, with the entries it is appended with. */
export interface Enclosing {
  /** For the entry `seq`, which is one of these. */
  put?: Enclosure & { seq: Seq };
  /** Of the entry of this number. */
  remove?: Seq;
  /** The names beside these entries, and the summary that was made with them. */
  forget?: readonly Seq[];
}

/** What names people beside one entry. */
export interface NamedEntry {
  job: JobId;
  seq: Seq;
  names: Names;
}

/** What was worked out from a log of `count` entries that ended with the one of `hash`; `body` is its maker's. */
export interface KeptSummary {
  count: number;
  hash: Hash;
  body: string;
}

/** A signed head, and of which log. */
export interface LoggedHead extends SignedHead {
  job: JobId;
}

/** A head of the tree over all signed heads, and what an authority gave for it. */
export interface KeptStamp extends TreeHead, Pick<TimeStamp, 'nonce' | 'token'> {}

export type Appended =
  | { kind: 'stored' }
  /** An entry with the same message id is there already, at `seq`. */
  | { kind: 'duplicate'; seq: Seq }
  /** The entries do not follow on the log's head; nothing was stored. */
  | { kind: 'conflict'; head: Head }
  /** The code of `keys.spend` is no longer good; nothing was stored. */
  | { kind: 'spent' };

/**
 * Where the logs lie. An implementation must pass `tests/store/contract.ts`.
 *
 * Every method rejects with `StoreFailure` when the medium fails; a rejected `append` may or may not have
 * been stored, so ask `head` before going on.
 */
export interface Store extends ReadBook {
  /** For people: "sqlite", "memory". */
  readonly name: string;
  /**
   * Stores sealed entries of one job, all or none, and is durable when it resolves. They must follow on the
   * job's head. `keys` and `enclosing` are applied in the same transaction. `entries` may be empty when there are others.
   * What is removed is gone from the medium when it resolves, as far as the medium can say.
   */
  append(job: JobId, entries: readonly Entry[], keys?: KeyChange, enclosing?: Enclosing): Promise<Appended>;
  /** Entries with `seq > after`, in order, at most `limit`. An unknown job has none. */
  read(job: JobId, after: number, limit: number): Promise<Entry[]>;
  /** What lies beside an entry. Undefined where nothing was put, or it was removed. */
  enclosure(job: JobId, seq: Seq): Promise<Enclosure | undefined>;
  /** Every entry that something lies beside, in whatever log. */
  enclosed(): Promise<{ job: JobId; seq: Seq }[]>;
  /** The names beside every entry of every log, in the order of logs and entries. */
  named(): Promise<NamedEntry[]>;
  /** Where the job's log ends; an unknown job ends before it has begun (`emptyHead`). */
  head(job: JobId): Promise<Head>;
  /** The entry a message became, if it did. */
  seqOf(job: JobId, ref: MessageId): Promise<Seq | undefined>;
  /**
   * The first fault in the stored bytes of a job's log: order, links, each hash, the head, every head of it that was
   * signed, and the head that its kept summary was made from. Other work is done in between. A log that nobody ever wrote has none.
   */
  audit(job: JobId): Promise<ChainFault | undefined>;
  /** Heads of all jobs, oldest job first. */
  jobs(): Promise<Head[]>;
  /** Every log that anything in the store speaks of: its entries, head, passes, enclosures, signed heads or summary. */
  logs(): Promise<JobId[]>;
  pass(token: Digest): Promise<Pass | undefined>;
  /** Every pass to a job or site that is good. */
  passes(job: JobId): Promise<HeldPass[]>;
  /** The same with those that are good no more. */
  everyPass(job: JobId): Promise<GivenPass[]>;
  /** What a code would open at `now`; undefined when there is none or its time is over. Does not use it up. */
  grant(code: Digest, now: number): Promise<CodeGrant | undefined>;
  /**
   * What this server kept last, of whatever end of the log; never what another hand put there. It is no part of the
   * log: where it is lost it is made again.
   */
  summary(job: JobId): Promise<KeptSummary | undefined>;
  keepSummary(job: JobId, summary: KeptSummary): Promise<void>;
  /** Keeps signed heads behind those before, all or none. They are never changed or taken away. */
  addSignedHeads(heads: readonly LoggedHead[]): Promise<void>;
  /** Signed heads of all logs in the order they were kept, at most `limit`, the first `after` left out. */
  signedHeads(after: number, limit: number): Promise<LoggedHead[]>;
  /** Those of one log, oldest first. `number`: its place among all, from 0. */
  signedHeadsOf(job: JobId): Promise<(SignedHead & { number: number })[]>;
  /** Keeps a time stamp, of a larger tree than any before. It is never changed or taken away. */
  addStamp(stamp: KeptStamp): Promise<void>;
  /** The first one whose tree holds the signed head of this number. */
  stampOver(number: number): Promise<KeptStamp | undefined>;
  lastStamp(): Promise<KeptStamp | undefined>;
  /** Resolves when the store can be written to. */
  health(): Promise<void>;
  /** A second time does nothing. */
  close(): Promise<void>;
}

/** The medium failed or cannot be used. The message is for the person who runs the server. */
export class StoreFailure extends Error {
  override name = 'StoreFailure';
}
