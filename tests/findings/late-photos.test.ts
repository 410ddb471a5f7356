import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/model/facts.ts';
import { LONG_GAP_MS } from '../../src/model/finding.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { LoggedJob } from '../../src/simulator/logged-job.ts';
import { photoOf } from '../../src/simulator/photos.ts';
import { playedVisit } from './site.ts';

const reading: Fact = { type: 'reading', reading: { kind: 'value', value: 139 } };

/** Whether a gap is found where these follow on a visit that is not signed yet, each so many milliseconds later. */
function gapAfter(steps: readonly (readonly [number, Fact])[]): boolean {
  const visit = playedVisit();
  const end = visit.findIndex(({ fact }) => fact.type === 'signed');
  const job = new LoggedJob('visit-1000', 0);
  for (const { actor, fact, at } of visit.slice(0, end)) {
    job.now = at;
    job.write({ actor, fact });
  }
  job.now =
    visit.findLast(({ seq, actor }) => seq < end && (actor === 'panel' || actor === 'emitter'))?.at ?? 0;
  for (const [ms, fact] of steps) {
    job.now += ms;
    job.write({ actor: 'panel', fact });
  }
  return new VisitRecord(job).findings.some(({ id }) => id === 'long-gap');
}

describe('a long time without work', () => {
  it.each<[string, [number, Fact][], boolean]>([
    ['at the limit, to a reading', [[LONG_GAP_MS, reading]], false],
    ['just beyond it', [[LONG_GAP_MS + 1, reading]], true],
    ['to a photo that came late', [[10 * LONG_GAP_MS, photoOf('Label')]], false],
    [
      'with a photo in the middle',
      [
        [LONG_GAP_MS, photoOf('Label')],
        [1, reading],
      ],
      true,
    ],
  ])('%s', (_, steps, found) => {
    expect(gapAfter(steps)).toBe(found);
  });
});
