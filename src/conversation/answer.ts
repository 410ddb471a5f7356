import type { Turn } from '../engine/sample.ts';
import { agree } from '../engine/stay.ts';
import { isSame } from '../formats/same.ts';
import type { Intent } from '../grammar/intent.ts';
import type { Question } from '../model/advice.ts';
import type { Seq } from '../model/ids.ts';
import { type Reading, valueReading } from '../model/reading.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import { questionText } from '../phrases/instruct.ts';
import { SAY_READING_AGAIN, WHOLE_TURN } from '../phrases/questions.ts';
import { LEFT_OUT } from '../phrases/readbacks.ts';
import { turnAskedAbout } from '../visit/asked.ts';
import { countedOf } from '../visit/state.ts';
import { replaceMove, replaceReading } from './amend.ts';
import type { Composer } from './composer.ts';
import { act, disturbed, dropMove, takeReading } from './intents.ts';
import type { Speaker } from './speaker.ts';

type Asked<K extends Question['kind']> = Extract<Question, { kind: K }>;

/** Takes from `intents` what answers `question`, and returns what is left to act on. */
export function answer(job: Composer, question: Question, intents: Intent[], speaker: Speaker): Intent[] {
  const said = (kind: Intent['kind']) => intents.some((intent) => intent.kind === kind);
  const plain = { yes: said('yes'), no: said('no'), unsure: said('unsure') };
  const others = intents.filter(({ kind }) => !PLAIN.has(kind));
  switch (question.kind) {
    case 'which-value':
      return answerValue(job, question, others, plain, speaker);
    case 'which-move':
      return answerMove(job, question, others, plain, speaker);
    case 'is-it-so':
      return answerWhether(job, question, others, plain, speaker);
  }
}

const PLAIN: ReadonlySet<Intent['kind']> = new Set(['yes', 'no', 'unsure']);

interface Plain {
  yes: boolean;
  no: boolean;
  unsure: boolean;
}

/**
 * "Fifteen or fifty?" is asked about words that are not yet taken (`about` is what was said), or about a
 * reading that the engine doubts (`about` is that reading).
 */
function answerValue(
  job: Composer,
  q: Asked<'which-value'>,
  others: Intent[],
  plain: Plain,
  speaker: Speaker,
): Intent[] {
  const doubted = countedOf(job.state).find((fact) => fact.seq === q.about);
  if (doubted?.type === 'reading') {
    return answerDoubt(job, { ...q, reading: doubted.reading }, others, plain, speaker);
  }
  const named = others.find((intent) => intent.kind === 'reading' || intent.kind === 'correct');
  if (named) act(job, { kind: 'reading', reading: named.reading }, speaker);
  else if (plain.yes && q.options.length === 1) {
    act(job, { kind: 'reading', reading: valueReading(q.options[0] as number) }, speaker);
  } else if (plain.yes || plain.no) job.ask(speaker.said, SAY_READING_AGAIN);
  else if (plain.unsure) leaveOut(job, speaker);
  return others.filter((intent) => intent !== named);
}

/**
 * The engine doubts the reading of entry `about`. Said again after the question, within the meter's tolerance, it
 * counts as a yes: it was read twice. One of the options takes its place. Any other number is a new reading, which
 * the engine judges afresh and may ask about once more.
 */
function answerDoubt(
  job: Composer,
  { about, reading, options }: { about: Seq; reading: Reading; options: readonly number[] },
  others: Intent[],
  { yes, no, unsure }: Plain,
  speaker: Speaker,
): Intent[] {
  const meter = job.state.setup?.meter;
  const named = others.find((intent) => intent.kind === 'reading' || intent.kind === 'correct');
  const rest = others.filter((intent) => intent !== named);
  if (named && meter && agree(named.reading, reading, meter)) {
    takeReading(job, named.reading, speaker);
    confirm(job, about, speaker);
  } else if (named && options.some((option) => isSame(named.reading, valueReading(option)))) {
    replaceReading(job, speaker.seat, about, named.reading, speaker.said);
  } else if (named) {
    if (named.kind === 'correct' || no) retract(job, about, speaker);
    act(job, { kind: 'reading', reading: named.reading }, speaker);
  } else if (yes) confirm(job, about, speaker);
  else if (no) {
    retract(job, about, speaker);
    job.ask(speaker.said, SAY_READING_AGAIN);
  } else if (unsure) {
    retract(job, about, speaker);
    leaveOut(job, speaker);
  }
  return rest;
}

/** "Did you turn the vertical one?" Yes is enough where one turn was named; naming another move records that one. */
function answerMove(
  job: Composer,
  q: Asked<'which-move'>,
  others: Intent[],
  { yes, no, unsure }: Plain,
  speaker: Speaker,
): Intent[] {
  const named = others.find((intent) => intent.kind === 'moved');
  const unmade = others.find((intent) => intent.kind === 'not-turned');
  const rest = others.filter((intent) => intent !== named && intent !== unmade);
  const [option, ...more] = q.options;
  const reported = turnAskedAbout(job.state, q);
  if (reported) {
    // Told without a no, and not asked for, a turn is a new one.
    if (named && q.ago !== undefined && !no && !job.state.query) return others;
    const told = named && asTold(named, reported);
    if (told && !isSame(told, reported)) replaceMove(job, q.about, told, speaker);
    else if (unmade) dropMove(job, q.about, speaker);
    else if (yes || told) confirm(job, q.about, speaker);
    else if (no) job.ask(speaker.said, WHOLE_TURN, { meant: q });
    else if (unsure) disturbed(job, 'uncounted-turn', speaker);
    return rest;
  }
  const askWhich = () => {
    const { setup } = job.state;
    if (setup) job.ask(speaker.said, questionText(q, setup.meter).say, { meant: q });
  };
  if (named) {
    const [only, ...rivals] = q.options.filter((each) => isNamed(each, named));
    const isMoreThanAxis = named.eighths !== undefined || named.way !== undefined;
    // A turn told in full is a new one: it cannot stand for one of long ago.
    if (q.ago !== undefined && (isMoreThanAxis || !only)) return others;
    if (only && rivals.length === 0) replaceMove(job, q.about, only, speaker);
    else if (only) askWhich();
    else {
      retract(job, q.about, speaker);
      act(job, named, speaker);
    }
  } else if (unmade) dropMove(job, q.about, speaker);
  else if (yes && more.length > 0) askWhich();
  else if (yes && option) replaceMove(job, q.about, option, speaker);
  else if (no) confirm(job, q.about, speaker);
  else if (unsure) disturbed(job, 'uncounted-turn', speaker);
  return rest;
}

/** What was said of a turn, and what was not said as it was reported. */
const asTold = (said: Extract<Intent, { kind: 'moved' }>, reported: Turn): Turn => {
  const size = said.eighths ?? Math.abs(reported.eighths);
  const isClockwise = said.way === undefined ? reported.eighths > 0 : said.way === 'clockwise';
  return { axis: said.axis ?? reported.axis, eighths: isClockwise ? size : -size };
};

/** What was said of a turn fits this one. "Back" and "left" do not say which way the screw went. */
const isNamed = (
  option: { axis: Axis; eighths: Eighths },
  said: Extract<Intent, { kind: 'moved' }>,
): boolean =>
  (said.axis ?? option.axis) === option.axis &&
  (said.eighths ?? Math.abs(option.eighths)) === Math.abs(option.eighths) &&
  (said.way === undefined || said.way === (option.eighths > 0 ? 'clockwise' : 'anticlockwise'));

function answerWhether(
  job: Composer,
  q: Asked<'is-it-so'>,
  others: Intent[],
  plain: Plain,
  speaker: Speaker,
): Intent[] {
  if (q.what === 'reading') {
    const doubted = countedOf(job.state).find((fact) => fact.seq === q.about);
    if (doubted?.type !== 'reading') return others;
    return answerDoubt(job, { ...q, reading: doubted.reading, options: [] }, others, plain, speaker);
  }
  if (plain.yes) confirm(job, q.about, speaker);
  else if (plain.no) {
    const { seat, said: from } = speaker;
    if (q.what === 'gain-untouched') job.put(seat, { type: 'gain', change: 'set', from });
    else job.put(seat, { type: 'path', state: 'blocked', from });
  } else if (plain.unsure) leaveOut(job, speaker);
  return others;
}

function confirm(job: Composer, target: Seq, { seat, said: from }: Speaker): void {
  job.put(seat, { type: 'confirm', target, from });
}

function retract(job: Composer, target: Seq, { seat, said: from }: Speaker): void {
  job.put(seat, { type: 'retract', target, why: 'correction', from });
}

const leaveOut = (job: Composer, { said }: Speaker): void => job.readback(said, LEFT_OUT);
