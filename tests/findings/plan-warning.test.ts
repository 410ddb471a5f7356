import { describe, expect, it } from 'vitest';
import { GUIDANCES } from '../../src/model/guidance.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { findingText } from '../../src/phrases/findings.ts';
import { setupWarnings } from '../../src/phrases/plan-warnings.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { LoggedJob } from '../../src/simulator/logged-job.ts';
import { SETUP } from '../findings/site.ts';

const [guidance] = GUIDANCES;
const setupWith = (plan: Partial<PairPlan>): JobSetup =>
  ({ ...SETUP, plan: { ...SETUP.plan, ...plan }, ...(guidance && { guidance }) }) as JobSetup;

/** A visit that was opened, with both in their seats. */
function opened(setup: JobSetup): LoggedJob {
  const job = new LoggedJob('visit-100', 1_000);
  job.input({ kind: 'open', setup });
  job.input({ kind: 'seated', seat: 'panel', device: 'Panel phone', takeover: false });
  job.input({ kind: 'seated', seat: 'emitter', device: 'Ladder phone', takeover: false });
  return job;
}
const warningsOf = (setup: JobSetup) =>
  new VisitRecord(opened(setup)).findings.filter(({ id }) => id === 'plan-warning');
const noticesOf = (setup: JobSetup) =>
  opened(setup).entries.flatMap(({ fact }) =>
    fact.type === 'notice' && fact.code === 'plan-warnings' ? [fact.text] : [],
  );

describe('a warning of the plan check', () => {
  it.each<[Partial<PairPlan>, severity: string, text: string]>([
    [
      { rangeMax: 61.9 },
      'serious',
      "Planned outside a limit: path length 62 m: outside the maker's range (at most 61.9 m: the maker).",
    ],
    [
      { spacing: 15.02 },
      'question',
      'Planned outside a limit: reach to each side 7.51 m: part of the area lies too far from a beam (at most 7.5 m: BS 5839-1, from memory).',
    ],
    [
      { ceilingHeight: 60 },
      'question',
      'Planned outside a limit: height of the ceiling 60 m: so high that smoke may not reach the beam; beams at more than one height may be needed (at most 25 m: BS 5839-1, from memory).',
    ],
    [
      { ceilingHeight: 16.4, emitterHeight: 9.4 },
      'question',
      'Planned outside a limit: emitter below the ceiling 7 m: too far below the ceiling (at most 0.6 m: BS 5839-1, from memory).',
    ],
    [
      { wallDistance: 0.4999 },
      'question',
      'Planned outside a limit: nearest wall 0.4999 m: too near to the wall (at least 0.5 m: BS 5839-1, from memory).',
    ],
    [
      { alarmDelay: 0 },
      'question',
      'Planned outside a limit: set delay of the alarm 0 s: is the alarm meant to come without a delay (at least 1 s: common practice, no source).',
    ],
  ])('of %j is a finding, %s', (plan, severity, text) => {
    const found = warningsOf(setupWith(plan));
    expect(found.map((each) => [each.severity, findingText(each)])).toEqual([[severity, text]]);
    expect(found[0]?.entries).toEqual([0]);
  });

  it('holds its figure and the limits that it has, and no other', () => {
    const [high] = warningsOf(setupWith({ rangeMax: 61.9 }));
    expect(high?.figures).toStrictEqual({ value: 62, most: 61.9 });
    expect(high?.about).toStrictEqual(['path-length', 'm', 'the maker']);
    const [short] = warningsOf(setupWith({ rangeMin: 62.1 }));
    expect(short?.figures).toStrictEqual({ value: 62, least: 62.1 });
  });

  it('just inside its limit is none', () => {
    expect(warningsOf(setupWith({ rangeMax: 62, spacing: 15, ceilingHeight: 25 }))).toEqual([]);
  });

  it('that the log keeps reads the same in feet, and one of a newer log is named', () => {
    const [found] = warningsOf(setupWith({ rangeMax: 61.9 }));
    expect(found && findingText(found, { length: 'ft' })).toContain('path length 203.4 ft: ');
    const newer = found && { ...found, about: ['humidity', 'percent'] };
    expect(newer && findingText(newer)).toBe('Planned outside a limit: humidity, percent.');
  });

  it('of a filter that is too strong is told before the climb, and as a finding only where it was used', () => {
    const setup = setupWith({ filters: [20, 60, 99] });
    expect(setupWarnings(setup)).toEqual([expect.stringContaining('strongest test filter 99 percent')]);
    expect(warningsOf(setup)).toEqual([]);
  });

  it('is told to both seats once both are there, and stands in the log', () => {
    const [text, ...more] = noticesOf(setupWith({ rangeMax: 61.9, alarmDelay: 0 }));
    expect(more).toEqual([]);
    expect(text).toMatch(/^2 warnings of the plan check\. path length 62 m: outside/);
    expect(text).toContain('set delay of the alarm 0 s');
    expect(noticesOf(setupWith({}))).toEqual([]);
  });
});
