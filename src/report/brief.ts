import type { Seq } from '../model/ids.ts';
import { andMore, cutText } from '../phrases/counts.ts';

/** Longer text is cut, and says so. */
export const brief = (text: string, most: number, where: string): string =>
  text.length <= most ? text : cutText(text.slice(0, most - 1).trimEnd(), where);

const NAMED = 6;

/** "#12, #15"; only the first few of many. */
export function entryList(seqs: readonly Seq[]): string {
  const named = seqs.slice(0, NAMED).map((seq) => `#${seq}`);
  return seqs.length > NAMED ? andMore(named.join(', '), seqs.length - NAMED) : named.join(', ');
}
