import { isSame } from '../formats/same.ts';
import type { Action, Advice } from '../model/advice.ts';
import { isOnePhone } from '../model/alone.ts';
import type { JobSetup } from '../model/setup.ts';
import { LASER_CAUTION } from '../phrases/cautions.ts';
import { type InstructionText, instructionText } from '../phrases/instruct.ts';
import { ORDER_WAITS, QUIET } from '../phrases/notices.ts';
import { askedAgain } from '../phrases/questions.ts';
import { advise } from '../visit/advise.ts';
import { commissionOf } from '../visit/search.ts';
import { type JobState, LASER, timesAsked } from '../visit/state.ts';
import type { Composer } from './composer.ts';

const second = 1000;
const minute = 60 * second;

/** How long an instruction is valid after it was given. Milliseconds. */
function lifetime(action: Action, now: number): number {
  switch (action.kind) {
    case 'watch-panel':
      return action.until === undefined ? 5 * minute : Math.max(0, action.until - now) + 30 * second;
    case 'hold':
      return Math.max(0, action.until - now) + 30 * second;
    case 'read':
    case 'ask':
      return 2 * minute;
    case 'turn':
    case 'gain':
    case 'block':
    case 'unblock':
    case 'cover':
    case 'uncover':
      return 3 * minute;
    case 'offer-accept':
    case 'confirm-item':
      return 5 * minute;
    case 're-aim':
    case 'check':
      return 20 * minute;
    case 'settle-issue':
    case 'offer-sign':
    case 'finished':
      return 24 * 60 * minute;
  }
}

/** A person who does both climbs and walks in between, and takes so many times as long. Common practice, no source. */
const ALONE = 4;

/** Advice is given only to a complete crew that did not ask to wait. */
export const mayInstruct = (state: JobState): boolean =>
  Boolean(state.seats.panel && state.seats.emitter) && !state.paused && !state.stopped;

/**
 * Updates the present instruction to what the engine advises now, and returns when to look again. Nothing is
 * said twice: the same advice, if not answered and not expired, stays as it is.
 */
export function instruct(job: Composer): number | undefined {
  const { instruction } = job.state;
  const commission = commissionOf(job.state);
  if (!commission) return undefined;
  if (!mayInstruct(job.state)) {
    if (instruction) {
      const why = job.state.stopped ? 'stopped' : 'paused';
      job.put('engine', { type: 'withdrawn', instruction: instruction.seq, why });
    }
    return undefined;
  }
  const { advice, wakeAt } = advise(commission, job.now);
  const stands =
    instruction !== undefined &&
    job.state.answeredBy === undefined &&
    instruction.expiresAt > job.now &&
    sameAction(instruction.advice.action, advice.action);
  if (!stands && isForEmitter(advice) && job.state.seats.emitter?.online === false) return hold(job);
  if (!stands) {
    const expiresAt =
      job.now + (isOnePhone(commission.setup.alone) ? ALONE : 1) * lifetime(advice.action, job.now);
    const { action } = advice;
    if (action.kind === 're-aim' && !job.state.said.includes(LASER)) job.notice(LASER, LASER_CAUTION);
    const isSettling = action.kind === 'hold' && action.reason === 'settling';
    job.put('engine', {
      type: 'instruction',
      advice,
      ...words(job, advice, commission.setup),
      expiresAt,
      ...(isSettling && job.state.said.includes('settling') && { quiet: true as const }),
    });
  }
  const expiresAt = job.state.instruction?.expiresAt ?? Number.POSITIVE_INFINITY;
  return Math.min(wakeAt ?? Number.POSITIVE_INFINITY, expiresAt);
}

/** Only somebody at the emitter can do it. */
const isForEmitter = ({ to, action }: Advice): boolean => to === 'emitter' || action.kind === 'cover';

/**
 * A new order for the emitter is not given while its phone is away: nobody there would hear it, and the panel would take
 * it for given. What it is depends on what is known when the emitter is back, so it is made only then.
 */
function hold(job: Composer): undefined {
  job.put('engine', { type: 'pause', why: 'emitter-away' });
  job.notice('held', ORDER_WAITS);
  const { instruction } = job.state;
  if (instruction) job.put('engine', { type: 'withdrawn', instruction: instruction.seq, why: 'paused' });
}

/** A question that was just asked gets another way out. */
function words({ state }: Composer, advice: Advice, setup: JobSetup): InstructionText {
  const text = instructionText(advice, setup);
  if (advice.action.kind !== 'ask') return text;
  return { ...text, say: askedAgain(text.say, timesAsked(state, text.say)) };
}

/** A hold stays the same even if its end moves a little: the crew need not hear "hold" after every reading. */
function sameAction(a: Action, b: Action): boolean {
  if (a.kind === 'hold' && b.kind === 'hold') return a.reason === b.reason;
  return isSame(a, b);
}

/** An instruction that nobody followed in time is withdrawn; any words bring the next one. */
export function expire(job: Composer): void {
  const { instruction } = job.state;
  if (!instruction || instruction.expiresAt > job.now) return;
  job.put('engine', { type: 'withdrawn', instruction: instruction.seq, why: 'expired' });
  job.notice('quiet', QUIET);
}
