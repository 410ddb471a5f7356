import { describe, expect, it } from 'vitest';
import { leftOtherwise as find } from '../../src/findings/left-otherwise.ts';
import { leftSignal } from '../../src/findings/left-signal.ts';
import type { Fact } from '../../src/model/facts.ts';
import { type AsLeft, CalendarDate } from '../../src/model/hand-over.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { valueReading } from '../../src/model/reading.ts';
import { leftOtherwise } from '../../src/visit/as-left.ts';
import { readVisit, type Visit } from '../../src/visit/visit.ts';
import { DECIBELS } from '../conversation/table.ts';
import { atSecond, jobAfter, SETUP, type Step } from './record.ts';

const PLAN: PairPlan = {
  id: 'N1',
  name: 'North aisle',
  alarmThreshold: { unit: 'dB', value: 2 },
  alarmDelay: 10,
  faultDelay: 30,
  emitterHeight: 6,
  receiverHeight: 6.2,
};

/** 35 % is 1.8709 dB: -10·lg(1 - 0.35). The limits are common practice, no source. */
describe('what was left otherwise than planned', () => {
  it.each<[string, AsLeft, string[]]>([
    ['is nothing where nothing was written', {}, []],
    ['is no threshold 0.05 dB away', { threshold: { unit: 'dB', value: 2.05 } }, []],
    ['is a threshold 0.051 dB above', { threshold: { unit: 'dB', value: 2.051 } }, ['threshold']],
    ['is a threshold 0.051 dB below', { threshold: { unit: 'dB', value: 1.949 } }, ['threshold']],
    [
      'is no threshold in percent that is the same light',
      { threshold: { unit: 'percent', value: 36.9 } },
      [],
    ],
    ['is a threshold in percent that is not', { threshold: { unit: 'percent', value: 35 } }, ['threshold']],
    ['is no delay as planned', { alarmDelay: 10, faultDelay: 30 }, []],
    ['is an alarm delay a tenth longer', { alarmDelay: 10.1 }, ['alarmDelay']],
    ['is a fault delay a tenth shorter', { faultDelay: 29.9 }, ['faultDelay']],
    ['is no height 0.1 m away', { emitterHeight: 6.1, receiverHeight: 6.1 }, []],
    ['is no height a rounding error beyond 0.1 m', { emitterHeight: 6.1 + 0.7e-9 }, []],
    ['is a height two nanometres beyond 0.1 m', { emitterHeight: 6.1 + 1.5e-9 }, ['emitterHeight']],
    ['is an emitter 0.101 m away', { emitterHeight: 5.899 }, ['emitterHeight']],
    ['is a receiver 0.101 m away', { receiverHeight: 6.301 }, ['receiverHeight']],
    ['is nothing that no plan states', { gain: '3', firmware: '2.1', signal: 7 }, []],
  ])('%s', (_, left, fields) => {
    expect(leftOtherwise(left, PLAN)).toEqual(fields);
  });

  it('is nothing where the plan does not state it, or there is no plan', () => {
    expect(leftOtherwise({ alarmDelay: 10 }, { id: 'N1', name: 'North' })).toEqual([]);
    expect(leftOtherwise({ alarmDelay: 10 }, undefined)).toEqual([]);
  });
});

/** Entry 1 accepts -10 dB; each fact after it, ten seconds later. */
function visitWith(...facts: Fact[]): Visit {
  const accept: Fact = { type: 'accept', reading: valueReading(-10) };
  const steps = [accept, ...facts].map((fact, i): Step => ['', (i + 1) * 10, fact]);
  const end = jobAfter(steps, { ...SETUP, plan: PLAN, meter: { ...DECIBELS, tolerance: 0.5 } });
  const last = { seq: steps.length, at: atSecond(9_999) };
  return readVisit([last] as unknown as Visit['entries'], end) ?? expect.fail('no visit');
}
const left = (values: AsLeft): Fact => ({ type: 'as-left', values });

describe('the finding about how a pair was left', () => {
  it.each<[string, Fact[], string | undefined, number[]]>([
    ['is serious about a delay', [left({ alarmDelay: 11 })], 'serious', [2]],
    ['is serious about a fault delay', [left({ faultDelay: 31 })], 'serious', [2]],
    ['is serious about a threshold', [left({ threshold: { unit: 'dB', value: 3 } })], 'serious', [2]],
    ['is to be asked about a height', [left({ emitterHeight: 7 })], 'question', [2]],
    ['rests on both entries', [left({ alarmDelay: 11 }), left({ emitterHeight: 7 })], 'serious', [2, 3]],
    [
      'goes when a later value replaces it',
      [left({ alarmDelay: 11 }), left({ alarmDelay: 10 })],
      undefined,
      [],
    ],
    [
      'stays when a later entry is about another value',
      [left({ alarmDelay: 11 }), left({ gain: '4' })],
      'serious',
      [2],
    ],
  ])('%s', (_, facts, severity, entries) => {
    const [found] = find(visitWith(...facts));
    expect(found?.severity).toBe(severity);
    expect(found?.entries ?? []).toEqual(entries);
  });

  it.each<[number, boolean]>([
    [-10, false],
    [-10.5, false],
    [-10.51, true],
    [-9.49, true],
  ])('a signal of %d dB beside -10 dB read, told apart by the meter’s 0.5: %s', (signal, is) => {
    const found = leftSignal(visitWith(left({ signal })));
    expect(found.length > 0).toBe(is);
    if (is) expect(found[0]?.figures).toEqual({ left: signal, final: -10 });
  });
});

it.each([
  ['2028-02-29', true],
  ['2027-02-29', false],
  ['2027-13-01', false],
  ['2027-1-1', false],
  ['27/01/2027', false],
])('%s is a day of the calendar: %s', (text, is) => {
  expect(CalendarDate.safeParse(text).success).toBe(is);
});

it('a value that is named but not given replaces none', () => {
  const end = jobAfter([
    ['', 10, left({ faultDelay: 30 })],
    ['', 20, left({ gain: '3', faultDelay: undefined })],
  ]);
  expect(end.handOver.asLeft).toEqual({ gain: '3', faultDelay: 30 });
  expect(end.handOver.leftBy.faultDelay).toBe(1);
});
