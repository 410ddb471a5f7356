import * as z from 'zod/mini';

/** Why a request was not done. Every refusal carries one, with words for people. */
export const Refusal = z.enum([
  /** The frame is not a message of this protocol. */
  'bad-message',
  'version',
  'bad-token',
  /** Another phone has taken this seat over. */
  'seat-lost',
  /** The panel or the desk has taken the key of this phone away. */
  'revoked',
  /** The same phone opened a newer connection. */
  'replaced',
  /** `after` is beyond the log's end: the phone has entries that this server does not have. */
  'from-the-future',
  /** A watcher tried to write. */
  'read-only',
  'too-fast',
  'too-long',
  /** There is no such entry, or it cannot be corrected. */
  'bad-target',
  /** Somebody asked for acceptance, but evidence is missing. */
  'not-proven',
  /** Something is missing for signing, or the record has grown since it was read. */
  'not-signable',
  'speech-unavailable',
  'seat-in-use',
  /** Nobody can answer a phone that asks to come in, or another asks already. */
  'not-now',
  'bad-code',
  /** Who opens sites and jobs must first show the passphrase. */
  'locked',
  /** The server could not write its log; nothing was taken. */
  'store-failed',
  /** The job's log fails its check: it can be read, but nothing can be added. */
  'log-broken',
]);
export type Refusal = z.infer<typeof Refusal>;
