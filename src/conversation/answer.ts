import { isSame } from '../formats/same.ts';
import type { Intent } from '../grammar/intent.ts';
import type { Question } from '../model/advice.ts';
import type { Seq } from '../model/ids.ts';
import { valueReading } from '../model/reading.ts';
import { SAY_READING_AGAIN } from '../phrases/questions.ts';
import { countedOf } from '../visit/state.ts';
import { replaceMove, replaceReading } from './amend.ts';
import type { Composer } from './composer.ts';
import { act } from './intents.ts';
import type { Speaker } from './speaker.ts';

type Asked<K extends Question['kind']> = Extract<Question, { kind: K }>;

/** Takes from `intents` what answers `question`, and returns what is left to act on. */
export function answer(job: Composer, question: Question, intents: Intent[], speaker: Speaker): Intent[] {
  const yes = intents.some((intent) => intent.kind === 'yes');
  const no = intents.some((intent) => intent.kind === 'no');
  const others = intents.filter((intent) => intent.kind !== 'yes' && intent.kind !== 'no');
  switch (question.kind) {
    case 'which-value':
      return answerValue(job, question, others, { yes, no }, speaker);
    case 'which-move':
      return answerMove(job, question, others, { yes, no }, speaker);
    case 'is-it-so':
      return answerWhether(job, question, others, { yes, no }, speaker);
  }
}

interface YesNo {
  yes: boolean;
  no: boolean;
}

/**
 * "Fifteen or fifty?" is asked about words that are not yet taken (`about` is what was said), or about a
 * reading that the engine doubts (`about` is that reading).
 */
function answerValue(
  job: Composer,
  q: Asked<'which-value'>,
  others: Intent[],
  yn: YesNo,
  speaker: Speaker,
): Intent[] {
  const doubted = countedOf(job.state).find((fact) => fact.seq === q.about);
  const named = others.find((intent) => intent.kind === 'reading' || intent.kind === 'correct');
  const rest = others.filter((intent) => intent !== named);
  if (doubted?.type !== 'reading') {
    if (named) act(job, { kind: 'reading', reading: named.reading }, speaker);
    else if (yn.yes && q.options.length === 1) {
      act(job, { kind: 'reading', reading: valueReading(q.options[0] as number) }, speaker);
    } else if (yn.yes || yn.no) askAgain(job, speaker.said, SAY_READING_AGAIN);
    return rest;
  }
  if (named && !isSame(named.reading, doubted.reading)) {
    replaceReading(job, speaker.seat, q.about, named.reading, speaker.said);
  } else if (named || yn.yes) confirm(job, q.about, speaker);
  else if (yn.no) retractDoubted(job, q.about, speaker, SAY_READING_AGAIN);
  return rest;
}

/** "Did you turn the vertical one?" Yes takes the first option; naming another move records that one. */
function answerMove(
  job: Composer,
  q: Asked<'which-move'>,
  others: Intent[],
  yn: YesNo,
  speaker: Speaker,
): Intent[] {
  const named = others.find((intent) => intent.kind === 'moved');
  const rest = others.filter((intent) => intent !== named);
  const [option] = q.options;
  if (named) {
    const matches = q.options.filter((o) => named.axis === undefined || named.axis === o.axis);
    const [only] = matches;
    // Naming the adjuster alone is an answer; anything more is a report of its own.
    if (matches.length === 1 && only && named.eighths === undefined && named.way === undefined) {
      replaceMove(job, q.about, only, speaker);
    } else {
      const { said: from, seat } = speaker;
      job.put(seat, { type: 'retract', target: q.about, why: 'correction', from });
      act(job, named, speaker);
    }
  } else if (yn.yes && option) {
    replaceMove(job, q.about, option, speaker);
  } else if (yn.no) confirm(job, q.about, speaker);
  return rest;
}

function answerWhether(
  job: Composer,
  q: Asked<'is-it-so'>,
  others: Intent[],
  yn: YesNo,
  speaker: Speaker,
): Intent[] {
  if (yn.yes) {
    confirm(job, q.about, speaker);
  } else if (yn.no) {
    const { seat, said: from } = speaker;
    if (q.what === 'gain-untouched') job.put(seat, { type: 'gain', change: 'set', from });
    else if (q.what === 'path-clear') job.put(seat, { type: 'path', state: 'blocked', from });
    else retractDoubted(job, q.about, speaker, SAY_READING_AGAIN);
  }
  return others;
}

function confirm(job: Composer, target: Seq, { seat, said: from }: Speaker): void {
  job.put(seat, { type: 'confirm', target, from });
}

function retractDoubted(job: Composer, target: Seq, { seat, said }: Speaker, text: string): void {
  job.put(seat, { type: 'retract', target, why: 'correction', from: said });
  askAgain(job, said, text);
}

function askAgain(job: Composer, of: Seq, text: string): void {
  job.put('engine', { type: 'query', of, text });
}
