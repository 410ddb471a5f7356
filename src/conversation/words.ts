import type { Intent } from '../grammar/intent.ts';
import type { Seat } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import { optionsText, unclearText } from '../phrases/asking.ts';
import { answer } from './answer.ts';
import type { Composer } from './composer.ts';
import { type Decision, decide, type Words } from './decide.ts';
import { act } from './intents.ts';
import type { Speaker } from './speaker.ts';

/** Logs the words as they were received, then what they mean; asks if they could mean two things or none. */
export function hearWords(job: Composer, input: { seat: Seat; re?: Seq } & Words): undefined {
  const { seat, via, text, confidence, alternatives, re } = input;
  const question = job.state.query?.question ?? openQuestion(job);
  const said = job.put(seat, {
    type: 'said',
    seat,
    via,
    text,
    ...(confidence !== undefined && { confidence }),
    ...(alternatives !== undefined && { alternatives: [...alternatives] }),
  });
  const speaker: Speaker = { seat, said, text, ...(re !== undefined && { re }) };
  const decision = decide(input);
  if (decision.kind !== 'taken') {
    ask(job, said, decision);
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
function ask(job: Composer, said: Seq, decision: Exclude<Decision, { kind: 'taken' }>): void {
  if (decision.kind === 'unclear') {
    job.put('engine', { type: 'query', of: said, text: unclearText(decision.unknown) });
    return;
  }
  const values = decision.options.map(onlyValue).filter((value) => value !== undefined);
  const text = optionsText(decision.options, job.state.setup?.meter);
  job.put('engine', {
    type: 'query',
    of: said,
    text,
    ...(values.length === decision.options.length && {
      question: { kind: 'which-value', about: said, options: values },
    }),
  });
}

function onlyValue(intents: Intent[]): number | undefined {
  const [only, ...more] = intents;
  if (only?.kind !== 'reading' || more.length > 0) return undefined;
  return only.reading.kind === 'value' ? only.reading.value : undefined;
}
