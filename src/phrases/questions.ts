import type { MeterProfile } from '../model/profile.ts';
import { AXES, type Axis } from '../model/turns.ts';

/** Asked of the crew when a report is not complete, or does not fit. */
/** Added to a question that is asked again: another way out each time. */
const WAYS_OUT = [' Or type it, or say "not sure".', ' Or say "wait", look again, then "go on".'];

/** A question that was asked `times` times in a row before. */
export const askedAgain = (question: string, times: number): string =>
  times === 0 ? question : `${question}${WAYS_OUT[(times - 1) % WAYS_OUT.length]}`;

/** Added to a list of causes that was worked through and comes again. */
export const checkedAgain = (list: string, times: number): string =>
  times === 0 ? list : `${list} Or say "stop", and note it.`;

export const SAY_READING_AGAIN = 'Then say the reading again.';
export const WHAT_NOW = 'Something was turned since then. What does the meter show now?';
export const NO_READING_TO_CORRECT = 'There is no such reading. What does the meter show?';
export const WHAT_IS_WRONG = 'What is wrong? Say "wrong" and the right reading, or "undo".';
export const NOT_SURE_OF_WHAT = 'What is not sure? Say what was turned, or "say again".';
export const FIND_OUT = 'Then look first. Say yes or no.';
export const NUMBER_WANTED =
  'A number is needed: the one on the meter at the panel. Or say no signal, or saturated.';
export const WHAT_CANNOT = 'Nothing was asked. What can you not do?';
export const WHAT_WENT_WRONG = 'No turn was made yet. What went the wrong way?';
export const NOTHING_TO_UNDO = 'There is nothing to take back.';
export const WHICH_ADJUSTER = 'Which adjuster was turned: horizontal or vertical?';

/** Whether a question is about a turn that was made: without an answer nobody knows where the screws are. */
export const isAboutTurn = (question: string): boolean =>
  [WHICH_ADJUSTER, WHOLE_TURN, ...AXES.flatMap((axis) => [howFar(axis), whichWay(axis)])].some((each) =>
    question.startsWith(each),
  );

export const WHOLE_TURN =
  'How far was it turned? Say the adjuster, how far and which way: horizontal, half a turn clockwise.';

export const howFar = (axis: Axis): string => `How far did you turn the ${axis}?`;
export const whichWay = (axis: Axis): string =>
  `Which way did you turn the ${axis}: clockwise or anticlockwise?`;

/** "4.5" of a meter that shows whole numbers. */
export const offStepText = (value: number, { resolution }: MeterProfile): string =>
  `Heard ${value}, but this meter shows steps of ${resolution}. What does it show?`;

export const otherUnitText = ({ unit }: MeterProfile): string =>
  `This meter shows ${unit}. What does it show?`;

export const offScaleText = (value: number, { min, max }: MeterProfile): string =>
  `Heard ${value}, but this meter only shows ${min} to ${max}. What does it show?`;
