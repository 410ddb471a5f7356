import type { AloneWay } from '../model/alone.ts';

export const ALONE_HEADING = 'One person alone';
export const ALONE_RULES =
  'Where the rules of the site or the maker ask for two people, this is not allowed. Ask before you begin.';
export const WHAT_IT_IS_WORTH = 'What its evidence is worth';
export const WHAT_YOU_NEED = 'What you need';
export const HOW_IT_GOES = 'How it goes';

interface AloneWords {
  title: string;
  needs: string;
  goes: readonly string[];
  /** What a supervisor may conclude from its record, and what not. */
  worth: string;
  start: string;
}

export const ALONE_WAYS: Readonly<Record<AloneWay, AloneWords>> = {
  watching: {
    title: 'A second phone watches the meter',
    needs: 'Two phones, and something to prop one of them before the display. The display shows a number.',
    goes: [
      'At the panel: open the job on the phone that stays there.',
      'Scan its square code with the phone that you carry.',
      'Prop the first phone, draw the box round the number, and say once that it reads it right.',
      'Climb. From here on nobody touches the propped phone. The phone that you carry speaks each order.',
    ],
    worth:
      'The same as with two people: every number was on the display when it was taken. The record names the camera beside each, and how sure it was.',
    start: 'Begin with two phones',
  },
  sensing: {
    title: 'A second phone listens to a tone or looks at a lamp',
    needs:
      'Two phones, and something to prop one of them at the panel. A tone or a lamp there that follows the light. No number. A detector that sets its own gain cannot be aligned so.',
    goes: [
      'At the panel: open the job on the phone that stays there.',
      'Scan its square code with the phone that you carry.',
      'Prop the first phone and teach it: show it none, some and plenty.',
      'Climb. The propped phone tells what the light does: rising, falling, steady, nothing, too strong. The phone that you carry speaks each order. Expect about 40 turns.',
    ],
    worth:
      'Weaker than with numbers: accepted on trends, no reading. Each trend was told by a phone, by the profile that you taught it, and the record names both. How strong the signal is, and whether it lies in the band, nobody read. Read it at the panel before you rely on it.',
    start: 'Begin with a tone or a lamp',
  },
  walking: {
    title: 'You walk to the meter',
    needs:
      'This phone only. A way between ladder and meter that you can walk about 10 times. The gain is set beside the meter.',
    goes: [
      'Begin at the meter: read it first.',
      'Do what it says at the emitter, turn by turn, and say "done" each time.',
      'Go to the meter. Say or type the number.',
      'Before each trip it tells you its plan: how many turns, and when the card goes up. It keeps the count.',
    ],
    worth:
      'Both sides of each peak, the blocking check, and a number that holds, with fewer places read than with two people: the number at the peak must be what the others foretold. What the meter did while you were away from it, nobody saw.',
    start: 'Begin with one phone',
  },
  looking: {
    title: 'You see an indicator from the ladder',
    needs:
      'This phone only. A lamp or a tone that follows the light, and that you see or hear from the ladder. No number. A detector that sets its own gain cannot be aligned so.',
    goes: [
      'Set the gain beforehand so that the indicator is neither dark nor at its limit.',
      'Turn as it says, and say "done" each time. Then say only what the light does: rising, falling, steady, nothing, too strong.',
      'It is held against your last look: look well each time, and always from the same place.',
      'Expect about 40 turns. For the blocking check you put a card into the beam and look from the ladder.',
    ],
    worth:
      'Weaker than with numbers: accepted on trends, no reading. Each side of each peak was seen to be darker twice, the light went out behind a card, and then stayed the same. How strong the signal is, and whether it lies in the band, nobody read. Read it at the panel before you rely on it.',
    start: 'Begin with an indicator',
  },
};

/** In the report and on the page of a record. */
export const ALONE_RECORD: Readonly<Record<AloneWay, string>> = {
  watching: 'a second phone read the meter by its camera',
  sensing:
    'accepted on trends, no reading: a second phone told what a tone or a lamp did, by a profile that the same person taught it',
  walking: 'the same person walked to the meter for each number',
  looking: 'accepted on trends, no reading: the same person saw from the ladder what an indicator did',
};

/** Above the form that opens the job. */
export const aloneStartText = (way: AloneWay): string => `One person alone: ${ALONE_RECORD[way]}.`;
