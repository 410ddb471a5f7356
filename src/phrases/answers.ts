import type { Action, Question } from '../model/advice.ts';
import type { MeterProfile } from '../model/profile.ts';
import { WORDS } from './buttons.ts';
import { movedText } from './facts.ts';
import { valueText } from './readings.ts';

/** One button under an instruction: its label and the words it says. */
export interface Answer {
  label: string;
  words: string;
  /** The best outcome: the largest button. */
  main?: boolean;
}

const main = (label: string, words: string): Answer => ({ label, words, main: true });

const PANEL_SHOWS = [
  { shows: 'alarm', label: 'Alarm', words: WORDS.panelAlarm },
  { shows: 'fault', label: 'Fault', words: WORDS.panelFault },
  { shows: 'normal', label: 'Normal', words: WORDS.panelNormal },
];

/** All that an indicator without a number can do. */
const LOOKS: Answer[] = [
  { label: 'Rising', words: WORDS.rising },
  { label: 'Steady', words: WORDS.steady },
  { label: 'Falling', words: WORDS.falling },
  { label: 'Nothing', words: WORDS.noSignal },
  { label: 'Too strong', words: WORDS.saturated },
  { label: 'Keeps changing', words: WORDS.wandering },
];

/** The answers to an instruction. Those that fit any instruction, like "wait", belong to the screen. */
export function answersTo(action: Action, meter: MeterProfile): Answer[] {
  switch (action.kind) {
    case 'turn':
      return [main('Done', WORDS.done)];
    case 'gain':
      return [main('Gain is set', WORDS.done)];
    case 're-aim':
      return [main('Aimed', WORDS.done)];
    case 'check':
      return [main('All checked', WORDS.done)];
    case 'block':
      return [main('It is covered', WORDS.blocked)];
    case 'cover':
      return [main('It is covered', WORDS.done)];
    case 'unblock':
    case 'uncover':
      return [main('It is clear', WORDS.clear)];
    case 'confirm-item':
      // The name of the person who was told matters: it is typed or spoken, and a yes is not enough.
      if (action.item === 'people-told') return [{ label: 'Nobody yet', words: WORDS.no }];
      return [main('Yes', WORDS.yes), { label: 'No', words: WORDS.no }];
    case 'watch-panel':
      return PANEL_SHOWS.map((answer) => ({ ...answer, main: answer.shows === action.expect }));
    case 'ask':
      return answersToQuestion(action.question, meter);
    case 'offer-accept':
      return [main('Accept', WORDS.accept)];
    case 'read':
      return action.as === 'trend' ? LOOKS : [];
    case 'hold':
    case 'settle-issue':
    case 'offer-sign':
    case 'finished':
      return [];
  }
}

/** The way out of any question: nothing is taken down. */
const UNSURE: Answer = { label: 'Not sure', words: WORDS.unsure };

export function answersToQuestion(question: Question, meter: MeterProfile): Answer[] {
  const named = optionsOf(question, meter);
  const [only] = named;
  if (named.length > 1)
    return [...named.map((name) => main(name, name)), { label: 'Neither', words: WORDS.no }, UNSURE];
  return [main(only ? `Yes, ${only}` : 'Yes', WORDS.yes), { label: 'No', words: WORDS.no }, UNSURE];
}

function optionsOf(question: Question, meter: MeterProfile): string[] {
  switch (question.kind) {
    case 'which-value':
      return question.options.map((value) => valueText(value, meter));
    case 'which-move':
      return question.options.map(({ axis, eighths }) => movedText(axis, eighths));
    case 'is-it-so':
      return [];
  }
}
