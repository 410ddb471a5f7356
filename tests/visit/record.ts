import type { ChecklistItem } from '../../src/model/checklists.ts';
import type { Fact } from '../../src/model/facts.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { NO_SIGNAL, type Reading, valueReading } from '../../src/model/reading.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import type { Commission } from '../../src/visit/commission.ts';
import { commissionOf } from '../../src/visit/search.ts';
import { EMPTY, fold, type JobState } from '../../src/visit/state.ts';
import { COUNTS } from '../conversation/table.ts';
import { PLAN } from './bench.ts';

/** Something that happened: what it is called in these tests, the second it happened at, and its fact. */
export type Step = readonly [name: string, second: number, fact: Fact];

const FROM = 1_800_000_000_000;

/** ms of the log's clock. */
export const atSecond = (second: number): number => FROM + second * 1000;

export const SETUP: JobSetup = {
  site: 'Quayside Hall 3',
  pair: 'B2',
  meter: COUNTS,
  adjusters: NEUTRAL_ADJUSTERS,
  scope: 'commissioning',
  plan: PLAN,
};

// What a crew reports, as facts.
export const accepted: Fact = { type: 'accept', reading: valueReading(140) };
export const reads = (reading: Reading): Fact => ({ type: 'reading', reading });
export const covered = (how: 'partial' | 'blocked'): Fact => ({ type: 'path', state: how });
export const uncovered: Fact = { type: 'path', state: 'clear' };
export const panel = (shows: 'alarm' | 'fault' | 'normal'): Fact => ({ type: 'panel', shows });
export const turned: Fact = { type: 'move', axis: 'vertical', eighths: 2 };
export const answered = (
  list: 'before' | 'tests' | 'after',
  item: ChecklistItem,
  { done = true, note }: { done?: boolean; note?: string } = {},
): Fact => ({ type: 'item', list, item, done, ...(note !== undefined && { note }) });

/** A whole visit with nothing left out: an alarm after 10 s, a fault after 20 s, all back in service. */
export const WHOLE_VISIT: readonly Step[] = [
  ['the outputs isolated', 0, answered('before', 'outputs-isolated')],
  ['people told', 5, answered('before', 'people-told', { note: 'Asha at the gate' })],
  ['the access inspected', 10, answered('before', 'access-inspected')],
  ['the laser caution', 15, answered('before', 'laser-caution')],
  ['the path looked along', 20, answered('before', 'path-clear')],
  ['the alignment accepted', 60, accepted],
  ['read clear before half the cover', 95, reads(valueReading(140))],
  ['half covered', 100, covered('partial')],
  ['read behind half the cover', 105, reads(valueReading(70))],
  ['the alarm', 110, panel('alarm')],
  ['the right zone seen', 112, answered('tests', 'panel-indication')],
  ['half uncovered', 115, uncovered],
  ['normal after the alarm', 120, panel('normal')],
  ['read clear between the covers', 125, reads(valueReading(140))],
  ['all covered', 130, covered('blocked')],
  ['read behind the whole cover', 135, reads(NO_SIGNAL)],
  ['the fault', 150, panel('fault')],
  ['all uncovered', 155, uncovered],
  ['normal after the fault', 160, panel('normal')],
  ['read clear after the whole cover', 165, reads(valueReading(140))],
  ['the wire broken and seen', 170, answered('tests', 'wiring')],
  ['the final reading', 180, reads(valueReading(140))],
  ['the outputs restored', 190, answered('after', 'outputs-restored')],
  ['the covers on', 195, answered('after', 'covers-on')],
  ['the panel at normal', 200, answered('after', 'panel-normal')],
];

/** When the whole visit is looked at, unless a test says otherwise: long after. Seconds. */
export const LATER = 9_999;

const named = (steps: readonly Step[], name: string): number => {
  const i = steps.findIndex(([each]) => each === name);
  if (i < 0) throw new Error(`no step is called "${name}"`);
  return i;
};

/** Without the steps of these names. */
export const without = (...names: string[]): Step[] => {
  for (const name of names) named(WHOLE_VISIT, name);
  return WHOLE_VISIT.filter(([name]) => !names.includes(name));
};

/** With one step's fact put in the place of what the crew reported. */
export const instead = (name: string, fact: Fact): Step[] => {
  const steps = [...WHOLE_VISIT];
  const i = named(steps, name);
  steps[i] = [name, (steps[i] as Step)[1], fact];
  return steps;
};

/** With more that happened right after the step of that name, or at the very end. */
export const followedBy = (
  more: Fact[],
  after = 'the panel at normal',
  steps: readonly Step[] = WHOLE_VISIT,
): Step[] => {
  const i = named(steps, after);
  const second = (steps[i] as Step)[1];
  return [
    ...steps.slice(0, i + 1),
    ...more.map((fact): Step => ['', second + 1, fact]),
    ...steps.slice(i + 1),
  ];
};

/** The job after these steps; entry 0 opens it, and the first step is entry 1. */
export const jobAfter = (steps: readonly Step[], setup: JobSetup = SETUP): JobState =>
  [['', 0, { type: 'opened', setup, logVersion: 1 }] as Step, ...steps].reduce(
    (state, [, second, fact], seq) => fold(state, { seq, at: atSecond(second), actor: 'panel', fact }),
    EMPTY,
  );

export const commissionAfter = (steps: readonly Step[], setup: JobSetup = SETUP): Commission =>
  commissionOf(jobAfter(steps, setup)) as Commission;

/** The entry of the step of that name. */
export const seqOf = (name: string, steps: readonly Step[] = WHOLE_VISIT): number => named(steps, name) + 1;
