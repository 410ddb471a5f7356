import type { Intent } from '../grammar/intent.ts';
import type { Seat } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import type { KeptSound } from '../model/sound.ts';
import type { TurnSoFar } from '../model/turns.ts';
import { optionsText, unclearText } from '../phrases/asking.ts';
import { otherUnitText } from '../phrases/questions.ts';
import { answer } from './answer.ts';
import type { Composer } from './composer.ts';
import { type Decision, decide, type Words } from './decide.ts';
import { wouldEnd } from './ending.ts';
import { act } from './intents.ts';
import { mayCount } from './look.ts';
import type { Speaker } from './speaker.ts';

/** Logs the words as they were received, then what they mean; asks if they could mean two things or none. */
export function hearWords(
  job: Composer,
  input: { seat: Seat; re?: Seq; sound?: KeptSound } & Words,
): undefined {
  const { seat, via, text, language, confidence, alternatives, camera, sensor, sound, re } = input;
  const { query, setup } = job.state;
  const question = query?.question ?? openQuestion(job);
  const decision = decide(input, {
    ...(setup && { meter: setup.meter }),
    ...(query?.turn && { asksTurn: true }),
    ends: (intents) => wouldEnd(job.state, intents, re),
    isAsked: (options) => query?.text.startsWith(optionsText(options, setup?.meter)) ?? false,
  });
  const said = job.put(seat, {
    type: 'said',
    seat,
    via,
    text,
    ...(language && { language }),
    ...(confidence !== undefined && { confidence }),
    ...(alternatives !== undefined && { alternatives: [...alternatives] }),
    ...(camera && { camera }),
    ...(sensor && { sensor }),
    ...(sound && { sound }),
  });
  const speaker: Speaker = {
    seat,
    said,
    text,
    ...(re !== undefined && { re }),
    ...(query && { asked: query.text }),
    ...(query?.turn && { turn: query.turn }),
    ...(sensor && { sensor }),
  };
  if (sensor && !mayCount(job, speaker)) return;
  if (decision.kind !== 'taken') {
    ask(job, input, said, decision, query?.turn);
    return;
  }
  const left = question ? answer(job, question, decision.intents, speaker) : decision.intents;
  for (const intent of left) act(job, intent, speaker);
}

/** The engine's own question, while it is the present instruction. */
function openQuestion(job: Composer) {
  const action = job.state.instruction?.advice.action;
  return action?.kind === 'ask' ? action.question : undefined;
}

/** Asks what was said. Only values can be answered by "yes" or by choosing. */
function ask(
  job: Composer,
  words: Words,
  said: Seq,
  decision: Exclude<Decision, { kind: 'taken' }>,
  turn: TurnSoFar | undefined,
): void {
  const meter = job.state.setup?.meter;
  if (decision.kind === 'unclear') {
    const text =
      meter && isInOtherUnit(words, decision) ? otherUnitText(meter) : unclearText(decision.unknown);
    job.ask(said, text, { turn });
    return;
  }
  const values = decision.options.map(onlyValue).filter((value) => value !== undefined);
  const meant = { kind: 'which-value' as const, about: said, options: values };
  job.ask(
    said,
    optionsText(decision.options, meter),
    values.length === decision.options.length ? { meant } : { turn },
  );
}

/** A reading on another meter than this one: "fifty volts" where it shows percent. */
function isInOtherUnit(words: Words, { unknown }: Extract<Decision, { kind: 'unclear' }>): boolean {
  const elsewhere = unknown.length === 0 ? decide(words) : undefined;
  return elsewhere?.kind === 'taken' && elsewhere.intents.some(({ kind }) => kind === 'reading');
}

function onlyValue(intents: Intent[]): number | undefined {
  const [only, ...more] = intents;
  if (only?.kind !== 'reading' || more.length > 0) return undefined;
  return only.reading.kind === 'value' ? only.reading.value : undefined;
}
