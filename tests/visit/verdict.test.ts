import { describe, expect, it } from 'vitest';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { NO_SIGNAL, type Reading, SATURATED, valueReading } from '../../src/model/reading.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { lossOf } from '../../src/plan/covers.ts';
import type { Proof as AnyProof, Attempt } from '../../src/visit/attempts.ts';
import { coverFor, judge } from '../../src/visit/verdict.ts';
import { COUNTS, DECIBELS } from '../conversation/table.ts';

type Proof = Exclude<AnyProof, 'quiet'>;
type Plan = Partial<NonNullable<JobSetup['plan']>>;

/** A pair whose alarm is due after 10 s and whose fault after 20 s, unless the plan says otherwise. */
const pair = (plan: Plan | undefined = {}, meter = COUNTS): JobSetup => ({
  site: 'Quayside Hall 3',
  pair: 'B2',
  meter,
  adjusters: NEUTRAL_ADJUSTERS,
  plan: { id: 'B2', name: 'North aisle', alarmDelay: 10, faultDelay: 20, ...plan },
});
const unplanned = ({ plan: _, ...setup }: JobSetup): JobSetup => setup;

const COVERED_AT = 1_800_000_000_000;
const MS = 0.001;

/** One go at a test, in seconds since the cover went on. */
interface Go {
  readonly shown?: number;
  readonly shows?: 'alarm' | 'fault';
  readonly cleared?: number;
  readonly restored?: number;
  readonly reading?: Reading;
  readonly clear?: Reading;
}

const goAt = (proof: Proof, go: Go): Attempt => {
  const at = (seconds: number, seq: number) => ({ seq, at: COVERED_AT + Math.round(seconds * 1000) });
  const { shown, shows = proof, cleared, restored, reading, clear = valueReading(140) } = go;
  return {
    proof,
    accept: 1,
    clearReading: clear,
    covered: { type: 'path', state: proof === 'alarm' ? 'partial' : 'blocked', ...at(0, 2) },
    ...(reading && { reading: { type: 'reading', reading, ...at(1, 3) } }),
    ...(shown !== undefined && { shown: { type: 'panel', shows, ...at(shown, 4) } }),
    ...(cleared !== undefined && { cleared: { type: 'path', state: 'clear', ...at(cleared, 5) } }),
    ...(restored !== undefined && { restored: { type: 'panel', shows: 'normal', ...at(restored, 6) } }),
  };
};

/** What it comes to, looked at `now` seconds after the cover went on. */
const judged = (proof: Proof, go: Go, setup = pair(), now = 9_999) =>
  judge(goAt(proof, go), setup, COVERED_AT + Math.round(now * 1000));
const outcome = (...of: Parameters<typeof judged>) => {
  const verdict = judged(...of);
  return verdict.kind === 'failed' ? verdict.why : verdict.kind;
};

describe('what covers the receiver for a proving test', () => {
  it.each<[string, Proof, JobSetup, string, number]>([
    ['the alarm, where no filter is at hand', 'alarm', pair(), 'half', -10 * Math.log10(0.5)],
    ['the alarm, where nothing was planned', 'alarm', unplanned(pair()), 'half', -10 * Math.log10(0.5)],
    ['the alarm, where a filter is', 'alarm', pair({ filterPercent: 40 }), 'filter', -10 * Math.log10(0.6)],
    ['the fault, filter or not', 'fault', pair({ filterPercent: 40 }), 'full', Number.POSITIVE_INFINITY],
    ['the fault, where nothing was planned', 'fault', unplanned(pair()), 'full', Number.POSITIVE_INFINITY],
  ])('for %s', (_, proof, setup, cover, loss) => {
    const used = coverFor(proof, setup);
    expect(used?.how).toBe(cover);
    expect(used && lossOf(used)).toBeCloseTo(loss, 12);
  });

  it('half a cover is half the light, and so is a filter of unknown grade', () => {
    expect(lossOf({ how: 'half' })).toBeCloseTo(-10 * Math.log10(0.5), 12);
    expect(lossOf({ how: 'filter' })).toBeCloseTo(-10 * Math.log10(0.5), 12);
  });
});

/** The set delay, how far off the panel may be, and where no delay is known how long it may take. Seconds. */
const DELAYS: [what: string, proof: Proof, setup: JobSetup, delay: number | undefined, tolerance: number][] =
  [
    ['an alarm set to 0 s, give or take 5', 'alarm', pair({ alarmDelay: 0 }), 0, 5],
    ['an alarm set to 10 s, give or take 5', 'alarm', pair(), 10, 5],
    ['a fault set to 20 s, give or take 5', 'fault', pair(), 20, 5],
    ['an alarm set to 50 s, where a tenth is 5 too', 'alarm', pair({ alarmDelay: 50 }), 50, 5],
    ['an alarm set to 60 s, give or take a tenth', 'alarm', pair({ alarmDelay: 60 }), 60, 6],
    ['a fault set to 300 s, give or take a tenth', 'fault', pair({ faultDelay: 300 }), 300, 30],
    ['an alarm of unknown delay, taken as 60 s', 'alarm', pair({ alarmDelay: undefined }), undefined, 6],
    ['a fault of unknown delay, taken as 60 s', 'fault', pair({ faultDelay: undefined }), undefined, 6],
    ['an alarm of a pair without a plan', 'alarm', unplanned(pair()), undefined, 6],
    ['a fault of a pair without a plan', 'fault', unplanned(pair()), undefined, 6],
  ];

describe('the panel has its set delay and the tolerance, and not a millisecond more', () => {
  it.each(DELAYS)('%s', (_, proof, setup, delay = 60, tolerance) => {
    const latest = delay + tolerance;
    const until = COVERED_AT + latest * 1000;
    expect(judged(proof, {}, setup, latest - MS)).toMatchObject({ kind: 'covered', until });
    expect(outcome(proof, {}, setup, latest)).toBe('nothing-shown');
    expect(outcome(proof, { cleared: latest - MS }, setup)).toBe('broken-off');
    expect(outcome(proof, { cleared: latest }, setup)).toBe('nothing-shown');
    expect(outcome(proof, { shown: latest }, setup)).toBe('shown');
    expect(outcome(proof, { shown: latest + MS }, setup)).toBe('too-late');
  });
});

describe('what the panel shows sooner than its set delay less the tolerance is too early', () => {
  it.each(DELAYS)('%s', (_, proof, setup, delay, tolerance) => {
    const soonest = delay === undefined ? 0 : Math.max(0, delay - tolerance);
    expect(outcome(proof, { shown: soonest }, setup)).toBe('shown');
    if (soonest > 0) expect(outcome(proof, { shown: soonest - MS }, setup)).toBe('too-early');
  });
});

it.each<[string, Proof, Go, string]>([
  ['a fault where an alarm was due', 'alarm', { shows: 'fault', shown: 10 }, 'wrong-indication'],
  ['an alarm where a fault was due', 'fault', { shows: 'alarm', shown: 20 }, 'wrong-indication'],
  ['the wrong thing, and late as well', 'alarm', { shows: 'fault', shown: 40 }, 'wrong-indication'],
  ['the wrong thing, and early as well', 'alarm', { shows: 'fault', shown: 1 }, 'wrong-indication'],
  ['an alarm where one was due', 'alarm', { shown: 10 }, 'shown'],
  ['a fault where one was due', 'fault', { shown: 20 }, 'shown'],
])('%s is told apart', (_, proof, go, result) => {
  expect(outcome(proof, go)).toBe(result);
});

describe('the reading behind the cover', () => {
  const half = -10 * Math.log10(0.5);
  // Nine tenths held back are 10 dB, but for the last figure of the floating point.
  const filter = -10 * Math.log10(1 - 90 / 100);
  const filtered: Plan = { filterPercent: 90 };

  /** Of a meter in decibels, so that a loss stands on it to the last figure. */
  const lostBehind = (loss: number, plan: Plan) =>
    outcome(
      'alarm',
      { shown: 10, clear: valueReading(loss), reading: valueReading(0) },
      pair(plan, DECIBELS),
    );

  it.each<[string, Plan, number, number]>([
    ['half a cover, give or take 1.5 dB', {}, half, 1.5],
    ['a filter, give or take 0.5 dB', filtered, filter, 0.5],
  ])('must show what was lost to %s', (_, plan, expected, tolerance) => {
    const hair = 1e-9;
    for (const side of [-1, 1]) {
      expect(lostBehind(expected + side * (tolerance - hair), plan)).toBe('shown');
      expect(lostBehind(expected + side * (tolerance + hair), plan)).toBe('reading-off');
    }
    // These two differ by the tolerance to the last bit: the limit itself is still good.
    const atLimit = expected === half ? expected - tolerance : expected + tolerance;
    expect(Math.abs(atLimit - expected)).toBe(tolerance);
    expect(lostBehind(atLimit, plan)).toBe('shown');
  });

  // 5 counts is where this meter has no signal left.
  it.each<[string, Proof, Reading | undefined, string]>([
    ['no signal behind a full cover', 'fault', NO_SIGNAL, 'shown'],
    ['a number as low as no signal behind a full cover', 'fault', valueReading(5), 'shown'],
    ['a little light behind a full cover', 'fault', valueReading(6), 'reading-off'],
    ['the clear reading behind a full cover', 'fault', valueReading(140), 'reading-off'],
    ['no reading behind a full cover', 'fault', undefined, 'shown'],
    ['a flooded meter behind a full cover, which tells no loss', 'fault', SATURATED, 'shown'],
    ['no signal behind half a cover', 'alarm', NO_SIGNAL, 'reading-off'],
    ['the clear reading behind half a cover', 'alarm', valueReading(140), 'reading-off'],
    ['half the reading behind half a cover', 'alarm', valueReading(70), 'shown'],
    ['no reading behind half a cover', 'alarm', undefined, 'shown'],
  ])('is judged where it was read: %s', (_, proof, reading, result) => {
    expect(outcome(proof, { shown: proof === 'alarm' ? 10 : 20, ...(reading && { reading }) })).toBe(result);
  });

  it('is not judged on a meter whose law is unknown', () => {
    const setup = pair({}, { ...COUNTS, law: 'unknown' });
    expect(outcome('alarm', { shown: 10, reading: valueReading(140) }, setup)).toBe('shown');
  });
});

describe('uncovered, the panel has two minutes to come back to normal', () => {
  it.each<[string, number | undefined, number, string]>([
    ['not back, just before they are over', undefined, 120 - MS, 'restoring'],
    ['not back when they are over', undefined, 120, 'not-restored'],
    ['back just before they were over', 120 - MS, 9_999, 'passed'],
    ['back when they were over', 120, 9_999, 'not-restored'],
    ['back at once', 0, 0, 'passed'],
  ])('%s', (_, restored, now, result) => {
    const cleared = 12;
    const back = restored === undefined ? {} : { restored: cleared + restored };
    const verdict = judged('alarm', { shown: 10, cleared, ...back }, pair(), cleared + now);
    expect(verdict.kind === 'failed' ? verdict.why : verdict.kind).toBe(result);
    if (verdict.kind === 'restoring') expect(verdict.until).toBe(COVERED_AT + (cleared + 120) * 1000);
  });

  it('a test that failed before it was uncovered does not pass by coming back', () => {
    expect(outcome('alarm', { shown: 1, cleared: 12, restored: 20 })).toBe('too-early');
  });
});

describe('the figures of a test', () => {
  it.each<[string, Proof, Go, JobSetup, Record<string, number>]>([
    ['only covered', 'alarm', {}, pair(), { delay: 10, tolerance: 5 }],
    ['only covered, with no delay known', 'alarm', {}, unplanned(pair()), {}],
    ['shown', 'alarm', { shown: 11.5 }, pair(), { elapsed: 11.5, delay: 10, tolerance: 5 }],
    [
      'uncovered and not back',
      'alarm',
      { shown: 11, cleared: 12 },
      pair(),
      { elapsed: 11, delay: 10, tolerance: 5 },
    ],
    [
      'uncovered and back',
      'alarm',
      { shown: 11, cleared: 12, restored: 20 },
      pair(),
      { elapsed: 11, delay: 10, tolerance: 5, restored: 8 },
    ],
    [
      'of a fault set to 300 s',
      'fault',
      { shown: 290 },
      pair({ faultDelay: 300 }),
      { elapsed: 290, delay: 300, tolerance: 30 },
    ],
    [
      'read behind half a cover',
      'alarm',
      { clear: valueReading(-3), reading: valueReading(-6) },
      pair({}, DECIBELS),
      { delay: 10, tolerance: 5, loss: 3, expectedLoss: -10 * Math.log10(0.5) },
    ],
    [
      'dark behind half a cover: no finite loss',
      'alarm',
      { reading: NO_SIGNAL },
      pair(),
      { delay: 10, tolerance: 5, expectedLoss: -10 * Math.log10(0.5) },
    ],
    [
      'dark behind a full cover: no finite loss on either side',
      'fault',
      { reading: NO_SIGNAL },
      pair(),
      { delay: 20, tolerance: 5 },
    ],
    [
      'some light behind a full cover',
      'fault',
      { clear: valueReading(-3), reading: valueReading(-13) },
      pair({}, DECIBELS),
      { delay: 20, tolerance: 5, loss: 10 },
    ],
  ])('%s', (_, proof, go, setup, figures) => {
    expect(judged(proof, go, setup).figures).toEqual(figures);
  });
});

describe('a go at a test in which the panel shows two things', () => {
  const both = (proof: Proof): Attempt => {
    const go = goAt(proof, { shown: 10, cleared: 30, restored: 35 });
    return { ...go, also: { type: 'panel', shows: 'fault', seq: 9, at: COVERED_AT + 12_000 } };
  };
  it.each(['alarm', 'fault'] as const)('fails as %s test, whatever else is right', (proof) => {
    expect(judge(both(proof), pair(), COVERED_AT + 99_000)).toMatchObject({
      kind: 'failed',
      why: 'both-shown',
    });
  });
});

describe('the figures of a go', () => {
  const planned = pair({ alarmThreshold: { unit: 'dB', value: 1.2 } });
  const at35 = { shown: 10, cleared: 30, restored: 35 };

  it('of an alarm test hold the threshold it was judged by, and what the cover should hold back', () => {
    const { figures } = judged('alarm', at35, planned);
    expect(figures).toMatchObject({ threshold: 1.2, elapsed: 10, restored: 5 });
    expect(figures.expectedLoss).toBeCloseTo(3.0103, 3);
  });

  it('of a fault test hold none', () => {
    expect(judged('fault', { ...at35, shown: 20 }, planned).figures).not.toHaveProperty('threshold');
  });

  it('without a threshold or a reading say nothing of what should be held back', () => {
    expect(judged('alarm', at35).figures).not.toHaveProperty('expectedLoss');
    expect(judged('alarm', { ...at35, reading: valueReading(70) }).figures.expectedLoss).toBeCloseTo(
      3.0103,
      3,
    );
  });

  it('have only what has happened: no time to normal before it is there, no loss where the meter is dark', () => {
    expect(judged('alarm', { shown: 10, cleared: 30 }, pair(), 40).figures).not.toHaveProperty('restored');
    const dark = judged('fault', { ...at35, shown: 20, reading: NO_SIGNAL }).figures;
    expect(dark).not.toHaveProperty('loss');
    expect(dark).not.toHaveProperty('expectedLoss');
  });
});
