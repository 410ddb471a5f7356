import { fallFigure, isBeamMoved } from '../engine/fall.ts';
import type { Seq } from '../model/ids.ts';
import { lastOf } from '../model/placed.ts';
import { type ClearReading, clearReadings } from '../visit/beam.ts';
import { isCommissioning } from '../visit/commission.ts';
import { progressOf } from '../visit/progress.ts';
import type { Visit } from '../visit/visit.ts';
import { found, type Look } from './look.ts';

/**
 * With the path clear the light fell below what was accepted, before the tests or between them, though it may be
 * back. What failed a test is told there, and the last reading of a standing acceptance is told as drift.
 */
export const clearPathDip: Look = (visit) => {
  const { commission } = visit;
  if (!isCommissioning(commission)) return [];
  const { meter } = commission.setup;
  const told = toldElsewhere(visit);
  const dips = dipsIn(clearReadings(commission), ({ accepted, reading }) =>
    isBeamMoved(accepted, reading, meter),
  ).filter((dip) => !dip.some(({ seq }) => told.has(seq)));
  const [worst] = dips.flat().toSorted((a, b) => depth(b) - depth(a));
  if (!worst) return [];
  const { accept, accepted, reading } = worst;
  const entries = [...new Set([accept, ...dips.flat().flatMap((each) => [each.accept, each.seq])])];
  const figures = {
    ...(accepted.kind === 'value' && { accepted: accepted.value }),
    ...(reading.kind === 'value' && { later: reading.value }),
    ...fallFigure(accepted, reading, meter),
  };
  return [
    found('clear-path-dip', { severity: 'question', entries: entries.toSorted((a, b) => a - b), figures }),
  ];
};

/** No signal is the deepest. */
const depth = ({ reading }: ClearReading): number =>
  reading.kind === 'none' ? Number.POSITIVE_INFINITY : reading.kind === 'value' ? -reading.value : 0;

/** Runs of readings, one after the other, in which the light was low. */
function dipsIn(
  readings: readonly ClearReading[],
  isLow: (reading: ClearReading) => boolean,
): ClearReading[][] {
  const dips: ClearReading[][] = [];
  let isDipping = false;
  for (const reading of readings) {
    const low = isLow(reading);
    if (low && isDipping) dips.at(-1)?.push(reading);
    else if (low) dips.push([reading]);
    isDipping = low;
  }
  return dips;
}

function toldElsewhere({ commission, accepted, until }: Visit): ReadonlySet<Seq> {
  const failed = progressOf(commission, until).all.flatMap(({ attempt, verdict }) =>
    verdict.kind === 'failed' && verdict.why === 'beam-moved' ? [attempt.before, attempt.after] : [],
  );
  const last = accepted ? [lastOf(commission.counted, 'reading')] : [];
  return new Set([...failed, ...last].flatMap((reading) => reading?.seq ?? []));
}
