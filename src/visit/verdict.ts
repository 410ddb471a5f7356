import type { Cover } from '../model/checklists.ts';
import type { JobSetup } from '../model/setup.ts';
import { dbOfPercent, HALF_COVER_DB } from '../plan/attenuation.ts';
import { lossBetween } from '../plan/expected.ts';
import type { Attempt, Proof } from './attempts.ts';

/** The result of a proving test, or what it waits for. Seconds and decibels in `figures`. */
export type Verdict = { readonly figures: Readonly<Record<string, number>> } & (
  | Waiting
  /** The panel showed the right thing: uncover. */
  | { readonly kind: 'shown' }
  /** Uncovered before the panel had to show anything: no result. */
  | { readonly kind: 'broken-off' }
  | { readonly kind: 'passed' }
  | { readonly kind: 'failed'; readonly why: Failure }
);

/** Covered and waiting for the panel, or uncovered and waiting for normal, until then, ms. */
interface Waiting {
  readonly kind: 'covered' | 'restoring';
  readonly until: number;
}

export type Failure =
  | 'nothing-shown'
  | 'wrong-indication'
  | 'too-early'
  | 'too-late'
  | 'reading-off'
  | 'not-restored';

const second = 1000;

/**
 * The times in the log come from people who speak and act, so they are only this good. Common practice, no
 * source.
 */
export const TIMING_TOLERANCE_S = 5;
/** In addition, a tenth of the set delay. Common practice, no source. */
export const TIMING_TOLERANCE_SHARE = 0.1;

/** Where no delay is known: a sudden loss must give a fault or an alarm within this time (EN 54-12, from memory). */
export const LONGEST_DELAY_S = 60;

/** Time to reset the panel and see it back at normal. Common practice, no source. */
export const RESTORE_S = 120;

/** How far the loss may be from what the cover should block, dB. Common practice, no source. */
const LOSS_TOLERANCE_DB: Record<Cover, number> = { half: 1.5, filter: 0.5, full: 0 };

/** What the alarm is tested with: the filter, if there is one. */
export const coverFor = (proof: Proof, { plan }: JobSetup): Cover =>
  proof === 'fault' ? 'full' : plan?.filterPercent === undefined ? 'half' : 'filter';

/** Decibels that a cover blocks: infinite if all is covered. */
export function lossOf(cover: Cover, { plan }: JobSetup): number {
  if (cover === 'full') return Number.POSITIVE_INFINITY;
  return cover === 'filter' ? dbOfPercent(plan?.filterPercent ?? 50) : HALF_COVER_DB;
}

const delayOf = (proof: Proof, { plan }: JobSetup): number | undefined =>
  proof === 'alarm' ? plan?.alarmDelay : plan?.faultDelay;

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
  if (!shown) {
    if ((cleared?.at ?? now) >= latest) return failed('nothing-shown');
    return cleared ? { kind: 'broken-off', figures } : { kind: 'covered', until: latest, figures };
  }
  if (shown.shows !== proof) return failed('wrong-indication');
  if (shown.at > latest) return failed('too-late');
  const delay = delayOf(proof, setup);
  if (delay !== undefined && (shown.at - covered.at) / second < delay - toleranceOf(delay)) {
    return failed('too-early');
  }
  if (readingIsOff(attempt, setup)) return failed('reading-off');
  if (!cleared) return { kind: 'shown', figures };
  const restoreBy = cleared.at + RESTORE_S * second;
  if ((restored?.at ?? now) >= restoreBy) return failed('not-restored');
  return restored ? { kind: 'passed', figures } : { kind: 'restoring', until: restoreBy, figures };
}

/** The reading with the cover on does not fit the cover. Judged only if there is a reading. */
function readingIsOff({ proof, clearReading, reading }: Attempt, setup: JobSetup): boolean {
  const loss = reading && lossBetween(clearReading, reading.reading, setup.meter);
  if (loss === undefined) return false;
  const cover = coverFor(proof, setup);
  const expected = lossOf(cover, setup);
  return expected === Number.POSITIVE_INFINITY
    ? loss < expected
    : Math.abs(loss - expected) > LOSS_TOLERANCE_DB[cover];
}

function figuresOf(attempt: Attempt, setup: JobSetup): Record<string, number> {
  const { proof, covered, shown, cleared, restored, clearReading, reading } = attempt;
  const delay = delayOf(proof, setup);
  const loss = reading && lossBetween(clearReading, reading.reading, setup.meter);
  const expected = lossOf(coverFor(proof, setup), setup);
  return {
    ...(shown && { elapsed: (shown.at - covered.at) / second }),
    ...(delay !== undefined && { delay, tolerance: toleranceOf(delay) }),
    ...(cleared && restored && { restored: (restored.at - cleared.at) / second }),
    ...(loss !== undefined && Number.isFinite(loss) && { loss }),
    ...(loss !== undefined && Number.isFinite(expected) && { expectedLoss: expected }),
  };
}
