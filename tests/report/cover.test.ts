import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/log/entry.ts';
import { SiteReport } from '../../src/report/build.ts';
import { demo, logOf, visitsOf } from './demo.ts';

/** How the cover says that the one pair stands that is reported on, and its final reading. */
function cover(change: (entry: Entry) => Entry) {
  const report = new SiteReport(logOf(demo.site), { zone: 'UTC', at: 0, only: ['N2'] });
  for (const pair of report.pairs) {
    const visits = visitsOf(pair.plan.id).map(({ entries, head }) => ({
      entries: entries.map(change),
      head,
    }));
    report.add(pair, visits);
  }
  const [page] = report.pages();
  const table = page?.blocks.find((block) => block.kind === 'table');
  return table?.rows[0]?.slice(2, 4);
}

describe('on the cover of a report a pair', () => {
  it('stands as its log says', () => {
    expect(cover((entry) => entry)).toEqual(['Signed', expect.stringMatching(/\d/)]);
  });

  it('needs attention, with no final reading, where its log fails its check', () => {
    const changed = (entry: Entry) => (entry.seq === 9 ? { ...entry, at: entry.at + 1 } : entry);
    expect(cover(changed)).toEqual(['Needs attention', '']);
  });
});
