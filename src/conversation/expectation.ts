import { predict } from '../engine/beam.ts';
import { exactFromDb, toLevel } from '../engine/level.ts';
import { look, type View } from '../engine/view.ts';
import type { Intent } from '../grammar/intent.ts';
import type { Action, Question } from '../model/advice.ts';
import { type Steps, stepsOf } from '../model/shown.ts';
import { searchOf } from '../visit/search.ts';
import type { JobState } from '../visit/state.ts';
import { SAFE } from './decide.ts';

/** What would be no surprise if somebody said it now. */
export interface Expectation {
  /** Readings, in the meter's units. */
  low: number;
  high: number;
  /** What the meter can show at all. */
  steps?: Steps;
  /**
   * What answers the present question or instruction, and what is safe at any time; undefined while nothing
   * is asked.
   */
  asked?: readonly Intent['kind'][];
}

/**
 * How far off a reading may be before it is a surprise, dB: a factor of five on a linear scale. So thirteen
 * and thirty, up to nineteen and ninety, are both expected or neither is: earlier readings never decide
 * between them.
 */
export const OFF_DB = 7;
const SDS = 3;

/** What would be no surprise now; undefined before the job is opened. */
export function expectation(state: JobState): Expectation | undefined {
  const readings = expectedReadings(state);
  const asked = askedFor(state);
  return readings && { ...readings, ...(asked && { asked: [...asked, ...SAFE] }) };
}

function askedFor({ query, instruction, answeredBy }: JobState): Expectation['asked'] {
  if (query?.question) return ANSWERS[query.question.kind];
  if (!instruction || answeredBy !== undefined) return undefined;
  const { action } = instruction.advice;
  return action.kind === 'ask' ? ANSWERS[action.question.kind] : REPORTS[action.kind];
}

/** What answers a question, and what a crew reports when it has done what was asked. The reading often comes with it. */
export const ANSWERS: Readonly<Record<Question['kind'], readonly Intent['kind'][]>> = {
  'which-value': ['reading', 'correct', 'yes', 'no'],
  'which-move': ['moved', 'yes', 'no'],
  'is-it-so': ['yes', 'no', 'path', 'gain', 'reading'],
};

export const REPORTS: Readonly<
  Record<Exclude<Action['kind'], 'ask'>, readonly Intent['kind'][] | undefined>
> = {
  turn: ['done', 'moved', 'reading', 'trend', 'cannot'],
  gain: ['done', 'gain', 'reading', 'trend', 'cannot'],
  read: ['reading', 'trend'],
  hold: ['reading', 'trend'],
  're-aim': ['done', 'reading', 'trend'],
  block: ['done', 'path', 'reading'],
  unblock: ['done', 'path', 'reading'],
  cover: ['done', 'path', 'panel', 'reading'],
  uncover: ['done', 'path', 'panel', 'reading'],
  check: ['done', 'reading', 'path'],
  'offer-accept': ['accept', 'yes', 'no'],
  'confirm-item': ['yes', 'no', 'told'],
  'watch-panel': ['panel', 'yes', 'no'],
  'settle-issue': undefined,
  'offer-sign': undefined,
  finished: undefined,
};

const NO_MODEL: Pick<View, 'beam' | 'samples'> = { beam: undefined, samples: [] };

/**
 * Which readings are likely now: around the last reading here and the beam's prediction; the whole scale if
 * there is neither. Undefined before the job is opened.
 */
function expectedReadings(job: JobState): Expectation | undefined {
  const search = searchOf(job);
  if (!search) return undefined;
  const { meter, path, stay, turned, pointing, gain } = search;
  const steps = stepsOf(meter);
  const scale = { low: meter.min, high: meter.max, steps };
  if (path !== 'clear') return scale;

  const known: { value: number; sd: number }[] = [];
  const last = stay.run.at(-1);
  if (last) {
    const level = toLevel(last.reading, meter);
    // After "saturated" or "no signal", any reading may follow.
    if (level.kind !== 'level') return scale;
    known.push({ value: level.db, sd: level.sd });
  }
  // Once the model was given up there is no beam: to fit one costs time and foretells nothing.
  const { beam, samples } = search.floor ? NO_MODEL : look(search);
  const any = samples.at(-1);
  const predicted = beam && any && predict(beam, { ...any, turned, pointing, gain });
  if (predicted) known.push(predicted);
  if (known.length === 0) return scale;

  const inScale = (db: number) => Math.min(meter.max, Math.max(meter.min, exactFromDb(db, meter)));
  return {
    low: inScale(Math.min(...known.map(({ value, sd }) => value - SDS * sd - OFF_DB))),
    high: inScale(Math.max(...known.map(({ value, sd }) => value + SDS * sd + OFF_DB))),
    steps,
  };
}
