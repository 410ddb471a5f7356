import type { SiteFinding } from '../model/finding.ts';
import type { PairOutcome, VisitOutcome } from './outcome.ts';
import { type HeldAgainst, heldAgainst, type SignalPoint, signalHistory } from './signal-history.ts';

/** Decimal fractions: 3 dB lost is not above a limit of 3 dB. */
const FRACTION = 1e-9;
/** Two points always lie on a line: a rate needs a third. Common practice, no source. */
const FEWEST = 3;
const DAY_MS = 86_400_000;

/**
 * The signal that the latest visit left is beyond a limit of the plan; or, at the rate of the visits so far, it will be
 * before the next one.
 */
export function signalLimit(pairs: readonly PairOutcome[]): SiteFinding[] {
  return pairs.flatMap(({ pair, plan, visits }): SiteFinding[] => {
    const history = signalHistory(visits);
    const last = history.at(-1);
    // A later visit that left nothing proven says more than an old signal.
    if (!last || last.job !== visits.at(-1)?.job) return [];
    const held = heldAgainst(history, plan);
    const beyond = beyondLimits(last, held, plan);
    if (beyond) {
      const entries = [{ job: last.job, seq: last.seq }];
      return [{ id: 'signal-limit', severity: 'serious', pair, entries, figures: beyond }];
    }
    const first = held.map((each) => reaching(each, dueOf(visits, history))).find((each) => each);
    if (!first) return [];
    const entries = first.points.map(({ point: { job, seq } }) => ({ job, seq }));
    return [{ id: 'signal-falling', severity: 'question', pair, entries, figures: first.figures }];
  });
}

/** Both limits where both are passed. The least signal needs no law of the meter: it is a number on it. */
function beyondLimits(
  last: SignalPoint,
  held: readonly HeldAgainst[],
  { leastSignal, mostLoss }: PairOutcome['plan'],
): Record<string, number> | undefined {
  const isUnder = leastSignal !== undefined && last.value < leastSignal - FRACTION;
  const loss = held.find(({ kind }) => kind === 'most-loss')?.points.at(-1);
  const isOver = mostLoss !== undefined && loss?.point === last && loss.lost > mostLoss + FRACTION;
  if (!isUnder && !isOver) return undefined;
  return {
    ...(isUnder && { reading: last.value, least: leastSignal }),
    ...(isOver && { lost: loss.lost, most: mostLoss }),
  };
}

/**
 * When the next visit is expected, ms: as it was written down, or after as long as between the last two. Never further
 * ahead than the visits reach back. Common practice, no source.
 */
function dueOf(visits: readonly VisitOutcome[], history: readonly SignalPoint[]): number | undefined {
  const [first, before, last] = [history[0], history.at(-2), history.at(-1)];
  if (!first || !before || !last) return undefined;
  const due = visits.at(-1)?.due ?? last.at + (last.at - before.at);
  return Math.min(due, last.at + (last.at - first.at));
}

/** The straight line of least squares through the losses, where it reaches the limit by then. */
function reaching(
  { points, limit }: HeldAgainst,
  due: number | undefined,
): { points: HeldAgainst['points']; figures: Record<string, number> } | undefined {
  const last = points.at(-1);
  if (due === undefined || !last || points.length < FEWEST) return undefined;
  const days = points.map(({ point: { at } }) => (at - last.point.at) / DAY_MS);
  const rate = slope(
    days,
    points.map(({ lost }) => lost),
  );
  if (rate === undefined || rate <= 0) return undefined;
  // From where it is now: a limit that the line has passed, and the pair has not, is not reached yet.
  const inDays = Math.max(0, limit - last.lost) / rate;
  if (inDays > (due - last.point.at) / DAY_MS + FRACTION) return undefined;
  return { points, figures: { days: inDays, visits: points.length, perYear: rate * 365 } };
}

/** Undefined where all is at one time. */
function slope(xs: readonly number[], ys: readonly number[]): number | undefined {
  const mean = (all: readonly number[]) => all.reduce((sum, each) => sum + each, 0) / all.length;
  const [x0, y0] = [mean(xs), mean(ys)];
  const spread = xs.reduce((sum, x) => sum + (x - x0) ** 2, 0);
  return spread > 0 ? xs.reduce((sum, x, i) => sum + (x - x0) * ((ys[i] ?? y0) - y0), 0) / spread : undefined;
}
