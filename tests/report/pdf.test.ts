import { describe, expect, it } from 'vitest';
import { checked } from '../../src/log/chain.ts';
import { findingText } from '../../src/phrases/findings.ts';
import { readingText } from '../../src/phrases/readings.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { jobReport } from '../../src/report/build.ts';
import type { Part } from '../../src/report/report.ts';
import { accepted } from '../record/fixture.ts';
import { demo, demoReport, headOf, visitsOf } from './demo.ts';
import { paperOf } from './paper.ts';
import { bare, partTexts, pdfText } from './pdf-text.ts';
import { wordsOf } from './words.ts';

/** The text of each part. */
const printed = async (parts: readonly Part[]): Promise<string[]> => partTexts(await paperOf(parts));

// Read back by pdf.js (pdfjs-dist), which shares no code with what wrote it.
describe('the PDF of a site', async () => {
  const report = demoReport();
  const { pairs } = report;
  const model = report.parts();
  const file = await paperOf(model);
  const pages = await partTexts(file);
  const pageOf = (pair: string): string => pages[1 + pairs.findIndex(({ plan }) => plan.id === pair)] ?? '';

  it('has a cover and a part for each pair, on numbered pages', async () => {
    expect(pages).toHaveLength(pairs.length + 1);
    const sheets = await pdfText(file);
    expect(sheets.map((text, index) => text.includes(`Page${index + 1}of${sheets.length}`))).not.toContain(
      false,
    );
  });

  it('has the head hash and number of entries of the site on the cover, and of the visit on each page', () => {
    const site = headOf(demo.site);
    expect(pages[0]).toContain(bare(`Log ${site.job}, ${site.count} entries, head hash ${site.hash}`));
    for (const { plan } of pairs) {
      const head = visitsOf(plan.id).at(-1)?.head;
      expect(pageOf(plan.id)).toContain(
        bare(`Log ${head?.job}, ${head?.count} entries, head hash ${head?.hash}`),
      );
    }
  });

  it('says for each pair what its log says: reading, gain, findings, tests, signature', () => {
    for (const { plan } of pairs) {
      const text = pageOf(plan.id);
      const entries = visitsOf(plan.id).at(-1)?.entries ?? [];
      const facts = entries.map(({ fact }) => fact);
      const end = new VisitRecord({ entries }).visit?.end;
      const meter = end?.setup?.meter;
      if (end?.accepted && meter) {
        const how = end.accepted.override ? 'Accepted by override' : 'Accepted';
        expect(text).toContain(bare(`${how} ${readingText(end.accepted.reading, meter)} ${meter.unit}`));
      } else expect(text).toContain('notaccepted');
      expect(text).toContain(bare(`Gain changes ${facts.filter(({ type }) => type === 'gain').length}`));
      for (const finding of new VisitRecord({ entries }).findings)
        expect(text).toContain(bare(findingText(finding)));
      const signed = facts.findLast((fact) => fact.type === 'signed');
      if (signed?.type === 'signed') expect(text).toContain(bare(`${signed.name}, ${signed.role}`));
      else expect(text).toContain(bare('Not signed.'));
    }
  });

  it('says for each test how long the panel took, from the entry "covered" to the entry with what it showed', () => {
    const entries = visitsOf('N1').at(-1)?.entries ?? [];
    const at = (type: string, value: string) =>
      entries.findLast(({ fact }) => fact.type === type && JSON.stringify(fact).includes(`"${value}"`))?.at ??
      0;
    const alarm = (at('panel', 'alarm') - at('path', 'partial')) / 1000;
    expect(alarm).toBeGreaterThan(0);
    expect(pageOf('N1')).toContain(
      bare(`Alarm test, half covered Passed: ${alarm.toFixed(1)} s 10.0 s ± 5.0 s`.replace(':', '')),
    );
  });

  it('names the planted faults, an earlier visit, and what only a look at the whole site shows', () => {
    expect(pageOf('D2')).toContain(bare('CHANGED SINCE SIGNING'));
    expect(pageOf('D3')).toContain(bare('NOT ANSWERED'));
    expect(pageOf('D4')).toContain(bare('Accepted by override'));
    expect(pageOf('S3')).toContain('FAILED');
    // In the table, and at its moment in the chart.
    expect(pageOf('S3')).toContain(bare('too late; passed later, #'));
    expect(pageOf('S3')).toContain(bare('alarm test failed; passed later'));
    expect(pageOf('D1')).toContain(bare('Earlier visits'));
    // The definition of the decibel, for a meter that shows power.
    const [, weaker, here, there] = /(PairN4is[\d.]+dBweaker)\D+(\d+)against(\d+)/.exec(pages[0] ?? '') ?? [];
    expect(weaker).toBe(
      bare(`Pair N4 is ${(10 * Math.log10(Number(there) / Number(here))).toFixed(1)} dB weaker`),
    );
    expect(pageOf('N4')).toContain(weaker);
  });

  it('shows every word of the model, so that no two forms of the report can differ', () => {
    for (const [index, page] of model.entries()) {
      for (const words of wordsOf(page)) expect(pages[index]).toContain(bare(words));
    }
  });
});

describe('the PDF of a single job', () => {
  it('is one part, with what the log says', async () => {
    const { entries, head } = accepted('printed-1');
    const [text, ...more] = await printed(jobReport(checked({ entries, head }), 'Europe/Paris'));
    expect(more).toEqual([]);
    expect(text).toContain(head.hash);
    expect(text).toContain('142counts');
    expect(text).toContain(bare('from 09:30 UTC+01:00'));
    expect(text).toContain(
      bare('=first phone went flat; "spare" in use, bracket feels loose – note für later'),
    );
  });

  it('has the key of the server that keeps the log, whole, and says what to compare it with', async () => {
    const log = checked(accepted('printed-4'));
    const key = '39b70da1d5a19a0a6d3ba3e0fe6ac9e0a1b2c3d4e5f60718293a4b5c6d7e8f90';
    const [text] = await printed(jobReport({ ...log, key }, 'UTC'));
    expect(text).toContain(bare(`Key of the server ${key}`));
    expect(text).toContain(bare('the one that the firm noted down'));
    const [without] = await printed(jobReport(log, 'UTC'));
    expect(without).not.toContain(bare('Key of the server'));
  });

  it('names the first broken entry of a changed log', async () => {
    const { entries, head } = accepted('printed-2');
    const changed = entries.map((entry) => (entry.seq === 9 ? { ...entry, at: entry.at + 1 } : entry));
    const [text] = await printed(jobReport(checked({ entries: changed, head }), 'UTC'));
    expect(text).toContain(bare('Log broken'));
    expect(text).toContain(bare('BROKEN. Entry 9 was changed'));
  });

  it('goes on to further pages, however much a crew says', async () => {
    const script = accepted('printed-3');
    for (let n = 0; n < 40; n++) {
      script.add('panel', {
        type: 'remark',
        seat: 'panel',
        text: `${n} ${'long remark '.repeat(160)}end${n}`,
      });
      script.add('engine', { type: 'issue-opened', about: 3, text: `${n} ${'issue '.repeat(80)}end${n}` });
    }
    const file = await paperOf(jobReport(checked(script), 'UTC'));
    const sheets = await pdfText(file);
    const [text = '', ...more] = await partTexts(file);
    expect(more).toEqual([]);
    for (let n = 0; n < 40; n++) expect(text.split(`end${n}(`)).toHaveLength(3);
    expect(sheets.filter((sheet) => sheet.includes(script.head.hash))).toHaveLength(sheets.length);
  });
});
