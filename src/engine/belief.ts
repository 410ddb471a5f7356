import { type Axis, otherAxis } from '../model/turns.ts';
import { type Comparison, comparisonAt, type Look } from './looks.ts';
import { BACKLASHES } from './slack.ts';

/**
 * Where along one adjuster the peak may lie, from comparisons alone: Bayes' rule over a grid of peaks, widths, shapes
 * and backlashes (textbooks of statistics). A comparison says only which of two places is brighter, or that the eye
 * cannot tell; so two places of equal light put the peak halfway between them, however wide or flat the light is.
 */

/** Peaks that are thought of, eighths from the start. */
const REACH = 44;
const PEAKS = 2 * REACH + 1;
/** Before anything is seen: an aim by eye misses by about so much, eighths (estimate of our own, no source). */
const AIM_SD = 14;
/** Half-power half-widths, eighths, and how they fall off: round, or flat on top. */
const WIDTHS = [3.2, 4.8, 7, 10.5, 16, 24, 40] as const;
const SHAPES = [2, 4] as const;
/** Backlashes, as entries of `BACKLASHES`, and how likely each is thought to be. */
const SLACKS = [
  { index: BACKLASHES.indexOf(0), prior: 0.45 },
  { index: BACKLASHES.indexOf(1.5), prior: 0.4 },
  { index: BACKLASHES.indexOf(4), prior: 0.15 },
] as const;
/** So far below the peak nothing is told apart any more. dB. */
const DEEPEST_DB = 30;
const HALF_POWER_DB = 10 * Math.log10(2);

/** Distances are looked up in quarters of an eighth. */
const PER_EIGHTH = 4;
const FARTHEST = 120 * PER_EIGHTH;

/** Decibels below the peak at each distance, for each width and shape. */
const DROPS: readonly Float64Array[] = WIDTHS.flatMap((width) =>
  SHAPES.map((shape) =>
    Float64Array.from({ length: FARTHEST + 1 }, (_, i) =>
      Math.min(DEEPEST_DB, HALF_POWER_DB * (i / PER_EIGHTH / width) ** shape),
    ),
  ),
);

const dropAt = (drops: Float64Array, distance: number): number =>
  drops[Math.min(FARTHEST, Math.round(Math.abs(distance) * PER_EIGHTH))] ?? DEEPEST_DB;

/**
 * What an eye tells apart: the middle of a change that is seen as often as not, and how quickly that becomes sure. dB.
 * Common practice for lamps, no source.
 */
export const SEEN_DB = 0.4;
const SEEN_SPREAD_DB = 0.1;
/** So often the word is another one than what was there. */
const WRONG_WORD = 0.03;

/** Likelihoods are looked up by the change of the light, in steps of this. dB. */
const STEP_DB = 0.02;
const RANGE = Math.ceil(DEEPEST_DB / STEP_DB);
type Sign = Comparison['sign'];

const sigmoid = (x: number): number => 1 / (1 + Math.exp(-x));

/** How likely each answer is for each change of the light, from the deepest fall to the highest rise. */
function answersTo(sign: Sign): Float64Array {
  return Float64Array.from({ length: 2 * RANGE + 1 }, (_, i) => {
    const change = (i - RANGE) * STEP_DB;
    const rises = sigmoid((change - SEEN_DB) / SEEN_SPREAD_DB);
    const falls = sigmoid((-change - SEEN_DB) / SEEN_SPREAD_DB);
    const said = sign === 1 ? rises : sign === -1 ? falls : Math.max(0, 1 - rises - falls);
    return (1 - WRONG_WORD) * said + WRONG_WORD / 3;
  });
}
const SIGNS = [-1, 0, 1] as const;
const LIKELY: readonly Float64Array[] = SIGNS.map(answersTo);
const LOG_LIKELY: readonly Float64Array[] = LIKELY.map((each) => each.map(Math.log));

const changeIndex = (change: number): number => RANGE + Math.round(change / STEP_DB);

/**
 * How far the peak along one adjuster moves for each eighth of the other, and how likely each is thought to be: a light that
 * is longer one way and lies askew. So what was seen along another line counts here only as far as it may.
 */
const SKEWS = [
  { by: 0, prior: 0.76 },
  { by: 0.35, prior: 0.07 },
  { by: -0.35, prior: 0.07 },
  { by: 0.75, prior: 0.05 },
  { by: -0.75, prior: 0.05 },
] as const;

/** Every hypothesis, by number: the peaks run fastest, then the skews, the backlashes, the forms of the light. */
const COUNT = DROPS.length * SLACKS.length * SKEWS.length * PEAKS;
const numbers = (of: (i: number) => number): Float64Array =>
  Float64Array.from({ length: COUNT }, (_, i) => of(i));
/** Where the peak lies on the line through the start. */
const PEAK_OF = numbers((i) => (i % PEAKS) - REACH);
const SKEW_OF = numbers((i) => SKEWS[Math.floor(i / PEAKS) % SKEWS.length]?.by ?? 0);
const slackNumber = (i: number): number => Math.floor(i / (PEAKS * SKEWS.length)) % SLACKS.length;
const SLACK_OF = numbers((i) => SLACKS[slackNumber(i)]?.index ?? 0);
const FORM_OF = numbers((i) => Math.floor(i / (PEAKS * SKEWS.length * SLACKS.length)));
const slackOf = (i: number): number => SLACK_OF[i] ?? 0;
const dropsOf = (i: number): Float64Array => DROPS[FORM_OF[i] ?? 0] ?? new Float64Array();
/** Where the peak lies along a line: `line` is where the other adjuster stands. */
const peakOn = (i: number, line: number): number => (PEAK_OF[i] ?? 0) + (SKEW_OF[i] ?? 0) * line;

/** Hypotheses, and how likely each is, as logarithms that need not sum to anything. */
interface Thoughts {
  readonly ids: Int32Array;
  readonly logs: Float64Array;
}

const PRIOR: Thoughts = {
  ids: Int32Array.from({ length: COUNT }, (_, i) => i),
  logs: numbers((i) => {
    const slack = SLACKS[slackNumber(i)]?.prior ?? 0;
    const skew = SKEWS[Math.floor(i / PEAKS) % SKEWS.length]?.prior ?? 0;
    return Math.log(slack * skew * (Math.exp(-(((PEAK_OF[i] ?? 0) / AIM_SD) ** 2) / 2) + 0.01));
  }),
};

/** Less likely than this share of the likeliest, a hypothesis does not count now; and it is given up for good. */
const WORTH_COUNTING = Math.log(1e-3);
const WORTH_KEEPING = Math.log(1e-7);

/** Peaks along one line that the looks leave possible, each with a form of the light and a backlash. The weights sum to one. */
export interface Belief {
  /** The numbers of the hypotheses that are likely enough, their weights, and where along the line their peaks are. */
  readonly live: Int32Array;
  readonly weights: Float64Array;
  readonly peaks: Float64Array;
}

const known: Record<Axis, WeakMap<Look, Thoughts>> = {
  horizontal: new WeakMap(),
  vertical: new WeakMap(),
};
const lives = new WeakMap<Thoughts, Map<number, Belief>>();

/** Where along `axis` the peak may lie, after all the looks, on the line where the other adjuster stands at `line`. */
export function beliefOf(looks: readonly Look[], axis: Axis, line: number): Belief {
  const last = looks.findLastIndex((look) => known[axis].has(look));
  const from = looks[last];
  let thoughts = (from && known[axis].get(from)) ?? PRIOR;
  for (let i = last + 1; i < looks.length; i++) {
    const [before, look] = [looks[i - 1], looks[i]];
    if (!look) continue;
    const seen = before && comparisonAt(before, look);
    if (seen) thoughts = after(thoughts, axis, seen);
    known[axis].set(look, thoughts);
  }
  const lines = lives.get(thoughts) ?? new Map<number, Belief>();
  lives.set(thoughts, lines);
  const belief = lines.get(line) ?? alive(thoughts, line);
  lines.set(line, belief);
  return belief;
}

/** Bayes' rule. */
function after(thoughts: Thoughts, axis: Axis, { axis: along, from, to, sign }: Comparison): Thoughts {
  const likely = LOG_LIKELY[sign + 1];
  if (along !== axis || !likely) return thoughts;
  const line = from.turned[otherAxis(axis)];
  const { ids } = thoughts;
  const logs = new Float64Array(ids.length);
  let top = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < ids.length; k++) {
    const i = ids[k] ?? 0;
    const [drops, slack, peak] = [dropsOf(i), slackOf(i), peakOn(i, line)];
    const was = dropAt(drops, (from.pointing[axis][slack] ?? 0) - peak);
    const is = dropAt(drops, (to.pointing[axis][slack] ?? 0) - peak);
    const log = (thoughts.logs[k] ?? 0) + (likely[changeIndex(was - is)] ?? 0);
    logs[k] = log;
    if (log > top) top = log;
  }
  return kept({ ids, logs }, top + WORTH_KEEPING);
}

function kept({ ids, logs }: Thoughts, least: number): Thoughts {
  const isKept = (_: number, k: number) => (logs[k] ?? least) > least;
  return { ids: ids.filter(isKept), logs: logs.filter(isKept) };
}

function alive(thoughts: Thoughts, line: number): Belief {
  const top = thoughts.logs.reduce((most, each) => Math.max(most, each), Number.NEGATIVE_INFINITY);
  const { ids: live, logs } = kept(thoughts, top + WORTH_COUNTING);
  const likely = logs.map((log) => Math.exp(log - top));
  const sum = likely.reduce((all, each) => all + each, 0);
  return {
    live,
    weights: likely.map((each) => each / sum),
    peaks: Float64Array.from(live, (i) => peakOn(i, line)),
  };
}

/** The mean of where the peak may lie, eighths from the start. */
export const likelyPeak = ({ peaks, weights }: Belief): number =>
  peaks.reduce((sum, peak, k) => sum + (weights[k] ?? 0) * peak, 0);

/** The mean of how wide the light may be: its half-power half-width, eighths. */
export const likelyHalfWidth = ({ live, weights }: Belief): number =>
  live.reduce(
    (sum, i, k) => sum + (weights[k] ?? 0) * (WIDTHS[Math.floor((FORM_OF[i] ?? 0) / SHAPES.length)] ?? 0),
    0,
  );

/** What standing at a place costs, as far as is known: dB below the peak, and how likely it is more than allowed. */
export interface Cost {
  readonly expected: number;
  readonly risk: number;
}

/** The cost of the screw at `to`, turned there from `here`: within its backlash the emitter does not follow. */
export function costAt(
  { live, weights, peaks }: Belief,
  axis: Axis,
  here: Look,
  to: number,
  allowedDb: number,
): Cost {
  let [expected, risk] = [0, 0];
  for (let k = 0; k < live.length; k++) {
    const i = live[k] ?? 0;
    const weight = weights[k] ?? 0;
    const short = dropAt(dropsOf(i), pointed(here, axis, slackOf(i), to) - (peaks[k] ?? 0));
    expected += weight * short;
    if (short > allowedDb) risk += weight;
  }
  return { expected, risk };
}

/** Where the emitter points once the screw is turned from `here` to `to`. Eighths. */
function pointed(here: Look, axis: Axis, slack: number, to: number): number {
  const half = (BACKLASHES[slack] ?? 0) / 2;
  return Math.max(to - half, Math.min(to + half, here.pointing[axis][slack] ?? to));
}

/** A bin for each eighth of the peaks, those that skew leads farther out too. */
const BINS = 4 * REACH + 1;

/** How likely the light at the screw's place `to` falls against `here`, and how much the answer will tell. */
export function outlook(
  { live, weights, peaks }: Belief,
  axis: Axis,
  here: Look,
  to: number,
): { tells: number; falls: number } {
  // By peak: how likely the answers are, falls first.
  const joint = SIGNS.map(() => new Float64Array(BINS));
  const slacks = SLACKS.map(({ index }) => ({
    from: here.pointing[axis][index] ?? 0,
    to: pointed(here, axis, index, to),
  }));
  for (let k = 0; k < live.length; k++) {
    const i = live[k] ?? 0;
    const [drops, peak] = [dropsOf(i), peaks[k] ?? 0];
    const slack = slacks[slackNumber(i)];
    if (!slack) continue;
    const at = changeIndex(dropAt(drops, slack.from - peak) - dropAt(drops, slack.to - peak));
    const bin = Math.max(0, Math.min(BINS - 1, Math.round(peak) + (BINS - 1) / 2));
    for (let a = 0; a < SIGNS.length; a++) {
      const bins = joint[a];
      if (bins) bins[bin] = (bins[bin] ?? 0) + (weights[k] ?? 0) * (LIKELY[a]?.[at] ?? 0);
    }
  }
  const answers = Float64Array.from(joint, (bins) => bins.reduce((sum, p) => sum + p, 0));
  const all = new Float64Array(BINS).map((_, i) => joint.reduce((sum, bins) => sum + (bins[i] ?? 0), 0));
  const both = joint.reduce((sum, bins) => sum + entropy(bins), 0);
  // Mutual information of the answer and the peak, bits.
  return { tells: entropy(all) + entropy(answers) - both, falls: answers[0] ?? 0 };
}

const entropy = (of: Float64Array): number =>
  of.reduce((sum, each) => (each > 0 ? sum - each * Math.log2(each) : sum), 0);
