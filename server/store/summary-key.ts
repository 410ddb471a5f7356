import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto';
import { join } from 'node:path';
import type { JobId } from '../../src/model/ids.ts';
import { readKeyFile, writeKeyFile } from './key-file.ts';
import type { KeptSummary } from './store.ts';

export const SUMMARY_KEY_FILE = 'summaries.key';

const KEY_BYTES = 32;

export type SummaryKey = Buffer;

export const newSummaryKey = (): SummaryKey => randomBytes(KEY_BYTES);

/**
 * The key of a data folder. A folder that has none yet, or an unreadable one, gets a new one: what was sealed with
 * another is then worked out again from the logs, so nothing is lost.
 */
export function summaryKeyOf(folder: string): { key: SummaryKey; isNew: boolean } {
  const file = join(folder, SUMMARY_KEY_FILE);
  const kept = Buffer.from(readKeyFile(file) ?? '', 'hex');
  if (kept.length === KEY_BYTES) return { key: kept, isNew: false };
  const key = newSummaryKey();
  writeKeyFile(file, `${key.toString('hex')}\n`);
  return { key, isNew: true };
}

/** HMAC-SHA-256 (RFC 2104) over what a summary says and which head it was made from. Hexadecimal. */
export function sealOf(key: SummaryKey, job: JobId, { count, hash, body }: KeptSummary): string {
  return createHmac('sha256', key)
    .update(JSON.stringify([job, count, hash, body]))
    .digest('hex');
}

export function isSealed(key: SummaryKey, job: JobId, kept: KeptSummary, seal: string): boolean {
  const [right, given] = [Buffer.from(sealOf(key, job, kept)), Buffer.from(seal)];
  return right.length === given.length && timingSafeEqual(right, given);
}

/** For who runs the server, when a seal is not of this key. */
export const UNSEALED =
  'a kept summary is not of this server: its key file was changed or lost, or somebody edited the database. Such summaries are not believed; they are made again from the logs.';
