import type { Action } from '../model/advice.ts';
import type { Cover } from '../model/checklists.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { PanelIndication } from '../model/reports.ts';
import type { JobSetup } from '../model/setup.ts';
import type { Failed, Settled } from '../visit/issues.ts';
import type { Failure } from '../visit/verdict.ts';
import { figuresText } from './figures.ts';
import { itemText } from './items.ts';

type SayShow = { say: string; show: string };

/** How to put the cover on. The times are common practice, no source. */
export function coverText(how: Cover, { plan }: JobSetup): SayShow {
  switch (how) {
    case 'full':
      return {
        say: 'Fault test: cover the whole receiver at once, with something dull. Say covered at that moment.',
        show: 'Cover all of the receiver at once',
      };
    case 'half':
      return {
        say: 'Alarm test: slowly slide a dull card over half of the receiver. Take more than two seconds. Say half covered when it is there.',
        show: 'Cover half of the receiver, slowly',
      };
    case 'filter': {
      const grade = plan?.filterPercent === undefined ? '' : `${plan.filterPercent} percent `;
      return {
        say: `Alarm test: slowly put the ${grade}test filter in front of the receiver. Take more than two seconds. Say filter on when it is there.`,
        show: `${grade}test filter on, slowly`,
      };
    }
  }
}

const WATCH: Record<PanelIndication, SayShow> = {
  alarm: {
    say: 'Panel: read the meter, then watch the panel. Say alarm, or what it shows, at once.',
    show: 'Watch for alarm',
  },
  fault: {
    say: 'Panel: read the meter, then watch the panel. Say fault, or what it shows, at once.',
    show: 'Watch for fault',
  },
  normal: {
    say: 'Panel: reset it. Say when the panel shows normal.',
    show: 'Watch for normal',
  },
};

export const watchText = ({ expect }: Extract<Action, { kind: 'watch-panel' }>): SayShow => WATCH[expect];

/** Asked when somebody said "covered" but only a part should be covered. */
export const PART_OR_ALL: Record<Exclude<Cover, 'full'>, string> = {
  half: 'Half of it, or all? This test needs half. Say half covered when it is.',
  filter: 'Is the filter on? Say filter on when it is.',
};

export const WHY_FAILED: Record<Failure, string> = {
  'nothing-shown': 'the panel did not show it in time',
  'wrong-indication': 'the panel showed something else',
  'too-early': 'the panel showed it too early',
  'too-late': 'the panel showed it too late',
  'reading-off': 'the reading with the cover on was not as expected',
  'not-restored': 'the panel did not come back to normal in time',
};

/** "Fault test failed: the panel showed it too late (after 41.0 s, set 10.0 s, plus or minus 5.0 s)." */
export function failureText(failed: Failed, meter: MeterProfile): string {
  if (failed.kind === 'test')
    return `Failed: ${itemText({ item: failed.item, done: false, note: failed.note })}.`;
  const rests = figuresText(failed.figures, meter);
  const test = failed.proof === 'alarm' ? 'Alarm test' : 'Fault test';
  return `${test} failed: ${WHY_FAILED[failed.why]}${rests && ` (${rests})`}.`;
}

export const SETTLED: Record<Settled, string> = {
  'passed-since': 'Tested again, and passed.',
  'taken-back': 'The entry it rests on was taken back.',
};
