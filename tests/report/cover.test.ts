import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/model/entry.ts';
import { SiteReport } from '../../src/report/build.ts';
import type { Block, Part } from '../../src/report/report.ts';
import { demo, logOf, visitsOf } from './demo.ts';

/** The cover and the page of one pair, with the log of every visit changed by `change`. */
function reportOn(pair: string, change: (entry: Entry) => Entry): [cover: Part, page: Part] {
  const report = new SiteReport(logOf(demo.site), { zone: 'UTC', at: 0, only: [pair] });
  for (const planned of report.pairs) {
    const visits = visitsOf(pair).map(({ entries, head }) => ({ entries: entries.map(change), head }));
    report.add(planned, visits);
  }
  return report.parts() as [Part, Part];
}

type Titled<K extends Block['kind']> = Extract<Block, { kind: K; title: string }>;
const blockOf = <K extends Block['kind']>({ blocks }: Part, kind: K, title: string): Titled<K> =>
  blocks.find((block) => block.kind === kind && 'title' in block && block.title === title) as Titled<K>;

const asItIs = (entry: Entry): Entry => entry;
const broken = (entry: Entry): Entry => (entry.seq === 9 ? { ...entry, at: entry.at + 1 } : entry);

describe('in a report', () => {
  /** Its status and its final reading. */
  const standsOf = (change: typeof broken) =>
    blockOf(reportOn('N2', change)[0], 'table', 'Pairs').rows[0]?.slice(2, 4);

  it('the status of a pair is what its log says', () => {
    expect(standsOf(asItIs)).toEqual(['Signed', expect.stringMatching(/\d/)]);
  });

  it('a pair needs attention, and has no final reading, when its log fails its check', () => {
    expect(standsOf(broken)).toEqual(['Needs attention', '']);
  });

  it('a broken log is not compared with any other', () => {
    const told = (change: typeof broken) => {
      const [cover, page] = reportOn('D1', change);
      const [found] = blockOf(cover, 'list', 'Seen across the site').items;
      return [found?.lead, blockOf(page, 'table', 'Earlier visits').rows[0]?.at(-1)];
    };
    expect(told(asItIs)).toEqual(['Serious', expect.stringContaining('accepted')]);
    expect(told(broken)).toEqual([undefined, 'not known']);
  });
});
