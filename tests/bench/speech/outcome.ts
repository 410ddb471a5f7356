import { decide } from '../../../src/conversation/decide.ts';
import { parse } from '../../../src/grammar/parse.ts';
import type { Heard } from '../../../src/speech/heard.ts';
import type { Believed } from './thresholds.ts';

/** `wrong`: what was taken is not what was said. */
export type Outcome = 'right' | 'asked' | 'wrong';

/** What a text means, as a key. Undefined when it is not a sentence of ours. */
export function meaningOf(text: string): string | undefined {
  const understood = parse(text);
  if (understood.kind === 'unclear') return undefined;
  return JSON.stringify(understood.kind === 'understood' ? [understood.intents] : understood.options);
}

/** How the job handles what was heard, compared with what was said. Asking about an ambiguous sentence is right. */
export function judge(said: string, { text, confidence, alternatives }: Heard): Outcome {
  if (text === '') return 'asked';
  const hearing = decide({ via: 'voice', text, confidence, alternatives });
  const meant = meaningOf(said);
  if (hearing.kind === 'taken') return JSON.stringify([hearing.intents]) === meant ? 'right' : 'wrong';
  const asksTheRightThing = parse(said).kind === 'ambiguous' && meaningOf(text) === meant;
  return asksTheRightThing && hearing.kind === 'doubtful' ? 'right' : 'asked';
}

/** Whether a reading would be taken from this. */
export function takesReading({ text, confidence, alternatives }: Heard): boolean {
  if (text === '') return false;
  const hearing = decide({ via: 'voice', text, confidence, alternatives });
  return hearing.kind === 'taken' && hearing.intents.some((intent) => 'reading' in intent);
}

export function takesAnything({ text, confidence, alternatives }: Heard): boolean {
  return text !== '' && decide({ via: 'voice', text, confidence, alternatives }).kind === 'taken';
}

/** The most likely meaning, whether it is right, and how much it is believed. */
export function believed(said: string, { text, alternatives }: Heard): Believed {
  const best = meaningOf(text);
  const belief = alternatives.reduce(
    (sum, one) => sum + (meaningOf(one.text) === best ? one.confidence : 0),
    0,
  );
  return {
    belief: text === '' || best === undefined ? 0 : belief,
    right: best !== undefined && best === meaningOf(said),
  };
}
