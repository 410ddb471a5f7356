import type { MeterProfile } from '../model/profile.ts';
import type { Axis } from '../model/turns.ts';

/** Asked of the crew when a report is not complete, or does not fit. */
export const SAY_READING_AGAIN = 'Then say the reading again.';
export const WHAT_NOW = 'Something was turned since then. What does the meter show now?';
export const NO_READING_TO_CORRECT = 'There is no such reading. What does the meter show?';
export const WHAT_IS_WRONG = 'What is wrong? Say "wrong" and the right reading, or "undo".';
export const WHAT_CANNOT = 'Nothing was asked. What can you not do?';
export const WHAT_WENT_WRONG = 'No turn was made yet. What went the wrong way?';
export const NOTHING_TO_UNDO = 'There is nothing to take back.';
export const WHICH_ADJUSTER = 'Which adjuster was turned: horizontal or vertical?';

export const howFar = (axis: Axis): string => `How far did you turn the ${axis}?`;
export const whichWay = (axis: Axis): string =>
  `Which way did you turn the ${axis}: clockwise or anticlockwise?`;

export const offScaleText = (value: number, { min, max }: MeterProfile): string =>
  `Heard ${value}, but this meter only shows ${min} to ${max}. What does it show?`;
