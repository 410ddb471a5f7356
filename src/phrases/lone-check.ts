/** The check of a person on a ladder, alone or not. It promises no rescue. */
export const LONE = {
  heading: 'If nothing is heard from you',
  what: 'The phone asks whether you are still there, then asks louder, then shows what you agreed with somebody. It cannot call by itself, and nobody is told unless a finger presses its key: it is no rescue.',
  minutes: 'Ask after so many minutes of silence',
  agreed: 'What was agreed: who to call, and where you are',
  agreedHint: 'It is shown large on this phone, to whoever finds it.',
  number: 'Number to call or text',
  off: 'Without a number of minutes it does not ask.',
  kept: 'Kept on this phone.',
  ask: 'Still there? Say yes.',
  askLouder: 'Are you well? Say yes, or touch the phone.',
  nobody: 'Nobody answers. Please look for the person on the ladder.',
  here: 'I am here',
  call: 'Call',
  text: 'Send a text',
  share: 'Send by another app',
} as const;

export const MINUTES_WRONG = 'Between 2 and 120 minutes, or leave it empty.';

/** What is sent, and what the log keeps. `minutes`: of silence. */
export const loneMessage = (title: string, minutes: number, agreed: string, isAlone: boolean): string =>
  `Nothing was heard for ${minutes} minutes from the person ${isAlone ? 'working alone' : 'on the ladder'} at ${title}.${agreed ? ` ${agreed}` : ''}`;
/** Who is asked: a person alone, or the one at the emitter of a crew of two, whose colleague reads the remark. */
export const loneRemark = (minutes: number, isAlone: boolean): string =>
  isAlone
    ? `Check of the person alone: nobody answered for ${minutes} minutes.`
    : `Still there? Nobody at the emitter answered for ${minutes} minutes. Go and look.`;
export const loneAnswered = (isAlone: boolean): string =>
  isAlone ? 'Check of the person alone: answered again.' : 'Still there? The emitter answered again.';
