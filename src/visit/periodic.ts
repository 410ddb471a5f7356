import { missingForAccept } from '../engine/accept.ts';
import { comparison, isTouched, missingToKeep } from '../engine/kept.ts';
import type { Missing } from '../engine/missing.ts';
import { heard, newStay, type Settled, settled } from '../engine/stay.ts';
import type { Seq } from '../model/ids.ts';
import type { Placed } from '../model/placed.ts';
import { type Reading, valueReading } from '../model/reading.ts';
import { answerTo, type Commission, isPeriodic } from './commission.ts';

/** What a periodic visit is compared with; undefined where there is nothing, or this is another visit. */
export const lastLeft = ({ setup }: Pick<Commission, 'setup'>): Reading | undefined =>
  isPeriodic({ setup }) && setup.lastLeft ? valueReading(setup.lastLeft.value) : undefined;

/** Whether the windows were cleaned on this visit, and when that was answered. */
export const cleaning = (commission: Pick<Commission, 'counted'>): Placed<'item'> | undefined =>
  answerTo(commission, 'care', 'optics-cleaned');

/** A settled reading with the path clear, before anything was touched. */
export interface CareReading extends Settled {
  readonly seq: Seq;
}

/** The readings that a periodic visit compares: as found, and again after cleaning. */
export function careReadings({ counted, setup }: Pick<Commission, 'counted' | 'setup'>): {
  readonly found?: CareReading;
  /** Undefined unless the windows were cleaned. */
  readonly cleaned?: CareReading;
} {
  const clean = cleaning({ counted });
  const touched = counted.findIndex(({ type }) => TOUCHES.has(type));
  const before = touched < 0 ? counted : counted.slice(0, touched);
  const found = settledIn(before.filter(({ seq }) => clean === undefined || seq < clean.seq));
  // What was counted as hands off before the cleaning is not after it.
  const cleaned = clean?.done
    ? settledIn(
        before.filter(({ seq }) => seq > clean.seq),
        clean.at,
      )
    : undefined;
  return { ...(found && { found }), ...(cleaned && { cleaned }) };

  function settledIn(facts: Commission['counted'], since = 0): CareReading | undefined {
    let stay = newStay(since);
    let isClear = true;
    let last: CareReading | undefined;
    for (const fact of facts) {
      if (fact.type === 'path') isClear = fact.state === 'clear';
      if (fact.type === 'path' || fact.type === 'checked') stay = newStay(fact.at);
      if (fact.type === 'trend' && fact.trend !== 'steady') stay = newStay(fact.at);
      if (fact.type !== 'reading' || !isClear) continue;
      stay = heard(stay, fact, setup.meter);
      const here = settled(stay, setup.meter);
      if (here) last = { ...here, seq: fact.seq };
    }
    return last;
  }
}

const TOUCHES: ReadonlySet<string> = new Set(['move', 'gain', 're-aimed', 'disturbed', 'accept']);

/** What the alignment still needs to be accepted, and the last signal, where it is kept rather than made anew. */
export interface Acceptable {
  readonly missing: readonly Missing[];
  readonly kept?: Reading;
}

/**
 * A periodic visit keeps the alignment while nothing was touched and the signal has not fallen. Once something was
 * touched, or the crew was told that the signal has fallen, it is an alignment like any other.
 */
export function acceptable(commission: Commission, now: number): Acceptable {
  const { search } = commission;
  const kept = lastLeft(commission);
  if (!kept || isTouched(search)) return { missing: missingForAccept(search, now) };
  const { found, cleaned } = careReadings(commission);
  const clean = cleaning(commission);
  const unread: Missing = { id: 'settled-reading', figures: {} };
  const isRead = found !== undefined && (clean?.done !== true || cleaned !== undefined);
  const missing = missingToKeep(search, kept, now).filter(({ id }) => id !== unread.id);
  return {
    kept,
    missing: [
      ...(isRead ? [] : [unread]),
      ...(clean ? [] : [{ id: 'care' as const, figures: {} }]),
      ...missing,
    ],
  };
}

/** A reading beside the signal of the last visit, where both are known: both, and the light lost between them, dB. */
export function comparedWithLast(
  commission: Pick<Commission, 'setup' | 'search'>,
  read: Settled | undefined,
): Readonly<Record<string, number>> {
  const before = lastLeft(commission);
  return before && read ? comparison(before, read.reading, commission.search) : {};
}
