import { describe, expect, it } from 'vitest';
import { checked, headAfter } from '../../src/log/chain.ts';
import type { Entry, Log } from '../../src/model/entry.ts';
import { finalText } from '../../src/phrases/readings.ts';
import { STATUS_WORDS } from '../../src/phrases/statuses.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { summaryOf } from '../../src/record/visit-summary.ts';
import { momentsIn } from '../../src/report/moments.ts';
import { pairPage } from '../../src/report/pair-page.ts';
import type { Block } from '../../src/report/report.ts';
import { playedVisit } from '../findings/site.ts';

const WHOLE = playedVisit(['late-alarm', 'touched-since']);
const upTo = (count: number): Log => {
  const entries = WHOLE.slice(0, count);
  return { entries, head: headAfter(entries.at(-1) as Entry) };
};
const ofType = (type: Entry['fact']['type']): number => WHOLE.findIndex(({ fact }) => fact.type === type) + 1;

/** Moments at which someone may look at the visit, during it and after it. */
const MOMENTS: [string, number][] = [
  ['opened', 1],
  ['after its first reading', ofType('reading')],
  ['after a gain change', ofType('gain')],
  ['accepted', ofType('accept')],
  ['with the alarm test failed', ofType('issue-opened')],
  ['signed', ofType('signed')],
  ['touched since it was signed', WHOLE.length],
];

const figureOf = (blocks: readonly Block[], name: string): string | undefined =>
  blocks.flatMap((block) => (block.kind === 'figures' ? block.items : [])).find((item) => item.name === name)
    ?.value;

describe('board, report and record say the same about a visit', () => {
  it.each(MOMENTS)('%s', (_, count) => {
    const log = upTo(count);
    const record = new VisitRecord(log);
    const summary = summaryOf(record);
    const { part, ...made } = pairPage({ visits: [checked(log)] }, momentsIn('UTC'));
    const { final, state } = record;
    const meter = state.setup?.meter;
    if (!meter) throw new Error('the visit opened no job');

    const told = final && finalText(final, meter);
    expect(summary?.final).toBe(told);
    expect(made.final).toBe(told ?? '');
    // The page has another place for what the reading was taken as.
    expect(figureOf(part.blocks, 'Final reading')).toBe(told?.replace(', not accepted', '') ?? 'none');

    expect([summary?.status, made.status]).toEqual([record.status, record.status]);
    expect(part.badge.text.startsWith(STATUS_WORDS[record.status])).toBe(true);
    expect(summary?.findings).toEqual(record.findings);
    expect(Object.values(made.findings).reduce((a, b) => a + b)).toBe(record.findings.length);
  });

  it('a reading that was read but not accepted is called that everywhere, and never no reading', () => {
    const record = new VisitRecord(upTo(ofType('accept') - 1));
    expect(record.final?.as).toBe('last-read');
    expect(summaryOf(record)?.final).toMatch(/^\d+ counts, not accepted$/);
  });
});

describe('a record', () => {
  it('of a log that opens no job says nothing, and there is nothing to sign', () => {
    const record = new VisitRecord({ entries: [] });
    expect(record).toMatchObject({ visit: undefined, status: 'not-started', final: undefined, missing: [] });
    expect(record.findings).toEqual([]);
    expect(summaryOf(record)).toBeUndefined();
  });

  it('of a log with a broken chain needs attention, whatever the log says', () => {
    const fault = { seq: 7, fault: 'hash' } as const;
    const signed = upTo(ofType('signed'));
    expect(new VisitRecord(signed).status).toBe('signed');
    expect(new VisitRecord(signed, { fault }).status).toBe('needs-attention');
  });

  it('that was folded while its log grew is the same as that of the whole log', () => {
    const before = new VisitRecord(upTo(100));
    const rest = WHOLE.slice(100);
    const { state } = new VisitRecord({ entries: WHOLE });
    expect(before.state.count + rest.length).toBe(state.count);
    const grown = new VisitRecord({ entries: WHOLE }, { state });
    expect(grown.findings).toEqual(new VisitRecord({ entries: WHOLE }).findings);
  });
});
