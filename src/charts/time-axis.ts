import { scaleTime } from 'd3-scale';

/** A gap this long is a break. The axis leaves it out, or a night would squeeze all the work into a line. */
const BREAK_MS = 30 * 60_000;
/** Width of a break on the axis, pixels. */
const BREAK = 26;
const SHORTEST_SPAN_MS = 60_000;
/** Space between marks, pixels. */
const LABEL_ROOM = 84;

/** Times along an axis in pixels. */
export interface TimeAxis {
  x(at: number): number;
  ticks: readonly number[];
  /** Middle of each stretch of time left out, pixels. */
  breaks: readonly number[];
}

/** An axis over everything that happened. `times`: ms, in any order, at least one. */
export function timeAxis(times: readonly number[], from: number, width: number): TimeAxis {
  const sorted = [...times].sort((a, b) => a - b);
  const stretches: [first: number, last: number][] = [];
  for (const at of sorted) {
    const current = stretches.at(-1);
    if (current && at - current[1] < BREAK_MS) current[1] = at;
    else stretches.push([at, at]);
  }
  // A single moment still needs space for its mark.
  const spans = stretches.map(([first, last]) => Math.max(last - first, SHORTEST_SPAN_MS));
  const room = width - BREAK * (stretches.length - 1);
  const perMs = room / spans.reduce((sum, span) => sum + span, 0);
  const pieces: { domain: [number, number]; range: [number, number] }[] = [];
  let left = from;
  for (const [index, [first]] of stretches.entries()) {
    const span = spans[index] ?? 0;
    pieces.push({ domain: [first, first + span], range: [left, left + span * perMs] });
    left += span * perMs + BREAK;
  }
  const scale = scaleTime()
    .domain(pieces.flatMap(({ domain }) => domain))
    .range(pieces.flatMap(({ range }) => range))
    .clamp(true);
  const ticks = pieces.flatMap(({ domain, range }) => {
    const count = Math.floor((range[1] - range[0]) / LABEL_ROOM);
    const own = scaleTime().domain(domain).ticks(Math.max(1, count));
    // A stretch too short for a round time gets the time where it begins.
    return own.length > 0 ? own.map((tick) => tick.getTime()) : [domain[0]];
  });
  return {
    x: scale,
    ticks: clear(ticks, scale),
    breaks: pieces.slice(1).map(({ range }) => range[0] - BREAK / 2),
  };
}

/** The marks that do not overlap the one before. */
function clear(ticks: readonly number[], x: (at: number) => number): number[] {
  const kept: number[] = [];
  for (const tick of ticks) {
    const before = kept.at(-1);
    if (before === undefined || x(tick) - x(before) >= LABEL_ROOM / 2) kept.push(tick);
  }
  return kept;
}
