import { describe, expect, it } from 'vitest';
import { wouldEnd } from '../../src/conversation/ending.ts';
import type { Intent } from '../../src/grammar/intent.ts';
import type { Action } from '../../src/model/advice.ts';
import type { Fact, Seat } from '../../src/model/facts.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { valueReading } from '../../src/model/reading.ts';
import type { JobState } from '../../src/visit/state.ts';
import { COUNTS, ofType, TableJob } from './table.ts';

const YES: Intent = { kind: 'yes' };
const PANEL: Intent = { kind: 'panel', shows: 'alarm' };
const TOLD: Intent = { kind: 'told', who: 'Mary' };
const CLEAR: Intent = { kind: 'path', state: 'clear' };
const READING: Intent = { kind: 'reading', reading: valueReading(5) };

/** A job at its first order, with this one in its place. */
function ordered(action: Action): JobState {
  const { state } = TableJob.crewed();
  if (!state.instruction) throw new Error('no order');
  const { instruction } = state;
  return { ...state, instruction: { ...instruction, advice: { ...instruction.advice, action } } };
}

const READ = ordered({ kind: 'read' });
const ITEM = ordered({ kind: 'confirm-item', list: 'before', item: 'path-clear' });
const WATCH = ordered({ kind: 'watch-panel', expect: 'alarm' });

describe('words that end something', () => {
  it.each<[string, JobState, Intent, boolean]>([
    ['"accept", whatever was asked', READ, { kind: 'accept' }, true],
    ['who was told, whatever was asked', READ, TOLD, true],
    ['who was told, to an item of a checklist', ITEM, TOLD, true],
    ['what the panel shows, whatever was asked', READ, PANEL, true],
    ['what the panel shows, in a test', WATCH, PANEL, true],
    ['what the panel shows, to an item of a checklist', ITEM, PANEL, true],
    ['"yes" to an item of a checklist', ITEM, YES, true],
    ['"no" to an item of a checklist', ITEM, { kind: 'no' }, true],
    ['"done" to an item of a checklist', ITEM, { kind: 'done' }, true],
    ['"path clear" to an item of a checklist', ITEM, CLEAR, true],
    ['"yes" where an order waits for the emitter', { ...READ, paused: true, held: true }, YES, true],
    ['"go on" after "wait"', { ...READ, paused: true }, { kind: 'resume' }, true],
    ['"go on" after "stop"', { ...READ, stopped: true }, { kind: 'resume' }, true],
    ['"start" after "wait"', { ...READ, paused: true }, { kind: 'start' }, true],
    ['"start" after "stop"', { ...READ, stopped: true }, { kind: 'start' }, true],

    ['not "yes" to anything else', READ, YES, false],
    ['not "yes" in a test: it shows nothing', WATCH, YES, false],
    ['not "yes" after a plain "wait": it changes nothing', { ...READ, paused: true }, YES, false],
    ['not "done" to an order', READ, { kind: 'done' }, false],
    ['not "path clear" to an order', READ, CLEAR, false],
    ['not "go on" while nobody waits', READ, { kind: 'resume' }, false],
    ['not "start" while nobody waits', READ, { kind: 'start' }, false],
    ['not "wait" to an item of a checklist', ITEM, { kind: 'wait' }, false],
    ['not a reading', READ, READING, false],
    // It must work at once.
    ['not "stop"', READ, { kind: 'stop' }, false],
    ['not "stop" to an item of a checklist', ITEM, { kind: 'stop' }, false],
    ['not "stop" after "wait"', { ...READ, paused: true }, { kind: 'stop' }, false],
  ])('%s', (_, state, intent, ends) => {
    expect(wouldEnd(state, [intent], undefined)).toBe(ends);
    expect(wouldEnd(state, [READING, intent], undefined)).toBe(ends);
  });

  it('an item that is answered already is not answered again', () => {
    const { instruction } = ITEM;
    expect(wouldEnd({ ...ITEM, answeredBy: 0 }, [YES], undefined)).toBe(false);
    expect(wouldEnd(ITEM, [YES], instruction?.seq)).toBe(true);
  });
});

/** A job whose first question is the first item of the checklist before. */
function atItem(): TableJob {
  const job = new TableJob();
  const setup = { site: 'Quayside Hall 3', pair: 'B2', meter: COUNTS, adjusters: NEUTRAL_ADJUSTERS };
  job.input({ kind: 'open', setup: { ...setup, scope: 'commissioning' } });
  for (const seat of ['panel', 'emitter'] as const)
    job.input({ kind: 'seated', seat, device: '', takeover: false });
  return job;
}

const waiting = (): TableJob => {
  const job = TableJob.crewed();
  job.say('emitter', 'wait');
  return job;
};

const stopped = (): TableJob => {
  const job = TableJob.crewed();
  job.say('emitter', 'stop');
  return job;
};

// Ours, no source: 0.97 where words end something, 0.91 elsewhere.
describe('heard by voice', () => {
  it.each<[string, number, () => TableJob, Seat, string, Fact['type']]>([
    ['an item of a checklist', 0.97, atItem, 'panel', 'yes', 'item'],
    ['an item of a checklist', 0.97, atItem, 'panel', 'no', 'item'],
    ['the acceptance', 0.97, TableJob.crewed, 'panel', 'accept', 'notice'],
    ['what the panel shows', 0.97, TableJob.crewed, 'panel', 'panel in alarm', 'panel'],
    ['the end of a wait', 0.97, waiting, 'emitter', 'go on', 'resume'],
    ['the end of a stop', 0.97, stopped, 'emitter', 'start', 'restarted'],
    ['a reading', 0.91, TableJob.crewed, 'panel', 'one forty two', 'reading'],
    ['a turn', 0.91, TableJob.crewed, 'emitter', 'horizontal a quarter turn clockwise', 'move'],
  ])('%s is taken from %d on, and asked about a hair below', (_, least, made, seat, words, fact) => {
    const sure = made().hears(seat, words, least);
    expect(sure.map(({ type }) => type)).toContain(fact);
    expect(ofType(sure, 'query')).toEqual([]);
    const unsure = made().hears(seat, words, least - 0.0001);
    expect(unsure.map(({ type }) => type)).not.toContain(fact);
    expect(ofType(unsure, 'query')).toHaveLength(1);
  });
});
