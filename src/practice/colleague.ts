import { agree } from '../engine/stay.ts';
import type { Action, Question } from '../model/advice.ts';
import type { Seat } from '../model/facts.ts';
import type { HandAct } from '../model/practice.ts';
import { NO_SIGNAL } from '../model/reading.ts';
import { WORDS } from '../phrases/buttons.ts';
import { movedText } from '../phrases/facts.ts';
import { readingText, valueText } from '../phrases/readings.ts';
import { MOVE_MS, SAY_MS } from '../simulator/crew.ts';
import { gainFor } from '../simulator/pair.ts';
import { turnAskedAbout } from '../visit/asked.ts';
import type { JobState } from '../visit/state.ts';
import type { Hall } from './hall.ts';
import { shownBy } from './meter.ts';

/** What a simulated colleague does about the present instruction, and when: ms since 1970. */
export interface Deed {
  readonly seat: Seat;
  readonly at: number;
  readonly acts: readonly HandAct[];
  readonly says: string;
}

/** Somebody whose words were not taken tries once more after this time. */
export const AGAIN_MS = 8_000;

/** Does at once and honestly what is asked. Undefined when this seat has nothing to do now. */
export function nextDeed(seat: Seat, job: JobState, hall: Hall): Deed | undefined {
  const { instruction } = job;
  if (!instruction || job.paused || job.stopped || job.accepted) return undefined;
  const { action, to } = instruction.advice;
  if (to !== 'both' && to !== seat) return undefined;
  const done = seat === 'panel' ? atPanel(action, job, hall) : atEmitter(action, job, hall);
  if (!done) return undefined;
  const { after, says, acts = [] } = done;
  return { seat, at: instruction.at + after, acts, says };
}

interface Done {
  after: number;
  says: string;
  acts?: HandAct[];
}

const READ_MS = 2 * SAY_MS;

function atPanel(action: Action, job: JobState, hall: Hall): Done | undefined {
  const read = (at: number) => readingText(shownBy(hall, at), hall.setup.meter);
  const at = (job.instruction?.at ?? 0) + READ_MS;
  switch (action.kind) {
    case 'read':
      return { after: READ_MS, says: read(at) };
    case 'offer-accept':
      return { after: READ_MS, says: WORDS.accept };
    case 'ask':
      return action.question.kind === 'which-move'
        ? undefined
        : { after: READ_MS, says: answerAtPanel(action.question, job, hall, at) };
    default:
      return undefined;
  }
}

/** Looks at the meter again. */
function answerAtPanel(question: Question, job: JobState, hall: Hall, at: number): string {
  const { meter } = hall.setup;
  const shown = shownBy(hall, at);
  if (question.kind === 'which-value') {
    const same = question.options.find(
      (value) => shown.kind === 'value' && Math.abs(value - shown.value) <= meter.tolerance,
    );
    return same === undefined ? `wrong, ${readingText(shown, meter)}` : valueText(same, meter);
  }
  if (question.kind === 'is-it-so' && question.what === 'reading') {
    const isSo = agree(job.reading?.reading ?? NO_SIGNAL, shown, meter);
    return isSo ? WORDS.yes : `wrong, ${readingText(shown, meter)}`;
  }
  return WORDS.yes;
}

function atEmitter(action: Action, job: JobState, hall: Hall): Done | undefined {
  switch (action.kind) {
    case 'turn': {
      const { axis, eighths } = action;
      return { after: MOVE_MS, acts: [{ did: 'turn', axis, eighths }], says: WORDS.done };
    }
    case 'gain': {
      const at = (job.instruction?.at ?? 0) + MOVE_MS - hall.from;
      const wanted = action.toward === undefined ? 0 : gainFor(hall.pair, action.toward, at);
      // As far as the screw goes, in tenths of a decibel as a hand sets it.
      const db = Math.round(10 * Math.min(hall.pair.spec.gainRangeDb, Math.max(0, wanted))) / 10;
      return { after: MOVE_MS, acts: [{ did: 'gain', db }], says: WORDS.done };
    }
    case 're-aim':
      return { after: 2 * MOVE_MS, acts: [{ did: 'aim' }], says: WORDS.done };
    case 'block':
      return { after: MOVE_MS, acts: [{ did: 'card', inPath: true }], says: WORDS.blocked };
    case 'unblock':
      return { after: MOVE_MS, acts: [{ did: 'card', inPath: false }], says: WORDS.clear };
    case 'check':
      return { after: 2 * MOVE_MS, says: WORDS.done };
    case 'ask':
      return action.question.kind === 'which-move'
        ? { after: READ_MS, says: whatWasTurned(action.question, job, hall) }
        : undefined;
    default:
      return undefined;
  }
}

/** Looks at the screws, and knows then what was turned. */
function whatWasTurned(
  question: Extract<Question, { kind: 'which-move' }>,
  job: JobState,
  { slip }: Hall,
): string {
  const { options } = question;
  const really = slip && { axis: slip.axis, eighths: -slip.meant };
  const reported = turnAskedAbout(job, question);
  if (reported) {
    const isSlip = slip?.axis === reported.axis && slip.meant === reported.eighths;
    return isSlip && really ? `${WORDS.no}, ${movedText(really.axis, really.eighths)}` : WORDS.yes;
  }
  const named = options.find(({ axis, eighths }) => axis === really?.axis && eighths === really.eighths);
  return named ? movedText(named.axis, named.eighths) : WORDS.no;
}
