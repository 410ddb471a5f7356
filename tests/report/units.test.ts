import { describe, expect, it } from 'vitest';
import type { CheckedLog } from '../../src/log/fault.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Units } from '../../src/model/units.ts';
import { jobReport, SiteReport } from '../../src/report/build.ts';
import { demo, logOf } from './demo.ts';
import { wordsOf } from './words.ts';

const visits = new Map(demo.visits.map(({ entries }) => [(entries[0] as Entry).job, logOf(entries)]));

/** All words of the site's report, with the units chosen at the end of its log. */
function wordsIn(units?: Units): string[] {
  const last = demo.site.at(-1) as Entry;
  const chosen: Entry[] = units
    ? [{ ...last, seq: last.seq + 1, prev: last.hash, fact: { type: 'units-chosen', units } }]
    : [];
  const report = new SiteReport(logOf([...demo.site, ...chosen]), { zone: 'UTC', at: 0 });
  for (const pair of report.pairs) {
    report.add(
      pair,
      pair.visits.flatMap(({ job }) => visits.get(job) ?? []),
    );
  }
  return report.parts().flatMap(wordsOf);
}

const METRE = /\b\d+(\.\d+)? (m|cm)\b/;
const FOOT = /\b\d+(\.\d+)? ft\b/;
const PER_FOOT = /\b\d+(\.\d+)? %\/ft\b/;

describe('the report of a site that reads feet', () => {
  const plans = (words: string[]) => words.filter((text) => /^(zone|path|emitter at|alarm at) /.test(text));

  it('has every planned length in feet and every threshold for each foot', () => {
    const feet = plans(wordsIn({ length: 'ft', loss: 'percent/ft' }));
    expect(feet.filter((text) => FOOT.test(text)).length).toBeGreaterThan(3);
    expect(feet.filter((text) => METRE.test(text))).toEqual([]);
    expect(feet.filter((text) => /alarm at .* lost/.test(text) && !PER_FOOT.test(text))).toEqual([]);
  });

  it('and in metres without that choice', () => {
    const metres = plans(wordsIn());
    expect(metres.filter((text) => METRE.test(text)).length).toBeGreaterThan(3);
    expect(metres.filter((text) => FOOT.test(text))).toEqual([]);
  });

  it('tells what a cover held back for each foot, too', () => {
    const lost = (words: string[], unit: RegExp) =>
      words.filter((text) => unit.test(text) && / of /.test(text));
    const DB = /^\d+\.\d dB of \d+\.\d dB$/;
    expect(lost(wordsIn(), DB).length).toBeGreaterThan(0);
    const feet = wordsIn({ length: 'ft', loss: 'percent/ft' });
    expect(lost(feet, DB)).toEqual([]);
    expect(lost(feet, /^\d\.\d{3} %\/ft of \d\.\d{3} %\/ft$/).length).toBe(lost(wordsIn(), DB).length);
  });

  it('a job reads in its own units', () => {
    const [log] = visits.values();
    const [first, ...rest] = (log as CheckedLog).entries;
    if (first?.fact.type !== 'opened') throw new Error('no job');
    const setup = { ...first.fact.setup, units: { length: 'ft' } as const };
    const changed = logOf([{ ...first, fact: { ...first.fact, setup } }, ...rest]);
    const words = jobReport(changed, 'UTC').flatMap(wordsOf);
    expect(plans(words).some((text) => FOOT.test(text))).toBe(true);
    expect(plans(words).filter((text) => METRE.test(text))).toEqual([]);
  });
});
