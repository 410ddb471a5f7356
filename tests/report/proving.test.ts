import { describe, expect, it } from 'vitest';
import { findingText } from '../../src/phrases/findings.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { provingBlock } from '../../src/report/proving.ts';
import { cellText } from '../../src/report/report.ts';
import type { Plant } from '../../src/simulator/plants.ts';
import { progressOf } from '../../src/visit/progress.ts';
import { playedVisit } from '../findings/site.ts';

/** The results of all tries of the alarm test, in order. */
function alarmTests(plant: Plant): string[] {
  const visit = new VisitRecord({ entries: playedVisit([plant]) }).visit;
  if (!visit) throw new Error('the visit opened no job');
  const block = provingBlock(visit.commission, progressOf(visit.commission, visit.until));
  return block.rows
    .map((row) => row.map(cellText))
    .filter(([test]) => test?.startsWith('Alarm test'))
    .map(([, result = '']) => result);
}

/** What the findings say of tests that failed. */
const findingTexts = (plant: Plant): string[] =>
  new VisitRecord({ entries: playedVisit([plant]) }).findings
    .filter(({ id }) => id === 'test-failed')
    .map((finding) => findingText(finding));

const LATE = 'FAILED: the panel showed it too late';

describe('the finding that a test failed', () => {
  it('says where it passed later, and rests on that entry too', () => {
    expect(findingTexts('late-alarm')).toEqual([
      expect.stringMatching(/too late\. It passed later, #\d+\.$/),
    ]);
    const [found] = new VisitRecord({ entries: playedVisit(['late-alarm']) }).findings;
    expect(found?.entries).toEqual([expect.any(Number), found?.figures.passed]);
  });

  it('says no such thing where somebody only answered for it, or left', () => {
    for (const plant of ['excused', 'walked-off', 'too-sensitive-excused'] as const) {
      expect(findingTexts(plant)).toEqual([expect.not.stringContaining('passed later')]);
    }
  });
});

describe('in the table of tests a failed one', () => {
  it('that was made again says so, and is followed by the test that passed', () => {
    expect(alarmTests('late-alarm')).toEqual([
      expect.stringMatching(`^${LATE}; passed later, #\\d+$`),
      'Passed',
    ]);
  });

  it('that someone answered for says so', () => {
    expect(alarmTests('excused')).toEqual([`${LATE}; answered for`]);
  });

  it('that was never answered says nothing more', () => {
    expect(alarmTests('walked-off')).toEqual([LATE]);
  });
});
