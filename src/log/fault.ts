import type { Log } from '../model/entry.ts';
import type { Seq } from '../model/ids.ts';
import type { Fingerprint } from './signed-head.ts';
import type { StampFault } from './time-stamp.ts';

/** The first entry that does not follow from the one before it, or the head that does not close the chain. */
export type ChainFault = {
  seq: number;
  fault:
    | 'order'
    | 'job'
    | 'prev'
    | 'hash'
    | 'head'
    /** Another message's id is kept beside the entry. */
    | 'ref'
    /** The names beside the entry, or their salt, are others than it was sealed with. */
    | 'names'
    /** No names lie beside the entry, and no entry says that they were forgotten. */
    | 'names-missing'
    /** Names lie beside the entry that a later one says were forgotten. */
    | 'names-back'
    /** The log was longer once: a head that was kept elsewhere says so. */
    | 'cut'
    /** Up to here the log is another one than it was. */
    | 'rewritten'
    /** Something names this log, and nothing of it is there. */
    | 'missing';
};

/**
 * A log that was checked, with the first fault that was found: where it is stored, or in its entries, which alone may not
 * show it. Undefined: it is whole.
 */
export type CheckedLog = Log & {
  readonly fault: ChainFault | undefined;
  /** With which the server that keeps this log signs its heads, as far as the reader was told. */
  readonly key?: Fingerprint;
};

/** The first wrong line of an exported file. */
export type FileFault = {
  /** Counted from 1. */
  line: number;
  /** Which, with dots between. */
  field?: string;
  fault:
    | 'not-json'
    /** Neither an entry of this format nor its closing line. */
    | 'not-an-entry'
    /** The entry is not written as the canonical text that its hash is taken over. */
    | 'not-canonical'
    /** A field that this format does not have. */
    | 'unknown-field'
    /** The file ends without its closing line: its tail was cut. */
    | 'no-head'
    /** Something comes after the closing line. */
    | 'after-head';
};

/** The first thing that is wrong with an exported log. */
export type Wrong =
  /** Nothing is wrong with it, but it is a log of practice: no record of a real pair. */
  | { readonly kind: 'practice' }
  | ({ readonly kind: 'file' } & FileFault)
  | ({ readonly kind: 'chain' } & ChainFault)
  /** A signature that does not cover the record before it. */
  | { readonly kind: 'signature'; readonly seq: Seq }
  /** A typed signature that is not the name of its signer. */
  | { readonly kind: 'signer'; readonly seq: Seq }
  /** A reading that the words it came from do not say. `from`: their entry; missing where it came from no words. */
  | { readonly kind: 'words'; readonly seq: Seq; readonly from?: Seq | undefined }
  /** A head that a server signed, or that was kept elsewhere, is not one of this log: entries were cut or changed. */
  | { readonly kind: 'signed-head'; readonly seq: Seq }
  /** A signed head whose signature is not right. */
  | { readonly kind: 'bad-signature'; readonly seq: Seq }
  /** A time stamp over the head at `seq`. `tree`: it is not of a signed tree that holds this head. */
  | { readonly kind: 'stamp'; readonly seq: Seq; readonly fault: StampFault | 'tree' }
  /** The engine of this version gives other advice. */
  | { readonly kind: 'advice'; readonly seq: Seq }
  /** The signed findings are not the findings of the record. */
  | { readonly kind: 'findings'; readonly seq: Seq };

/** What is wrong with a picture beside a log, or with a file in an archive of one. */
export type PhotoFault =
  /** `seq`: of the entry that names it. `came-back`: the log says that it was removed. */
  | { readonly kind: 'missing' | 'changed' | 'came-back'; readonly seq: Seq }
  /** Of no photo in the log, or there twice. */
  | { readonly kind: 'strange'; readonly name: string };

/** What is wrong with a sound in an archive of a log. */
export type SoundFault =
  | { readonly kind: 'changed'; readonly seq: Seq }
  /** No entry names it. */
  | { readonly kind: 'strange'; readonly name: string };
