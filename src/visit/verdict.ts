import { fallFigure, isBeamMoved } from '../engine/fall.ts';
import { FRESH_MS } from '../engine/fresh.ts';
import type { UsedCover } from '../model/checklists.ts';
import type { JobSetup } from '../model/setup.ts';
import { alarmCover, lossOf, quietCover, thresholdDb } from '../plan/covers.ts';
import type { Attempt, Proof } from './attempts.ts';
import { coverOf, isReadingOff, isUnread, measuredLoss, sideOf } from './cover.ts';

/** The result of a proving test, or what it waits for. Seconds and decibels in `figures`. */
export type Verdict = { readonly figures: Readonly<Record<string, number>> } & (
  | Waiting
  /** The panel showed what it should, or stayed at normal where it should: uncover. */
  | { readonly kind: 'shown' }
  /** Uncovered before the panel had to show anything: no result. */
  | { readonly kind: 'broken-off' }
  /** Nobody read the meter before the cover, behind it or after it: no result. */
  | { readonly kind: 'unread'; readonly lacks: Moment }
  /** The cover was too near the alarm threshold, or nobody knows which it was: it says nothing. */
  | { readonly kind: 'not-decisive' }
  | { readonly kind: 'passed' }
  | { readonly kind: 'failed'; readonly why: Failure }
);

/** When a test needs a reading: with the path clear before it, behind the cover, with the path clear after it. */
export type Moment = 'before' | 'behind' | 'after';

/** Covered and waiting for the panel, or uncovered and waiting for normal, until then, ms. */
interface Waiting {
  readonly kind: 'covered' | 'restoring';
  readonly until: number;
}

export type Failure =
  | 'nothing-shown'
  | 'wrong-indication'
  | 'too-sensitive'
  | 'both-shown'
  | 'both-when-quiet'
  | 'too-early'
  | 'too-late'
  | 'reading-off'
  | 'beam-moved'
  | 'not-restored';

const second = 1000;

/**
 * The times in the log come from people who speak and act, so they are only this good. Common practice, no
 * source.
 */
export const TIMING_TOLERANCE_S = 5;
/** In addition, a tenth of the set delay. Common practice, no source. */
export const TIMING_TOLERANCE_SHARE = 0.1;

/**
 * Where no delay is known: a sudden loss must give a fault or an alarm within this time. EN 54-12:2002 5.6, rapid
 * changes in obscuration (the clause: read in a published excerpt, 4.10 names it; the time: from memory).
 */
export const LONGEST_DELAY_S = 60;

/** Time to reset the panel and see it back at normal. Common practice, no source. */
export const RESTORE_S = 120;

/** With what a test is made. Undefined where the crew owns no cover that would prove it. */
export function coverFor(proof: Proof, setup: JobSetup): UsedCover | undefined {
  switch (proof) {
    case 'quiet':
      return quietCover(setup);
    case 'alarm':
      return alarmCover(setup);
    case 'fault':
      return { how: 'full' };
  }
}

const delayOf = (proof: Proof, { plan }: JobSetup): number | undefined =>
  proof === 'fault' ? plan?.faultDelay : plan?.alarmDelay;

const toleranceOf = (delay: number): number => Math.max(TIMING_TOLERANCE_S, delay * TIMING_TOLERANCE_SHARE);

/** The latest time for the panel to show it, ms. */
export function latestFor({ proof, covered }: Attempt, setup: JobSetup): number {
  const delay = delayOf(proof, setup) ?? LONGEST_DELAY_S;
  return covered.at + (delay + toleranceOf(delay)) * second;
}

/** Judges one attempt at a test, as of `now` (ms, the log's clock). */
export function judge(attempt: Attempt, setup: JobSetup, now: number): Verdict {
  const { proof, covered, shown, cleared, restored } = attempt;
  const figures = figuresOf(attempt, setup);
  const latest = latestFor(attempt, setup);
  const failed = (why: Failure): Verdict => ({ kind: 'failed', why, figures });
  const isOver = (cleared?.at ?? now) >= latest;
  if (!shown && !isOver) {
    return cleared ? { kind: 'broken-off', figures } : { kind: 'covered', until: latest, figures };
  }
  if (isMoved(attempt, setup)) return failed('beam-moved');
  if (attempt.also) return failed(proof === 'quiet' ? 'both-when-quiet' : 'both-shown');
  // Only the clear reading after it tells a wrong cover from a lost beam.
  if (isReadingOff(attempt, setup) && !attempt.after && !attempt.closed) {
    return { kind: 'unread', lacks: 'after', figures };
  }
  // A cover that is not what it should be says nothing of the detector.
  if (isReadingOff(attempt, setup)) return failed('reading-off');
  const side = proof === 'fault' ? undefined : sideOf(attempt, setup);
  if (proof === 'quiet') return judgeQuiet(attempt, setup, figures);
  if (side === 'between' && shown?.shows !== 'fault') {
    // A reading would have told what half a cover holds back; a filter holds back its grade.
    const isBlind = cleared && coverOf(attempt, setup)?.how === 'half' && isUnread(attempt, setup);
    return isBlind ? { kind: 'unread', lacks: 'behind', figures } : { kind: 'not-decisive', figures };
  }
  if (!shown) return failed('nothing-shown');
  if (shown.shows !== proof) return failed('wrong-indication');
  if (shown.at > latest) return failed('too-late');
  const delay = delayOf(proof, setup);
  if (delay !== undefined && (shown.at - covered.at) / second < delay - toleranceOf(delay)) {
    return failed('too-early');
  }
  if (!cleared) return { kind: 'shown', figures };
  const restoreBy = cleared.at + RESTORE_S * second;
  if ((restored?.at ?? now) >= restoreBy) return failed('not-restored');
  if (!restored) return { kind: 'restoring', until: restoreBy, figures };
  return readOrPassed(attempt, setup, figures);
}

/** All that the panel had to show is shown: it passed, if the meter was read when it should be. */
function readOrPassed(attempt: Attempt, setup: JobSetup, figures: Verdict['figures']): Verdict {
  const lacks = readingLacking(attempt, setup) ?? (attempt.after ? undefined : 'after');
  return lacks ? { kind: 'unread', lacks, figures } : { kind: 'passed', figures };
}

/** The clear path was no longer as accepted before the cover went on, or not as before once it was off. */
const isMoved = ({ accepted, before, clearReading, after }: Attempt, { meter }: JobSetup): boolean =>
  (before !== undefined && isBeamMoved(accepted, before.reading, meter)) ||
  (after !== undefined && isBeamMoved(clearReading, after.reading, meter));

/** A reading that the test needs and that can no longer be made up for once it is uncovered. */
export function readingLacking(attempt: Attempt, setup: JobSetup): 'before' | 'behind' | undefined {
  const { before, covered } = attempt;
  if (!before || covered.at - before.at > FRESH_MS) return 'before';
  return isUnread(attempt, setup) ? 'behind' : undefined;
}

/** Behind a cover clearly below the threshold, once its time is over or something was shown. */
function judgeQuiet(attempt: Attempt, setup: JobSetup, figures: Verdict['figures']): Verdict {
  const { shown, cleared } = attempt;
  if (shown) {
    const why = shown.shows === 'alarm' ? 'too-sensitive' : 'wrong-indication';
    return { kind: 'failed', why, figures };
  }
  return cleared ? readOrPassed(attempt, setup, figures) : { kind: 'shown', figures };
}

/** The light lost with the path clear: since the acceptance, or while the cover was on. */
function movedBy({ accepted, before, clearReading, after }: Attempt, { meter }: JobSetup): { fall?: number } {
  if (before && isBeamMoved(accepted, before.reading, meter)) {
    return fallFigure(accepted, before.reading, meter);
  }
  return after ? fallFigure(clearReading, after.reading, meter) : {};
}

function figuresOf(attempt: Attempt, setup: JobSetup): Record<string, number> {
  const { proof, covered, shown, cleared, restored } = attempt;
  const delay = delayOf(proof, setup);
  const loss = measuredLoss(attempt, setup);
  const cover = coverOf(attempt, setup);
  const expected = cover && lossOf(cover);
  const threshold = proof === 'fault' ? undefined : thresholdDb(setup.plan);
  return {
    ...(shown && { elapsed: (shown.at - covered.at) / second }),
    ...(delay !== undefined && { delay, tolerance: toleranceOf(delay) }),
    ...(cleared && restored && { restored: (restored.at - cleared.at) / second }),
    ...(loss !== undefined && Number.isFinite(loss) && { loss }),
    ...(expected !== undefined &&
      (loss !== undefined || threshold !== undefined) &&
      Number.isFinite(expected) && { expectedLoss: expected }),
    ...(threshold !== undefined && { threshold }),
    ...(isMoved(attempt, setup) && movedBy(attempt, setup)),
  };
}
