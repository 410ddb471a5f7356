import { describe, expect, it } from 'vitest';
import type { Entry } from '../../src/model/entry.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { SiteReport } from '../../src/report/build.ts';
import type { Part } from '../../src/report/report.ts';
import { demo, logOf, visitsOf } from './demo.ts';
import { wordsOf } from './words.ts';

/** Cover and page of a signed pair whose plan is changed afterwards. */
function reportAfter(change?: Partial<PairPlan>): [cover: Part, page: Part] {
  const { id, fact } = signedVisit('N2');
  const last = demo.site.at(-1) as Entry;
  const later: Entry[] = change
    ? [
        {
          ...last,
          seq: last.seq + 1,
          prev: last.hash,
          fact: { type: 'pair-planned', pair: { ...fact, ...change } },
        },
      ]
    : [];
  const report = new SiteReport(logOf([...demo.site, ...later]), { zone: 'UTC', at: 0, only: [id] });
  for (const pair of report.pairs) report.add(pair, visitsOf(id));
  return report.parts() as [Part, Part];
}

function signedVisit(id: string): { id: string; fact: PairPlan } {
  const opened = visitsOf(id).at(-1)?.entries[0]?.fact;
  if (opened?.type !== 'opened' || !opened.setup.plan) throw new Error(`no plan in the visit to ${id}`);
  return { id, fact: opened.setup.plan as PairPlan };
}

const planned = ({ blocks }: Part): string[] =>
  blocks.flatMap((block) =>
    block.kind === 'facts'
      ? block.rows.filter(({ name }) => ['Place', 'Settings'].includes(name)).map(({ value }) => value)
      : [],
  );

const LATER: Partial<PairPlan> = {
  zone: '77',
  pathLength: 88,
  alarmThreshold: { unit: 'dB', value: 5.5 },
  alarmDelay: 31,
  faultDelay: 32,
};

describe('the page of a signed pair', () => {
  it('shows the plan that the visit was made with, whatever is planned later', () => {
    const [, page] = reportAfter();
    const [, after] = reportAfter(LATER);
    expect(planned(page)).toHaveLength(2);
    expect(planned(after)).toEqual(planned(page));
    expect(planned(after).join()).not.toMatch(/zone 77|88 m|5\.5 dB|31 s|32 s/);
  });

  it('still tests against the plan that the visit was made with', () => {
    const proving = (part: Part) => part.blocks.filter(({ kind }) => kind === 'table');
    expect(proving(reportAfter(LATER)[1])).toEqual(proving(reportAfter()[1]));
  });

  it('keeps the name that the pair was signed under', () => {
    expect(wordsOf(reportAfter({ name: 'Renamed' })[1])).toEqual(wordsOf(reportAfter()[1]));
  });
});

describe('the report on a pair whose plan was changed after it was signed', () => {
  const statusOf = ([cover]: [Part, Part]) =>
    cover.blocks.flatMap((block) =>
      block.kind === 'table' && block.title === 'Pairs' ? block.rows.map((row) => row[2]) : [],
    );

  it.each<[string, Partial<PairPlan>, string]>([
    ['threshold', { alarmThreshold: { unit: 'dB', value: 5.5 } }, '→ 5.5 dB'],
    ['delay', { alarmDelay: 31 }, '→ 31 s'],
    ['path', { pathLength: 88 }, '→ 88 m'],
    ['zone', { zone: '77' }, '→ 77'],
  ])('says that it must be proven anew: %s', (_, change, told) => {
    const [cover, page] = reportAfter(change);
    expect(statusOf([cover, page])).toEqual(['Needs attention']);
    expect(cover.badge.heed).toBe(true);
    expect(page.badge).toEqual({
      text: 'Needs attention; Plan changed: prove it anew; 1 serious',
      heed: true,
    });
    const [first] = page.blocks.flatMap((block) =>
      block.kind === 'list' && block.title === 'Findings' ? block.items : [],
    );
    expect(first?.lead).toBe('Serious');
    expect(first?.text).toContain(`${told}. It must be proven anew.`);
  });

  it('is as calm as before where only the name was changed', () => {
    expect(statusOf(reportAfter({ name: 'Renamed' }))).toEqual(['Signed']);
  });
});
