import type { Entry } from '../model/entry.ts';
import type { Seq } from '../model/ids.ts';
import { peopleOf } from '../model/people.ts';
import type { MeterProfile } from '../model/profile.ts';
import { describe } from '../phrases/describe.ts';
import { byText, ENTRY_COLUMNS } from '../phrases/entry-rows.ts';
import { HEADINGS } from '../phrases/headings.ts';
import type { Moments } from './moments.ts';
import { type Block, cellText, type EntryRow, titleOf } from './report.ts';

/** A mention of an entry in a text, "#12". */
const MENTION = /#(\d+)/g;

/** A text cut at the entries that it names. */
export const atMentions = (text: string): readonly { readonly text: string; readonly seq?: Seq }[] => {
  const pieces: { text: string; seq?: Seq }[] = [];
  let from = 0;
  for (const found of text.matchAll(MENTION)) {
    if (found.index > from) pieces.push({ text: text.slice(from, found.index) });
    pieces.push({ text: found[0], seq: Number(found[1]) });
    from = found.index + found[0].length;
  }
  if (from < text.length) pieces.push({ text: text.slice(from) });
  return pieces;
};

/** The entries that these blocks name, in words, so that a page can be read without the log. */
export function namedEntries(
  blocks: readonly Block[],
  entries: readonly Entry[],
  meter: MeterProfile,
  moments: Moments,
): Block[] {
  const titles = new Map<Seq, Set<string>>();
  for (const block of blocks) {
    const title = titleOf(block) ?? HEADINGS.summary;
    for (const text of textsOf(block)) {
      for (const { seq } of atMentions(text)) {
        if (seq !== undefined) titles.set(seq, (titles.get(seq) ?? new Set()).add(title));
      }
    }
  }
  const people = peopleOf(entries);
  const rows = entries.flatMap(({ seq, at, actor, fact }): EntryRow[] => {
    const namedIn = titles.get(seq);
    const line = namedIn && describe({ actor, fact }, meter);
    if (!line) return [];
    const who = byText(actor, people[seq]);
    return [{ seq, time: moments.clock(at, true), who, text: line.text, namedIn: [...namedIn] }];
  });
  return rows.length === 0
    ? []
    : [
        {
          kind: 'entries',
          title: HEADINGS.entries,
          columns: [
            { name: ENTRY_COLUMNS.entry, share: 2 },
            { name: ENTRY_COLUMNS.time, share: 3 },
            { name: ENTRY_COLUMNS.by, share: 3 },
            { name: ENTRY_COLUMNS.text, share: 12 },
            { name: ENTRY_COLUMNS.namedIn, share: 5 },
          ],
          rows,
        },
      ];
}

function textsOf(block: Block): readonly string[] {
  switch (block.kind) {
    case 'figures':
      return block.items.map(({ note }) => note);
    // These say in words what the entry holds.
    case 'facts':
    case 'entries':
      return [];
    case 'table':
      return block.rows.flat().map(cellText);
    case 'list':
      return block.items.map(({ text }) => text);
    case 'signature':
      return block.lines;
    case 'photos':
      return [...block.photos.map(({ caption }) => caption), ...block.gone];
    case 'charts':
      return block.charts.map(({ caption }) => caption);
  }
}
