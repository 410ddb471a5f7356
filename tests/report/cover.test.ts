import { describe, expect, it } from 'vitest';
import { checked, emptyHead, seal } from '../../src/log/chain.ts';
import type { CheckedLog } from '../../src/log/fault.ts';
import { asForgotten } from '../../src/log/names.ts';
import type { Entry } from '../../src/model/entry.ts';
import { SiteReport } from '../../src/report/build.ts';
import { type Block, cellText, type Part } from '../../src/report/report.ts';
import { demo, demoReport, logOf, visitsOf } from './demo.ts';
import { wordsOf } from './words.ts';

/** The cover and the page of one pair, with the log of every visit changed by `change`. */
function reportOn(pair: string, change: (entry: Entry) => Entry): [cover: Part, page: Part] {
  const report = new SiteReport(logOf(demo.site), { zone: 'UTC', at: 0, only: [pair] });
  for (const planned of report.pairs) {
    const visits = visitsOf(pair).map(({ entries, head }) => checked({ entries: entries.map(change), head }));
    report.add(planned, visits);
  }
  return report.parts() as [Part, Part];
}

type Titled<K extends Block['kind']> = Extract<Block, { kind: K; title: string }>;
const blockOf = <K extends Block['kind']>({ blocks }: Part, kind: K, title: string): Titled<K> =>
  blocks.find((block) => block.kind === kind && 'title' in block && block.title === title) as Titled<K>;

const lost = checked({ entries: [], head: emptyHead('lost-job-1') });

const asItIs = (entry: Entry): Entry => entry;
const broken = (entry: Entry): Entry => (entry.seq === 9 ? { ...entry, at: entry.at + 1 } : entry);

describe('in a report', () => {
  /** Its status, its tests and its final reading. */
  const standsOf = (change: typeof broken) =>
    blockOf(reportOn('N2', change)[0], 'table', 'Pairs').rows[0]?.slice(2, 5);

  it('the status of a pair is what its log says', () => {
    expect(standsOf(asItIs)).toEqual(['Signed', 'Passed', expect.stringMatching(/\d/)]);
  });

  it('a pair needs attention, and has no tests and no final reading, when its log fails its check', () => {
    expect(standsOf(broken)).toEqual(['Needs attention', '', '']);
  });

  it.each<[string, (visits: CheckedLog[]) => CheckedLog[]]>([
    ['that the site names is gone', () => [lost]],
    [
      'was longer before, by what the server knows',
      (visits) => visits.map((log) => ({ ...log, fault: { seq: log.head.count, fault: 'cut' } })),
    ],
    ['of an earlier visit is gone', (visits) => [lost, ...visits]],
  ])('a pair needs attention when a log %s', (_, change) => {
    const report = new SiteReport(logOf(demo.site), { zone: 'UTC', at: 0, only: ['N2'] });
    for (const planned of report.pairs) report.add(planned, change(visitsOf('N2')));
    const [cover, page] = report.parts() as [Part, Part];
    expect(blockOf(cover, 'table', 'Pairs').rows[0]?.[2]).toEqual('Needs attention');
    expect(page.badge).toMatchObject({ text: expect.stringContaining('Needs attention'), heed: true });
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

describe('the cover of the demo site', () => {
  const [cover] = demoReport().parts();
  if (!cover) throw new Error('no cover');
  const pairs = blockOf(cover, 'table', 'Pairs').rows.map((row) => row.map(cellText));
  const pairOf = (id: string) => pairs.find(([first]) => first === id);

  it('lists every pair, with a way to it', () => {
    const { rows } = blockOf(cover, 'table', 'Pairs');
    expect(rows.map(([first]) => first)).toEqual(
      rows.map(([first]) => ({ text: cellText(first ?? ''), part: cellText(first ?? '') })),
    );
    expect(rows).toHaveLength(12);
  });

  it('says who signed, who was there and for which firm, and when the work was done', () => {
    const facts = new Map(blockOf(cover, 'facts', 'In short').rows.map(({ name, value }) => [name, value]));
    const signed = new Set(
      demo.visits
        .filter(({ entries }) => entries.some(({ fact }) => fact.type === 'signed'))
        .map(({ pair }) => pair),
    );
    // D2 was changed after it was signed, D1 was begun again.
    expect(facts.get('Signed by')).toBe(`S. Example, Supervisor: ${signed.size - 2} pairs`);
    expect(facts.get('Crew')).toMatch(
      /^A\. Example \(.+; Commissioning, card 1234\): 12 pairs; B\. Example \(.+\): 12 pairs/,
    );
    expect(facts.get('Work done')).toMatch(/^3 March 2026 to \d+ March 2026, UTC$/);
  });

  it('R111: takes names forgotten years later for no work; the signature says since when, and why, and shows no name', () => {
    const forgotten = (pair: string): CheckedLog[] =>
      visitsOf(pair).map(({ entries, head }) => {
        const signed = entries.filter(({ fact }) => fact.type === 'signed').map(({ seq }) => seq);
        const fact = { type: 'names-forgotten', entries: signed, why: 'Asked for in writing' } as const;
        const told = seal(head, { actor: 'server', fact }, Date.UTC(2031, 4, 3));
        return logOf(asForgotten([...entries, told]));
      });
    const report = new SiteReport(logOf(demo.site), { zone: 'UTC', at: 0, only: ['N2'] });
    for (const planned of report.pairs) report.add(planned, forgotten('N2'));
    const [cover, page] = report.parts() as [Part, Part];
    const facts = new Map(blockOf(cover, 'facts', 'In short').rows.map(({ name, value }) => [name, value]));
    expect(facts.get('Work done')).toBe('3 March 2026, UTC');
    expect(facts.get('Signed by')).toBe('(name forgotten), Supervisor: 1 pair');
    const { lines, signature } = blockOf(page, 'signature', 'Signature');
    expect(lines.join('\n')).toMatch(
      /\n\(name forgotten\), Supervisor, 3 March 2026, .*\nThe name, and the signature as it was given, were deleted on 3 May 2031, entry #\d+: Asked for in writing\n/,
    );
    expect(signature).toBeUndefined();
    expect(page.badge?.text).toMatch(/^Signed/);
    expect([cover, page].flatMap(wordsOf).join(' ')).not.toContain('S. Example');
  });

  it('says that a failed test passed later, and which was only answered for', () => {
    expect(pairOf('S3')?.[3]).toBe('Passed; failed first, passed later: alarm test');
    expect(pairOf('S4')?.[3]).toBe('FAILED, answered for');
    expect(pairOf('N1')?.[3]).toBe('Passed');
    expect(pairOf('D1')?.[3]).toBe('not all made');
  });

  it('names overrides and failures that were only answered for as variations', () => {
    const { items } = blockOf(cover, 'list', 'Variations');
    expect(items.map(({ lead, text }) => [lead, text.split(/[:.]/)[0]])).toEqual([
      ['S4', 'Alarm test failed'],
      ['D4', 'Accepted without all evidence'],
    ]);
  });

  it('and the part of a pair say when something serious shows only across the site', () => {
    const { items } = blockOf(cover, 'list', 'Seen across the site');
    const serious = items.filter(({ lead }) => lead === 'Serious');
    expect(serious.map(({ text }) => text.split(' ')[1])).toEqual(['D1']);
    const part = demoReport()
      .parts()
      .find(({ id }) => id === 'D1');
    const own = part && blockOf(part, 'list', 'Findings').items.filter(({ lead }) => lead === 'Serious');
    expect(part?.badge).toEqual({ text: `Needs attention; ${own?.length} serious`, heed: true });
  });

  it('has no command line for the client, on no part', () => {
    const words = demoReport().parts().flatMap(wordsOf).join(' ');
    expect(words).not.toMatch(/npm|npx|JSON| -- /);
  });
});
