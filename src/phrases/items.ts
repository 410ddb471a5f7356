import type { ChecklistItem } from '../model/checklists.ts';

interface ItemWords {
  /** A question with the answer yes or no. */
  ask: string;
  /** A few words for very large type. */
  show: string;
  yes: string;
  no: string;
}

/** The checklists as they are asked and said back. Common practice, no source; local rules come first. */
const ITEMS: Record<ChecklistItem, ItemWords> = {
  'outputs-isolated': {
    ask: 'Panel: are the alarm outputs isolated? Say yes or no.',
    show: 'Alarm outputs isolated?',
    yes: 'alarm outputs isolated',
    no: 'alarm outputs not isolated',
  },
  'people-told': {
    ask: 'Panel: who was told that the alarm is out of service? For example, say: told the control room.',
    show: 'Who was told?',
    yes: 'told',
    no: 'nobody told yet',
  },
  'access-inspected': {
    ask: 'Is the ladder or platform inspected, and safe to climb? Say yes or no.',
    show: 'Access equipment inspected?',
    yes: 'access equipment inspected',
    no: 'access equipment not inspected',
  },
  'laser-caution': {
    ask: 'Nobody may look into an aiming laser, here or below. Agreed? Say yes or no.',
    show: 'Nobody looks into a laser: agreed?',
    yes: 'laser caution agreed',
    no: 'laser caution not agreed',
  },
  'path-clear': {
    ask: 'Is the beam path clear from end to end? Say yes or no.',
    show: 'Beam path clear?',
    yes: 'path clear from end to end',
    no: 'path not clear',
  },
  'optics-cleaned': {
    ask: 'Clean the windows of both units as the maker says. Were they cleaned? Say yes or no.',
    show: 'Windows of both units cleaned?',
    yes: 'windows cleaned',
    no: 'windows not cleaned',
  },
  'panel-indication': {
    ask: 'Panel: does the alarm show this pair, in its zone, and no other? Say yes or no.',
    show: 'Right pair and zone on the panel?',
    yes: 'panel shows the right pair and zone',
    no: 'panel does not show the right pair and zone',
  },
  wiring: {
    ask: 'Wiring test: open the line to the panel at the detector, then close it. Did a fault show, and then clear? Say yes or no.',
    show: 'Wiring test: open line gives fault?',
    yes: 'open line gave a fault, and it cleared',
    no: 'wiring test failed',
  },
  'outputs-restored': {
    ask: 'Panel: are the alarm outputs restored, and was everybody told? Say yes or no.',
    show: 'Alarm outputs restored?',
    yes: 'alarm outputs restored',
    no: 'alarm outputs still isolated',
  },
  'covers-on': {
    ask: 'Are the covers on, and is the path clear? Say yes or no.',
    show: 'Covers on?',
    yes: 'covers on',
    no: 'covers not on yet',
  },
  'panel-normal': {
    ask: 'Panel: is it back to normal, without fault or alarm? Say yes or no.',
    show: 'Panel normal?',
    yes: 'panel normal',
    no: 'panel not normal',
  },
};

export const askItem = (item: ChecklistItem): { say: string; show: string } => ({
  say: ITEMS[item].ask,
  show: ITEMS[item].show,
});

/** "alarm outputs isolated", "told: the control room" */
export function itemText({
  item,
  done,
  note,
}: {
  item: ChecklistItem;
  done: boolean;
  note?: string | undefined;
}): string {
  const text = done ? ITEMS[item].yes : ITEMS[item].no;
  return note === undefined ? text : `${text}: ${note}`;
}

export const WHO_WAS_TOLD = 'Who was told? For example, say: told the control room.';

/** Asked when somebody only said "roger" to a question. */
export const IS_THAT_RIGHT = 'Is that right? Say yes or no.';
