/** What is said to a phone that asks the panel to let it in, and to the panel. */

export const CODE_FORM = 'A code has 6 letters and digits, never 0, O, 1, I or L. Check it again.';
export const CALL_FORM = 'A job word is a word of the radio and three figures, as in KILO 417.';
export const UNKNOWN_CALL =
  'No panel shows this word now. Check it with the person at the panel: it changes when the server starts again.';
export const PANEL_AWAY =
  'The panel phone of this job is not connected, so nobody can answer. Ask again when it is back.';
export const ANOTHER_ASKS =
  'Another phone asks at this moment. Wait until the panel has answered it, then ask again.';
export const NO_MORE_QUESTIONS =
  'Three questions in a row were not answered with yes, so the panel gets none for a quarter of an hour. Scan its square code, or type its code.';
export const ASKED_TOO_OFTEN =
  'Too many questions came from here. Wait some minutes, or scan the square code at the panel.';
export const JOB_CLOSED =
  'The record of this job is signed, so nobody is let in by asking. The panel can still give a code.';
export const NOT_ASKING = 'That phone asks no longer. If it is yours, let it ask again.';
export const ONLY_THE_PANEL = 'Only the panel phone answers who may come in.';
export const QUESTION_UNKNOWN = 'The server does not know this question any more. Ask again.';

export const admittedText = (mark: string): string => `The panel let a phone in that showed ${mark}`;
export const turnedAwayText = (mark: string): string => `The panel turned a phone away that showed ${mark}`;
