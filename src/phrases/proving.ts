import type { Action, Advice } from '../model/advice.ts';
import type { Cover, UsedCover } from '../model/checklists.ts';
import type { PanelIndication } from '../model/reports.ts';
import type { JobSetup } from '../model/setup.ts';
import { FILTER_MOST_PERCENT } from '../plan/covers.ts';
import type { Proof } from '../visit/attempts.ts';
import type { Failed, Settled } from '../visit/issues.ts';
import type { Failure } from '../visit/verdict.ts';
import { figuresText } from './figures.ts';
import { itemText } from './items.ts';
import { shownToCrew } from './units.ts';

type SayShow = { say: string; show: string };

/** How the cover goes on. The times are common practice, no source. */
export function coverText({ how, filter }: UsedCover, rule: Advice['rule']): SayShow {
  switch (how) {
    case 'full':
      return {
        say: 'Fault test: cover the whole receiver at once, with something dull. Say covered at that moment.',
        show: 'Cover all of the receiver at once',
      };
    case 'half':
      return {
        say: 'Alarm test: slide a dull card over half of the receiver, slowly, in more than two seconds. Half a cover is coarse: be exact. Say half covered when it is there.',
        show: 'Cover half of the receiver, slowly',
      };
    case 'filter': {
      const grade = filter === undefined ? '' : `${filter} percent `;
      const test =
        rule === 'prove-quiet'
          ? 'No alarm must come. Quiet test'
          : rule === 'like-lost-beam'
            ? 'This filter is so strong that a fault may come: only an alarm counts. Alarm test'
            : 'Alarm test';
      return {
        say: `${test}: bring the ${grade}test filter before the receiver, slowly, in more than two seconds. Say ${grade}filter on when it is there.`,
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

/** Behind a filter clearly below the threshold. */
const WATCH_QUIET: SayShow = {
  say: 'Panel: read the meter, then watch the panel. It must stay at normal. Say alarm at once if it comes.',
  show: 'No alarm must come: wait',
};

export const watchText = (
  { expect }: Extract<Action, { kind: 'watch-panel' }>,
  rule: Advice['rule'],
): SayShow => (rule === 'prove-quiet' ? WATCH_QUIET : WATCH[expect]);

/** Read with the path clear, before a cover or after it. */
export const READ_CLEAR: SayShow = {
  say: 'Panel: the path must be clear. What does the meter show?',
  show: 'Path clear: read the meter',
};
export const READ_BEHIND: SayShow = {
  say: 'Panel: leave the cover on. What does the meter show?',
  show: 'Cover on: read the meter',
};

export const beamMovedText = (list: string): SayShow => ({
  say: `The reading with the path clear has fallen since the alignment was accepted. Please check: ${list}. Then say done, and read again. If it stays low, the alignment is made again.`,
  show: `Beam lost or moved. Check: ${list}`,
});

export const ALIGN_AGAIN: SayShow = {
  say: 'The reading stays low: this alignment no longer stands. Aim the emitter by eye, within fifteen centimetres of the receiver. Then say done.',
  show: 'Align again: aim by eye, within 15 cm of the receiver',
};

/** Of a periodic visit. */
export const signalFellText = (list: string): SayShow => ({
  say: `The signal fell since the last visit. Check: ${list}. Then say done.`,
  show: `Less signal than at the last visit. Check: ${list}`,
});

export const likeLostBeamText = (list: string): SayShow => ({
  say: `The only filter here that can bring the alarm is so strong that the detector may take it for a lost beam. Please look ${list}, and enter it in the plan of a new visit. Say done to go on with this one.`,
  show: 'Is there a weaker filter?',
});

/** Above this it looks like a lost beam. */
const notOver = (percent = 0): string =>
  percent < FILTER_MOST_PERCENT ? `, but not over ${FILTER_MOST_PERCENT}` : '';

/** Where no cover at hand can prove the alarm. */
export const strongerFilterText = (percent: number | undefined): SayShow => ({
  say: `No cover here is right for this threshold: bring a filter of at least ${percent} percent${notOver(percent)}, enter it in the plan, and begin a new visit. Restore the alarm outputs before you leave.`,
  show: `Bring a filter of at least ${percent} %`,
});

/** Asked when somebody said "covered" but only a part should be covered. */
export const PART_OR_ALL: Record<Exclude<Cover, 'full'>, string> = {
  half: 'Half of it, or all? This test needs half. Say half covered when it is.',
  filter: 'Is the filter on? Say filter on when it is.',
};

/** Asked when a filter was named that the plan does not have. The number alone would be a reading. */
export const notInKit = (filter: number, kit: readonly number[]): string => {
  const [example] = kit;
  return example === undefined
    ? `A ${filter} percent filter? The plan has no test filter. Take it off, or say half covered if half is covered.`
    : `A ${filter} percent filter? The plan has ${kit.join(', ')} percent. Which is on? Say it whole: ${example} percent filter on.`;
};

export const TEST_NAMES: Record<Proof, string> = {
  quiet: 'Quiet test',
  alarm: 'Alarm test',
  fault: 'Fault test',
};

export const WHY_FAILED: Record<Failure, string> = {
  'nothing-shown': 'the panel did not show it in time',
  'too-sensitive': 'the panel showed an alarm behind a cover that is clearly below the alarm threshold',
  'both-shown': 'the panel showed both alarm and fault',
  'both-when-quiet': 'the panel showed both alarm and fault behind a cover that must bring neither',
  'wrong-indication': 'the panel showed something else',
  'too-early': 'the panel showed it too early',
  'too-late': 'the panel showed it too late',
  'reading-off': 'the reading with the cover on was not as expected',
  'beam-moved':
    'the reading with the path clear has fallen: the beam was lost or moved, and the cover was not wrong',
  'not-restored': 'the panel did not come back to normal in time',
};

/** "Fault test failed: the panel showed it too late (after 41.0 s, set 10.0 s, plus or minus 5.0 s)." */
export function failureText(failed: Failed, setup: JobSetup): string {
  if (failed.kind === 'test')
    return `Failed: ${itemText({ item: failed.item, done: false, note: failed.note })}.`;
  const rests = figuresText(failed.figures, setup.meter, shownToCrew(setup));
  return `${TEST_NAMES[failed.proof]} failed: ${WHY_FAILED[failed.why]}${rests && ` (${rests})`}.`;
}

export const SETTLED: Record<Settled, string> = {
  'passed-since': 'Tested again, and passed.',
  'taken-back': 'The entry it rests on was taken back.',
};
