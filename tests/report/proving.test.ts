import { describe, expect, it } from 'vitest';
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

const LATE = 'FAILED: the panel showed it too late';

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
