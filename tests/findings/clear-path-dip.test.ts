import { describe, expect, it } from 'vitest';
import { clearPathDip } from '../../src/findings/clear-path-dip.ts';
import type { Fact } from '../../src/model/facts.ts';
import { NO_SIGNAL, valueReading } from '../../src/model/reading.ts';
import { readVisit, type Visit } from '../../src/visit/visit.ts';
import { DECIBELS } from '../conversation/table.ts';
import {
  atSecond,
  covered,
  jobAfter,
  panel,
  reads,
  SETUP,
  type Step,
  turned,
  uncovered,
} from '../visit/record.ts';

/** So fine that only the limit in decibels decides. */
const setup = { ...SETUP, meter: { ...DECIBELS, tolerance: 0.01 } };
const at = (db: number): Fact => reads(valueReading(db));
const accepted: Fact = { type: 'accept', reading: valueReading(-10) };

/** One fact every ten seconds; the first is entry 1. */
function dipIn(facts: readonly Fact[], of = setup) {
  const steps = facts.map((fact, i): Step => ['', (i + 1) * 10, fact]);
  const end = jobAfter(steps, of);
  // The look needs the end of the log only for its time.
  const last = { seq: facts.length, at: atSecond(9_999) };
  const visit = readVisit([last] as unknown as Visit['entries'], end);
  return visit ? clearPathDip(visit) : expect.fail('no visit');
}
const isDip = (...facts: Fact[]): boolean => dipIn(facts).length > 0;

describe('a dip of the clear path between acceptance and proving', () => {
  it.each<[string, Fact[], boolean]>([
    ['is none of half a decibel', [accepted, at(-10.5), at(-10)], false],
    ['is one of a thousandth more, though it came back', [accepted, at(-10.501), at(-10)], true],
    ['is one of no signal', [accepted, reads(NO_SIGNAL), at(-10)], true],
    ['is none before the acceptance', [at(-12), accepted, at(-10)], false],
    ['is none under a cover', [accepted, covered('partial'), at(-13), uncovered, at(-10)], false],
    ['is told as drift where it is how the visit ends', [accepted, at(-10), at(-12)], false],
    ['is told as drift where it never came back', [accepted, at(-12), at(-12)], false],
    ['is one where the alignment was then touched', [accepted, at(-12), turned], true],
    [
      'is told by the test that it failed',
      [
        ...[accepted, at(-10), covered('partial'), at(-13), panel('alarm'), uncovered, at(-12), at(-12)],
        ...[{ type: 'checked', instruction: 0 } as const, at(-10)],
      ],
      false,
    ],
    [
      'is one of its own beside a test that failed so',
      [
        ...[accepted, at(-12), at(-10), covered('partial'), at(-13), panel('alarm'), uncovered, at(-12)],
        ...[{ type: 'checked', instruction: 0 } as const, at(-10)],
      ],
      true,
    ],
  ])('%s', (_, facts, is) => {
    expect(isDip(...facts)).toBe(is);
  });

  it('tells the deepest, in decibels, and rests on every one', () => {
    const [found, ...more] = dipIn([accepted, at(-11), at(-10), at(-13), at(-10)]);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ severity: 'question', entries: [1, 2, 4] });
    expect(found?.figures).toEqual({ accepted: -10, later: -13, fall: 3 });
  });

  it('has no loss in figures where there was no signal at all', () => {
    const [found] = dipIn([accepted, at(-11), at(-10), reads(NO_SIGNAL), at(-10)]);
    expect(found?.figures).toEqual({ accepted: -10 });
  });

  it('is nothing for an alignment alone', () => {
    expect(dipIn([accepted, at(-12), at(-10)], { ...setup, scope: 'alignment' })).toEqual([]);
  });
});
