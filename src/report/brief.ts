import type { Seq } from '../model/ids.ts';
import { andMore, cutText, moreText } from '../phrases/counts.ts';
import { LEADS } from '../phrases/pair-page.ts';
import type { Item } from './report.ts';

/** A page holds one pair, so longer text is cut, and says so. */
export const brief = (text: string, most: number, where: string): string =>
  text.length <= most ? text : cutText(text.slice(0, most - 1).trimEnd(), where);

/** The first `most` of a list; for the others, how many and where they are. */
export function first<T>(all: readonly T[], most: number, rest: (left: readonly T[]) => T): readonly T[] {
  return all.length <= most ? all : [...all.slice(0, most - 1), rest(all.slice(most - 1))];
}

export const moreInLog = (left: readonly unknown[]): Item => ({
  lead: LEADS.more,
  text: moreText(left.length),
});

const NAMED = 6;

/** "#12, #15"; only the first few of many. */
export function entryList(seqs: readonly Seq[]): string {
  const named = seqs.slice(0, NAMED).map((seq) => `#${seq}`);
  return seqs.length > NAMED ? andMore(named.join(', '), seqs.length - NAMED) : named.join(', ');
}
