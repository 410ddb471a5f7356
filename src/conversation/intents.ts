import { isSame } from '../formats/same.ts';
import type { Intent } from '../grammar/intent.ts';
import type { Question } from '../model/advice.ts';
import { hasNoNumbers } from '../model/alone.ts';
import type { SearchFact } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import { lastOf } from '../model/placed.ts';
import { type Reading, valueReading } from '../model/reading.ts';
import type { DisturbedWhy } from '../model/reports.ts';
import { otherAxis } from '../model/turns.ts';
import { AFTERWARDS } from '../phrases/cautions.ts';
import { movedText, searchFactText } from '../phrases/facts.ts';
import { questionText } from '../phrases/instruct.ts';
import { notProvenText } from '../phrases/missing.ts';
import { NOTHING_ASKED, ORDER_WAITS, READING_WANTED } from '../phrases/notices.ts';
import { notInKit, PART_OR_ALL } from '../phrases/proving.ts';
import {
  FIND_OUT,
  isAboutTurn,
  NO_READING_TO_CORRECT,
  NOT_SURE_OF_WHAT,
  NOTHING_TO_UNDO,
  NUMBER_WANTED,
  WHAT_CANNOT,
  WHAT_IS_WRONG,
  WHAT_NOW,
  WHAT_WENT_WRONG,
  WHOLE_TURN,
} from '../phrases/questions.ts';
import {
  DONE,
  LEAD,
  LEFT_OUT,
  type Lead,
  NO_INSTRUCTION,
  NOT_TURNED,
  noted,
  readBack,
  STOPPED,
  sentence,
  takenBack,
  WAITING,
} from '../phrases/readbacks.ts';
import { changeText, decimals, readingText } from '../phrases/readings.ts';
import { kitOf } from '../plan/covers.ts';
import { isCommissioning } from '../visit/commission.ts';
import { acceptable } from '../visit/periodic.ts';
import { commissionOf, shownLast } from '../visit/search.ts';
import { countedOf } from '../visit/state.ts';
import { lastReported, offScale, replaceMove, replaceReading, takeBack } from './amend.ts';
import { answerItem, askedItem } from './checklist-answer.ts';
import type { Composer } from './composer.ts';
import { creditedInstruction, deedOf, usedCover } from './credit.ts';
import { correctionRefused, lookRefused, numberRefused } from './look.ts';
import { moveOf } from './moves.ts';
import type { Speaker } from './speaker.ts';

type Rule<K extends Intent['kind']> = (
  job: Composer,
  intent: Extract<Intent, { kind: K }>,
  speaker: Speaker,
) => void;

/** Carries out one intent: facts, a readback, or a question. One rule for each kind, in the order of `Intent`. */
export function act(job: Composer, intent: Intent, speaker: Speaker): void {
  (RULES[intent.kind] as Rule<Intent['kind']>)(job, intent, speaker);
}

const RULES: { [K in Intent['kind']]: Rule<K> } = {
  reading(job, { reading }, speaker) {
    const impossible = job.state.setup && offScale(reading, job.state.setup.meter);
    const noLook = reading.kind === 'value' ? numberRefused(job) : lookRefused(job, speaker);
    // Nobody knows yet where the screw is, so nobody knows what the reading belongs to.
    if (speaker.asked && isAboutTurn(speaker.asked))
      job.ask(speaker.said, job.state.asked?.text ?? speaker.asked, { turn: speaker.turn });
    else if (noLook) ask(job, speaker, noLook);
    else if (impossible) askOffScale(job, speaker, reading, impossible);
    else if (isOutOfDate(job, speaker)) ask(job, speaker, WHAT_NOW);
    else takeReading(job, reading, speaker);
  },

  rough(job, { value }, speaker) {
    const meter = job.state.setup?.meter;
    if (!meter) return;
    const impossible = numberRefused(job) ?? offScale(valueReading(value), meter);
    if (impossible) return ask(job, speaker, impossible);
    const question: Question = { kind: 'which-value', about: speaker.said, options: [value] };
    job.ask(speaker.said, questionText(question, meter).say, { meant: question });
  },

  correct(job, { reading, not }, speaker) {
    const target = not === undefined ? job.state.reading : lastEqual(job, not);
    const impossible = job.state.setup && offScale(reading, job.state.setup.meter);
    const noCorrection = correctionRefused(job);
    if (noCorrection) ask(job, speaker, noCorrection);
    else if (impossible) ask(job, speaker, impossible);
    else if (target) replaceReading(job, speaker.seat, target.seq, reading, speaker.said);
    else ask(job, speaker, NO_READING_TO_CORRECT);
  },

  trend(job, { trend }, speaker) {
    const isLook = hasNoNumbers(job.state.setup?.alone);
    const tooSoon = lookRefused(job, speaker);
    if (tooSoon) return ask(job, speaker, tooSoon);
    if (isLook && isOutOfDate(job, speaker)) return ask(job, speaker, WHAT_NOW);
    const isFirst = speaker.sensor && speaker.sensor.against === undefined;
    const first = isFirst ? { first: true as const } : {};
    report(job, { type: 'trend', trend, ...first, from: speaker.said }, speaker, LEAD.heard);
    if (isLook) return;
    // One may come while it settles; from the second on nobody has said a number yet.
    if (trendsSinceReading(job) >= 2) ask(job, speaker, NUMBER_WANTED);
  },

  done(job, _, speaker) {
    const item = askedItem(job, speaker);
    if (item) return answerItem(job, { type: 'item', ...item, done: true }, speaker);
    const instruction = creditedInstruction(job.state, speaker.re);
    const deed = instruction && deedOf(instruction, speaker.said);
    if (deed) job.readback(job.put(speaker.seat, deed), DONE);
    else job.notice('nothing-asked', NOTHING_ASKED);
  },

  moved(job, moved, speaker) {
    const move = moveOf(job.state, moved, speaker);
    if (move.kind === 'ask') job.ask(speaker.said, move.text, { turn: move.turn });
    else report(job, { type: 'move', ...move.move, from: speaker.said }, speaker, LEAD.heard);
  },

  gain(job, { change, to }, speaker) {
    const fact: SearchFact = { type: 'gain', change, from: speaker.said, ...(to !== undefined && { to }) };
    report(job, fact, speaker, LEAD.heard);
  },

  path(job, { state, by, filter }, speaker) {
    const kit = kitOf(job.state.setup?.plan);
    if (filter !== undefined && !kit.includes(filter)) return ask(job, speaker, notInKit(filter, kit));
    const action = creditedInstruction(job.state, speaker.re)?.advice.action;
    // People also say "covered" for a half cover, and the test depends on which it is.
    if (state === 'blocked' && action?.kind === 'cover' && action.how !== 'full') {
      return ask(job, speaker, PART_OR_ALL[action.how]);
    }
    const item = askedItem(job, speaker);
    const part = action?.kind === 'cover' && action.how !== 'full' ? usedCover(action) : undefined;
    const asked = state === 'partial' ? part : undefined;
    // What was said to cover it counts, and not what was asked for.
    const said = by && { how: by, ...(filter !== undefined && { filter }) };
    const cover = said && (said.how !== asked?.how || said.filter !== undefined) ? said : asked;
    report(job, { type: 'path', state, ...(cover && { cover }), from: speaker.said }, speaker, 'Heard:');
    if (item?.item === 'path-clear' && state === 'clear') {
      answerItem(job, { type: 'item', ...item, done: true }, speaker);
    }
  },

  panel(job, { shows }, speaker) {
    const item = askedItem(job, speaker);
    report(job, { type: 'panel', shows, from: speaker.said }, speaker, LEAD.heard);
    if (item?.item === 'panel-normal') {
      answerItem(job, { type: 'item', ...item, done: shows === 'normal' }, speaker);
    }
  },

  told(job, { who }, speaker) {
    answerItem(job, { type: 'item', list: 'before', item: 'people-told', done: true, note: who }, speaker);
  },

  swap(job, { axis }, speaker) {
    const current = lastOf(countedOf(job.state), 'move')?.axis ?? 'horizontal';
    report(
      job,
      { type: 'choice', axis: axis ?? otherAxis(current), from: speaker.said },
      speaker,
      LEAD.heard,
    );
  },

  undo(job, _, speaker) {
    const last = lastReported(job);
    if (last) takeBack(job, speaker.seat, last.seq, speaker.said);
    else ask(job, speaker, NOTHING_TO_UNDO);
  },

  yes(job, _, speaker) {
    const item = askedItem(job, speaker);
    if (item) answerItem(job, { type: 'item', ...item, done: true }, speaker);
    else if (job.state.held && speaker.seat === 'emitter') RULES.resume(job, { kind: 'resume' }, speaker);
    // Otherwise nobody asked: it is an acknowledgement, and only its words are logged.
  },

  no(job, _, speaker) {
    const item = askedItem(job, speaker);
    if (item) return answerItem(job, { type: 'item', ...item, done: false }, speaker);
    ask(job, speaker, WHAT_IS_WRONG);
  },

  unsure(job, _, speaker) {
    if (askedItem(job, speaker)) return ask(job, speaker, FIND_OUT);
    if (speaker.asked === undefined) return ask(job, speaker, NOT_SURE_OF_WHAT);
    if (isAboutTurn(speaker.asked)) disturbed(job, 'uncounted-turn', speaker);
    else job.readback(speaker.said, LEFT_OUT);
  },

  why(job, _, speaker) {
    const { instruction } = job.state;
    job.readback(instruction?.seq ?? speaker.said, instruction?.why ?? NO_INSTRUCTION);
  },

  repeat(job, _, speaker) {
    const { turn } = speaker;
    if (turn && job.state.asked) return job.ask(speaker.said, job.state.asked.text, { turn });
    const { query, instruction } = job.state;
    const again = query ? query.text : instruction?.say;
    job.readback(query?.seq ?? instruction?.seq ?? speaker.said, again ?? NO_INSTRUCTION);
  },

  wait(job, _, speaker) {
    if (job.state.paused) return;
    job.put(speaker.seat, { type: 'pause', from: speaker.said });
    job.readback(speaker.said, WAITING);
  },

  resume(job, _, speaker) {
    if (job.state.stopped) RULES.start(job, { kind: 'start' }, speaker);
    else if (mayResume(job, speaker)) job.put(speaker.seat, { type: 'resume', from: speaker.said });
  },

  cannot(job, { why }, speaker) {
    const instruction = creditedInstruction(job.state, speaker.re);
    if (!instruction) return ask(job, speaker, WHAT_CANNOT);
    const { action } = instruction.advice;
    report(
      job,
      {
        type: 'cannot',
        why,
        instruction: instruction.seq,
        ...(action.kind === 'turn'
          ? { turn: { axis: action.axis, eighths: action.eighths } }
          : { order: action.kind }),
        ...(action.kind === 'gain' && { gain: action.change }),
        from: speaker.said,
      },
      speaker,
      LEAD.heard,
    );
  },

  'wrong-way'(job, _, speaker) {
    const { said: from } = speaker;
    const asked = creditedInstruction(job.state, speaker.re);
    if (asked?.advice.action.kind === 'turn') {
      const { axis, eighths } = asked.advice.action;
      const move: SearchFact = { type: 'move', axis, eighths: -eighths, instruction: asked.seq, from };
      return report(job, move, speaker, LEAD.otherWay);
    }
    const last = lastOf(countedOf(job.state), 'move');
    if (!last) return ask(job, speaker, WHAT_WENT_WRONG);
    replaceMove(job, last.seq, { axis: last.axis, eighths: -last.eighths }, speaker);
  },

  'wrong-screw'(job, _, speaker) {
    const { said: from } = speaker;
    const asked = creditedInstruction(job.state, speaker.re);
    if (asked?.advice.action.kind === 'turn') {
      const { axis, eighths } = asked.advice.action;
      const move: SearchFact = {
        type: 'move',
        axis: otherAxis(axis),
        eighths,
        instruction: asked.seq,
        from,
      };
      return report(job, move, speaker, LEAD.otherScrew);
    }
    const last = lastOf(countedOf(job.state), 'move');
    if (!last) return ask(job, speaker, WHAT_WENT_WRONG);
    replaceMove(job, last.seq, { axis: otherAxis(last.axis), eighths: last.eighths }, speaker);
  },

  'not-turned'(job, _, speaker) {
    const asked = creditedInstruction(job.state, speaker.re);
    const last = lastOf(countedOf(job.state), 'move');
    if (asked?.advice.action.kind === 'turn' || !last) job.readback(speaker.said, NOT_TURNED);
    else dropMove(job, last.seq, speaker);
  },

  miscounted(job, _, speaker) {
    const asked = creditedInstruction(job.state, speaker.re);
    const last = lastOf(countedOf(job.state), 'move');
    // Counted as it was reported, the turn would be wrong from here on.
    if (asked?.advice.action.kind !== 'turn' && last) disturbed(job, 'uncounted-turn', speaker);
    else ask(job, speaker, WHOLE_TURN);
  },

  knocked(job, _, speaker) {
    disturbed(job, 'knocked', speaker);
  },

  'ask-reading'(job) {
    job.notice('reading-wanted', READING_WANTED);
  },

  accept(job, _, speaker) {
    const { setup } = job.state;
    const reading = shownLast(job.state);
    const commission = commissionOf(job.state);
    if (!commission || !setup) return;
    const { missing, kept } = acceptable(commission, job.now);
    if (!reading || missing.length > 0) {
      return job.notice('not-proven', notProvenText(missing, setup));
    }
    const accept = {
      type: 'accept',
      reading,
      ...(kept && { kept }),
      from: speaker.said,
    } as const;
    report(job, accept, speaker, kept ? LEAD.kept : LEAD.accepted);
    if (!isCommissioning(commission)) job.notice('afterwards', AFTERWARDS);
  },

  stop(job, _, speaker) {
    if (job.state.stopped) return;
    job.put(speaker.seat, { type: 'stopped', from: speaker.said });
    job.readback(speaker.said, STOPPED);
  },

  start(job, _, speaker) {
    if (job.state.stopped) job.put(speaker.seat, { type: 'restarted', from: speaker.said });
    else RULES.resume(job, { kind: 'resume' }, speaker);
  },

  remark(job, { text }, speaker) {
    remark(job, text, speaker);
  },
};

/** What waits for the emitter goes on only when somebody there says so. */
function mayResume(job: Composer, { seat, said }: Speaker): boolean {
  const { paused, held } = job.state;
  if (held && seat !== 'emitter') job.readback(said, ORDER_WAITS);
  return paused && (!held || seat === 'emitter');
}

/** "Two fifty" on a meter of volts may be 2.50: ask, never take it. */
function askOffScale(job: Composer, { said }: Speaker, reading: Reading, text: string): void {
  const meter = job.state.setup?.meter;
  const value = meter && reading.kind === 'value' ? reading.value / 10 ** decimals(meter) : undefined;
  const fits = meter && value !== undefined && !offScale(valueReading(value), meter);
  if (fits) {
    const question: Question = { kind: 'which-value', about: said, options: [value] };
    job.ask(said, questionText(question, meter).say, { meant: question });
  } else job.ask(said, text);
}

/** Logs a reading, and reads it back with what changed: a number heard wrong then stands out. */
export function takeReading(job: Composer, reading: Reading, { seat, said: from }: Speaker): void {
  const meter = job.state.setup?.meter;
  if (!meter) return;
  const before = comparable(job);
  const seq = job.put(seat, { type: 'reading', reading, from });
  const change =
    before !== undefined && reading.kind === 'value' ? [changeText(reading.value, before, meter)] : [];
  job.readback(seq, sentence([readingText(reading, meter), ...change]));
}

/** The last number, while neither the gain nor the path was changed since. */
function comparable(job: Composer): number | undefined {
  const last = countedOf(job.state).findLast(({ type }) => ALTERS.has(type));
  return last?.type === 'reading' && last.reading.kind === 'value' ? last.reading.value : undefined;
}

const ALTERS: ReadonlySet<SearchFact['type']> = new Set(['reading', 'gain', 'path', 're-aimed', 'disturbed']);

const trendsSinceReading = (job: Composer): number => {
  const counted = countedOf(job.state);
  return counted
    .slice(counted.findLastIndex(({ type }) => type === 'reading') + 1)
    .filter(({ type }) => type === 'trend').length;
};

/** A turn that was not made as it was reported no longer counts. */
export function dropMove(job: Composer, target: Seq, { seat, said: from }: Speaker): void {
  const move = countedOf(job.state).find((fact) => fact.seq === target);
  const seq = job.put(seat, { type: 'retract', target, why: 'correction', from });
  if (move?.type === 'move') job.readback(seq, takenBack(movedText(move.axis, move.eighths)));
}

/** Nobody knows where the screws are: the search begins again from here. */
export function disturbed(job: Composer, why: DisturbedWhy, speaker: Speaker): void {
  report(job, { type: 'disturbed', why, from: speaker.said }, speaker, LEAD.heard);
}

/** The speaker's screen did not yet show something that changed the reading: a phone with a bad link. */
function isOutOfDate({ state }: Composer, { re, said }: Speaker): boolean {
  const touch = countedOf(state).findLast((fact) => TOUCHES.has(fact.type) && fact.seq < said);
  return re !== undefined && touch !== undefined && touch.seq > re;
}

const TOUCHES: ReadonlySet<SearchFact['type']> = new Set(['move', 'gain', 'path', 're-aimed', 'disturbed']);

/** Logs a fact and reads back what was understood. */
function report(job: Composer, fact: SearchFact, { seat }: Speaker, lead: Lead): void {
  const meter = job.state.setup?.meter;
  if (!meter) return;
  const seq = job.put(seat, fact);
  job.readback(seq, readBack(lead, searchFactText(fact, meter)));
}

function remark(job: Composer, text: string, { seat, said }: Speaker): void {
  const seq = job.put(seat, { type: 'remark', seat, text, from: said });
  job.readback(seq, noted(text));
}

const ask = (job: Composer, { said }: Speaker, text: string): void => job.ask(said, text);

function lastEqual(job: Composer, not: Extract<Intent, { kind: 'reading' }>['reading']) {
  return countedOf(job.state).findLast((fact) => fact.type === 'reading' && isSame(fact.reading, not));
}
