import type { Seat } from '../model/facts.ts';
import type { Fate, Miss, Run, Trouble } from '../model/practice.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import { amountGlyph, amountWords, senseWord } from './amounts.ts';

/** Names of what is practised on: they stand wherever a site and a pair stand. */
export const PRACTICE_SITE = 'Practice';
export const PRACTICE_PAIR = 'a simulated pair';

export const PRACTICE_TITLE = 'Practise';
export const PRACTICE_ABOUT =
  'The screens are the real ones. The beam, the meter and the screws are drawn, and nothing is a record. It works without a link.';
export const FIRST_TIME = 'First time: five steps, about a minute';
export const AT_SEAT: Readonly<Record<Seat, string>> = {
  panel: 'At the panel: read the meter',
  emitter: 'At the emitter: turn the screws',
};
export const START_AT: Readonly<Record<Seat, string>> = {
  panel: 'Start at the panel',
  emitter: 'Start at the emitter',
};
export const WITH_TROUBLE = 'With trouble';
export const WHICH_TROUBLE = 'What shall go wrong?';
export const SURPRISE_ME = 'Surprise me';
export const TWO_PHONES = 'On two phones';
export const TWO_PHONES_ABOUT =
  'This phone is at the panel and shows the drawn meter. The other one joins with a code and turns the drawn screws. For this you need the link.';
export const START_TWO_PHONES = 'Start on two phones';
export const leavesJobText = (title: string | undefined): string =>
  `This phone then leaves ${title ?? 'the job it is in'}.`;
export const couldNotOpenText = (why: unknown): string => `Practice could not be opened: ${why}`;

export const TROUBLES: Readonly<Record<Trouble, { name: string; hint: string }>> = {
  flooded: {
    name: 'Too much light',
    hint: 'The meter stands at its end. That number means nothing: say "saturated".',
  },
  'wrong-way': {
    name: 'A turn that goes the wrong way',
    hint: 'Once, a screw goes the other way than meant. Look at it before you say "done"; say "wrong way" if it was.',
  },
  reflection: {
    name: 'A wall that reflects',
    hint: 'The light first comes from a wall. The card in the direct line shows it: the meter does not go to nothing.',
  },
  vibration: {
    name: 'A shaking mount',
    hint: 'The meter never stands still. Say a number from the middle of what you see.',
  },
  misheard: {
    name: 'A number heard wrong',
    hint: 'Once, a number from the panel is heard as another. Listen to the read-back, and correct it.',
  },
};

export const LESSONS: Readonly<Record<Seat, readonly string[]>> = {
  panel: [
    'Read the drawn meter. Type its number, then tap Send.',
    'Your colleague aims the emitter. Watch the meter move, and wait.',
    'When the order says "read", send the new number.',
    'A wrong number sent? Try it: tap Correct, and give the number of the meter.',
    'You need time? Tap Wait, then Go on.',
  ],
  emitter: [
    'The large words are your order. Aim the drawn emitter, then tap Aimed.',
    'Now turn the drawn screw as the large words say.',
    'It is turned? Tap Done.',
    'Hands off. Your colleague reads the meter, and you hear what changed.',
    'Not heard? Tap Say again.',
    'You need both hands? Tap Wait, then Go on.',
  ],
};
const NOT_YET = 'Nothing to do for you yet. Wait for your order.';
/** `waits`: the order on the card is not this seat's. */
export const lessonText = (seat: Seat, done: number, waits: boolean): string =>
  `${done + 1} of ${LESSONS[seat].length}: ${waits ? NOT_YET : LESSONS[seat][done]}`;
export const ALL_LEARNT = 'That is all you need. Go on until "accept", or end here.';

export const CALLED_OUT = 'Your colleague calls out';
export const turnedText = (axis: Axis, eighths: Eighths): string =>
  `${AXIS[axis]}: ${eighths === 0 ? 'not turned' : `${amountGlyph(eighths)} ${senseWord(eighths)}`}`;
const AXIS: Readonly<Record<Axis, string>> = { horizontal: 'Horizontal', vertical: 'Vertical' };
export const turnLabel = (axis: Axis, eighths: Eighths): string =>
  `Turn the ${axis} screw ${amountWords(eighths)} ${senseWord(eighths)}`;

export const NOBODY_JOINS = 'Practice on one phone: nobody else joins it.';
export const WORKING_IT_OUT = 'The same pair is now played with a simulated crew that does what it is asked.';

export const endTitle = (run: Run): string =>
  !run.accepted
    ? 'Ended before it was accepted'
    : run.missed.length === 0
      ? 'Well done'
      : 'Accepted, but look';
export const NOTHING_MISSED = 'Nothing was missed.';

export const MISSES: Readonly<Record<Miss, string>> = {
  overridden: 'It was accepted without its proof.',
  'on-reflection':
    'It was accepted on the light of a wall. On a real pair, smoke in the beam would bring no alarm.',
  'off-peak': 'It was accepted beside the peak: a little dirt, and it loses its signal.',
  'flooded-number': 'A number was said while the meter was at its end.',
  'wrong-number-stood': 'A number that the meter did not show was not put right.',
  'wrong-turn-stood': 'A screw was not turned as reported, and it was not put right.',
  'said-blocked': '"Blocked" was said without a card in the beam. A wall would not have been found.',
  'said-clear': '"Clear" was said while the card was in the beam.',
  'said-aimed': '"Aimed" was said without aiming.',
};

export const FATES: Readonly<Record<Fate, string>> = {
  met: 'mastered',
  missed: 'missed',
  'not-met-yet': 'did not come up',
};

const minutesText = (ms: number): string => {
  const seconds = Math.round(ms / 1000);
  return seconds < 60 ? `${seconds} s` : `${Math.floor(seconds / 60)} min ${seconds % 60} s`;
};

/** The figures of a run, each with its name; the same rows for a person and for the simulated crew. */
export const runRows = (run: Run): readonly (readonly [name: string, value: string])[] => [
  ['Turns', `${run.turns}`],
  ['Readings', `${run.readings}`],
  ['Time', minutesText(run.took)],
  ['Words and taps', `${run.words}`],
  ['Wrong numbers', run.wrong === 0 ? '0' : `${run.wrong}, put right: ${run.putRight}`],
  ['Below the best', `${run.short.toFixed(2)} dB`],
];
export const YOU = 'You';
export const SIMULATED_CREW = 'Crew';
export const CREW_ABOUT =
  'Crew: a simulated one on the same pair. It obeys, and looks again only when asked; 6 s a turn, 2 s a reading (our estimate).';
export const CREW_NOT_DONE = 'The crew had not got there when its time was up.';
export const AGAIN = 'The same again';
export const ANOTHER = 'Practise something else';
