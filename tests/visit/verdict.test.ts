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
  readonly before?: Reading | 'unread';
  readonly after?: Reading | 'unread';
}

/** Before the cover and after it, unless a case says what was read, or that nobody did. */
function readClear({ cleared, before, after }: Go, clear: Reading): Partial<Attempt> {
  const read = (seconds: number, seq: number, reading: Reading) => ({
    ...{ seq, at: COVERED_AT + seconds * 1000, reading, accept: 1, accepted: clear },
  });
  return {
    ...(before !== 'unread' && { before: read(-10, 1.5, before ?? clear) }),
    ...(cleared !== undefined && after !== 'unread' && { after: read(cleared + 5, 7, after ?? clear) }),
  };
}

const goAt = (proof: Proof, go: Go): Attempt => {
  const at = (seconds: number, seq: number) => ({ seq, at: COVERED_AT + Math.round(seconds * 1000) });
  const { shown, shows = proof, cleared, restored, reading, clear = valueReading(140) } = go;
  return {
    proof,
    accept: 1,
    accepted: clear,
    clearReading: clear,
    ...readClear(go, clear),
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
      { shown: 10, cleared: 12, restored: 20, clear: valueReading(loss), reading: valueReading(0) },
      pair(plan, DECIBELS),
    );

  it.each<[string, Plan, number, number]>([
    ['half a cover, give or take 1.5 dB', {}, half, 1.5],
    ['a filter, give or take 0.5 dB', filtered, filter, 0.5],
  ])('must show what was lost to %s', (_, plan, expected, tolerance) => {
    const hair = 1e-9;
    for (const side of [-1, 1]) {
      expect(lostBehind(expected + side * (tolerance - hair), plan)).toBe('passed');
      expect(lostBehind(expected + side * (tolerance + hair), plan)).toBe('reading-off');
    }
    // These two differ by the tolerance to the last bit: the limit itself is still good.
    const atLimit = expected === half ? expected - tolerance : expected + tolerance;
    expect(Math.abs(atLimit - expected)).toBe(tolerance);
    expect(lostBehind(atLimit, plan)).toBe('passed');
  });

  // 5 counts is where this meter has no signal left.
  it.each<[string, Proof, Reading | undefined, string]>([
    ['no signal behind a full cover', 'fault', NO_SIGNAL, 'passed'],
    ['a number as low as no signal behind a full cover', 'fault', valueReading(5), 'passed'],
    ['a little light behind a full cover', 'fault', valueReading(6), 'reading-off'],
    ['the clear reading behind a full cover', 'fault', valueReading(140), 'reading-off'],
    ['no reading behind a full cover', 'fault', undefined, 'unread'],
    ['a flooded meter behind a full cover', 'fault', SATURATED, 'reading-off'],
    ['no signal behind half a cover', 'alarm', NO_SIGNAL, 'reading-off'],
    ['the clear reading behind half a cover', 'alarm', valueReading(140), 'reading-off'],
    ['half the reading behind half a cover', 'alarm', valueReading(70), 'passed'],
    ['no reading behind half a cover', 'alarm', undefined, 'unread'],
  ])('is judged once it is off and the path was read: %s', (_, proof, reading, result) => {
    const go = { shown: proof === 'alarm' ? 10 : 20, ...(reading && { reading }) };
    expect(outcome(proof, { ...go, cleared: 30, restored: 40 })).toBe(result);
    // While the cover is on, and before the path was read, nobody knows yet whether the cover or the beam is wrong.
    expect(outcome(proof, go)).toBe(result === 'reading-off' ? 'unread' : 'shown');
    expect(outcome(proof, { ...go, cleared: 30, restored: 40, after: 'unread' })).toBe('unread');
  });

  it('that was off is off for good when no clear reading can follow', () => {
    const go = goAt('alarm', { shown: 10, cleared: 30, reading: valueReading(140), after: 'unread' });
    expect(judge({ ...go, closed: true }, pair(), COVERED_AT + 99_000)).toMatchObject({ why: 'reading-off' });
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
    const go = { shown: 10, reading: valueReading(70), cleared, ...back };
    const verdict = judged('alarm', go, pair(), cleared + now);
    expect(verdict.kind === 'failed' ? verdict.why : verdict.kind).toBe(result);
    if (verdict.kind === 'restoring') expect(verdict.until).toBe(COVERED_AT + (cleared + 120) * 1000);
  });

  it('a test that failed before it was uncovered does not pass by coming back', () => {
    expect(outcome('alarm', { shown: 1, cleared: 12, restored: 20 })).toBe('too-early');
  });
});

describe('a reading that the test needs', () => {
  const whole = { shown: 10, reading: valueReading(70), cleared: 12, restored: 20 };
  const lacks = (go: Go, setup = pair()) => {
    const verdict = judged('alarm', go, setup);
    return verdict.kind === 'unread' ? verdict.lacks : verdict.kind;
  };
  const { reading: _, ...notBehind } = whole;

  it.each<[string, Go, string]>([
    ['is all there', whole, 'passed'],
    ['lacks before the cover', { ...whole, before: 'unread' }, 'before'],
    ['lacks behind it', notBehind, 'behind'],
    ['lacks after it', { ...whole, after: 'unread' }, 'after'],
  ])('%s', (_, go, result) => {
    expect(lacks(go)).toBe(result);
  });

  it('is not needed behind the cover where the law of the meter is unknown, but before and after it', () => {
    const setup = pair({}, { ...COUNTS, law: 'unknown' });
    expect(lacks(notBehind, setup)).toBe('passed');
    expect(lacks({ ...notBehind, before: 'unread' }, setup)).toBe('before');
    expect(lacks({ ...notBehind, after: 'unread' }, setup)).toBe('after');
  });

  it('must be at most five minutes old when the cover goes on', () => {
    const go = goAt('alarm', whole);
    const readAgo = (ms: number) => {
      const before = { seq: 1.5, at: COVERED_AT - ms, reading: valueReading(140), accept: 1 };
      const attempt = { ...go, before: { ...before, accepted: valueReading(140) } };
      return judge(attempt, pair(), COVERED_AT + 99_000).kind;
    };
    expect(readAgo(300_000)).toBe('passed');
    expect(readAgo(300_001)).toBe('unread');
  });

  it('does not hide that the panel was wrong', () => {
    expect(outcome('alarm', { shown: 1, cleared: 12, before: 'unread', after: 'unread' })).toBe('too-early');
    expect(outcome('alarm', { cleared: 40, before: 'unread', after: 'unread' })).toBe('nothing-shown');
  });
});

describe('the beam was lost or moved, and the cover not wrong', () => {
  const dark = { shown: 10, shows: 'fault', reading: NO_SIGNAL, cleared: 12, restored: 20 } as const;
  it.each<[string, Go, string]>([
    ['no light behind half a cover, and none after it', { ...dark, after: NO_SIGNAL }, 'beam-moved'],
    ['no light behind half a cover, and all of it after it', dark, 'reading-off'],
    [
      'half the light, an alarm, and less light after it',
      { ...dark, shows: 'alarm', after: valueReading(100) },
      'beam-moved',
    ],
    [
      'less light before the cover than was accepted',
      { ...dark, before: valueReading(100), after: valueReading(100) },
      'beam-moved',
    ],
    ['a flooded meter after the cover', { ...dark, after: SATURATED }, 'beam-moved'],
    [
      'more light after the cover',
      { ...dark, shows: 'alarm', reading: valueReading(70), after: valueReading(150) },
      'passed',
    ],
  ])('%s', (_, go, result) => {
    expect(outcome('alarm', go)).toBe(result);
  });

  it.each<[string, (fall: number) => Go]>([
    ['since the acceptance', (fall) => ({ before: valueReading(-fall), after: valueReading(-fall) })],
    ['while the cover was on', (fall) => ({ after: valueReading(-fall) })],
  ])('by more than half a decibel %s, with the loss in its figures', (_, read) => {
    const setup = pair({}, { ...DECIBELS, tolerance: 0.1 });
    const go = (fall: number) => ({
      ...{ shown: 10, cleared: 12, restored: 20, clear: valueReading(0) },
      reading: valueReading(-3 - (read(fall).before ? fall : 0)),
      ...read(fall),
    });
    expect(outcome('alarm', go(0.5), setup)).toBe('passed');
    expect(outcome('alarm', go(0.501), setup)).toBe('beam-moved');
    expect(judged('alarm', go(0.501), setup).figures.fall).toBeCloseTo(0.501, 9);
    expect(judged('alarm', go(0.5), setup).figures).not.toHaveProperty('fall');
  });

  it('is told in a fault test too, where the meter is dark anyway', () => {
    const go = { ...dark, shown: 20, cleared: 22, restored: 30 };
    expect(outcome('fault', go)).toBe('passed');
    expect(outcome('fault', { ...go, after: NO_SIGNAL })).toBe('beam-moved');
  });

  it('comes before alarm and fault in one test: the lost beam brings both', () => {
    const go = goAt('alarm', { ...dark, after: NO_SIGNAL });
    const also = { type: 'panel', shows: 'alarm', seq: 9, at: COVERED_AT + 11_000 } as const;
    const why = (attempt: Attempt) => judge(attempt, pair(), COVERED_AT + 99_000);
    expect(why({ ...go, also })).toMatchObject({ why: 'beam-moved' });
    expect(why({ ...goAt('alarm', dark), also })).toMatchObject({ why: 'both-shown' });
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

  it.each([
    ['alarm', 'fault'],
    ['fault', 'alarm'],
  ] as const)('fails as quiet test in words of its own, %s first and then %s', (first, second) => {
    const go = { ...goAt('alarm', { shown: 10, cleared: 30, restored: 35 }), proof: 'quiet' as const };
    const shown = { type: 'panel', shows: first, seq: 8, at: COVERED_AT + 10_000 } as const;
    const also = { type: 'panel', shows: second, seq: 9, at: COVERED_AT + 12_000 } as const;
    const why = (attempt: Attempt) => judge(attempt, pair(), COVERED_AT + 99_000);
    expect(why({ ...go, shown, also })).toMatchObject({ kind: 'failed', why: 'both-when-quiet' });
    const alone = first === 'alarm' ? 'too-sensitive' : 'wrong-indication';
    expect(why({ ...go, shown })).toMatchObject({ kind: 'failed', why: alone });
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
