/** What the reader tells apart, in the order of its scores. Before them stands the gap between characters. */
const CHARACTERS = '0123456789.-?';
const GAP = 0;
/** Scores for one place: the gap, then each character. */
export const CLASSES = CHARACTERS.length + 1;

/** What stands in a box: digits, point and minus from left to right, `?` for each character that cannot be read. */
export interface Sight {
  text: string;
  /** Probability of exactly this text, as the reader has it: 0 to 1. */
  belief: number;
}

/**
 * The text of the likeliest path through the reader's scores, with the probability of all paths that give it.
 * Connectionist temporal classification: Graves and others, ICML 2006, equations 3 and 6.
 * @param scores for each place from left to right `CLASSES` numbers, not normalised
 */
export function sightOf(scores: ArrayLike<number>): Sight {
  const places = Array.from({ length: scores.length / CLASSES }, (_, place) => logShares(scores, place));
  const path = places.map((shares) => shares.indexOf(Math.max(...shares)));
  const labels = path.filter((label, i) => label !== GAP && label !== path[i - 1]);
  return {
    text: labels.map((label) => CHARACTERS[label - 1]).join(''),
    belief: Math.exp(logProbability(places, labels)),
  };
}

function logShares(scores: ArrayLike<number>, place: number): number[] {
  const own = Array.from(
    { length: CLASSES },
    (_, i) => scores[place * CLASSES + i] ?? Number.NEGATIVE_INFINITY,
  );
  const total = logSum(own);
  return own.map((score) => score - total);
}

function logSum(values: readonly number[]): number {
  const most = Math.max(...values);
  return most === Number.NEGATIVE_INFINITY
    ? most
    : most + Math.log(values.reduce((sum, value) => sum + Math.exp(value - most), 0));
}

function logProbability(places: readonly number[][], labels: readonly number[]): number {
  const states = [GAP, ...labels.flatMap((label) => [label, GAP])];
  const none = Number.NEGATIVE_INFINITY;
  let reached = states.map((_, s) => (s === 0 ? 0 : none));
  for (const [place, shares] of places.entries()) {
    const before = reached;
    reached = states.map((label, s) => {
      const own = shares[label] ?? none;
      if (place === 0) return s < 2 ? own : none;
      // A gap may be left out between two labels that differ.
      const skips = label !== GAP && label !== states[s - 2];
      const ways = [before[s], before[s - 1], skips ? before[s - 2] : none];
      return own + logSum(ways.map((way) => way ?? none));
    });
  }
  return logSum(reached.slice(-2));
}

/** The number that a text shows, with how many digits stand after its point. Undefined: it is no whole number. */
export function shownNumber(text: string): { value: number; decimals: number } | undefined {
  if (!/^-?\d+(\.\d+)?$/.test(text)) return undefined;
  return { value: Number(text), decimals: text.includes('.') ? text.length - text.indexOf('.') - 1 : 0 };
}
