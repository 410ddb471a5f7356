import type { JobId } from '../../src/model/ids.ts';
import type { ReaderKind, ReadKind } from '../../src/model/read-kinds.ts';
import type { KeyId, KeyRole } from '../../src/protocol/keys.ts';

export const HOUR_MS = 60 * 60_000;
/** No store takes away what was read in the last thirty days, whoever asks for it. */
export const LEAST_KEPT_DAYS = 30;

/** That somebody read something within an hour; '' where there is nothing to say. */
export interface Read {
  /** When it began, ms. */
  readonly hour: number;
  /** Of a job or a site. */
  readonly log: JobId | '';
  readonly what: ReadKind;
  /** The key that it was read with. */
  readonly role: KeyRole | '';
  readonly key: KeyId | '';
  readonly reader: ReaderKind;
  /** Of the account. */
  readonly name: string;
}

export interface KeptRead extends Read {
  /** Grows with each one that is kept. */
  readonly number: number;
}

/** `note`: the same again changes nothing. `forget`: this name, as it is written there. `end`: those of hours before this time. */
export type ReadChange =
  | { readonly note: readonly Read[] }
  | { readonly forget: string }
  | { readonly end: number };

/** Who read what. It is no part of any log, and is neither sealed nor signed. */
export interface ReadBook {
  /** Never takes away what was read in the last `LEAST_KEPT_DAYS`. */
  changeReads(change: ReadChange): Promise<void>;
  /** At most `limit`, the oldest first, of numbers above `after`. */
  readsAfter(after: number, limit: number): Promise<KeptRead[]>;
  /** At most `limit`, the newest first, of numbers below `before`; `log`: only of this one. */
  readsBefore(before: number, limit: number, log?: JobId): Promise<KeptRead[]>;
  /** Every name that stands there, once. */
  readers(): Promise<string[]>;
}
