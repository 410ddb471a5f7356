import * as z from 'zod/mini';
import { Entry } from '../../src/model/entry.ts';

/**
 * Kept entries that this page can still trust: whole, in order, each linked to the one before. A log with a gap, or
 * one that this version cannot read, is as good as none: the server sends all of it again.
 */
export function trustworthy(kept: readonly unknown[]): Entry[] {
  const parsed = z.array(Entry).safeParse(kept);
  if (!parsed.success) return [];
  const entries = parsed.data;
  const linked = entries.every(({ seq, prev }, i) => seq === i && (i === 0 || prev === entries[i - 1]?.hash));
  return linked ? entries : [];
}
