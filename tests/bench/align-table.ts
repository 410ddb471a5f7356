import type { Outcome } from './engine-run.ts';

export interface Result {
  name: string;
  outcomes: readonly Outcome[];
}

/** An accepted place this far below the best, or on a reflection, is a false accept. dB. */
const FALSE_DB = 1;
const CLOSE_DB = 0.2;

/** Two turns to bracket and one to return, an adjuster, when nothing is flooded. */
const LEAST_TURNS = 6;

export const quantile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
};

const MOVE_S = 6;
const READ_S = 4;
const minutes = (o: Outcome): number => ((o.turns + o.gainChanges) * MOVE_S + o.readings * READ_S) / 60;
const isFalse = (o: Outcome): boolean => o.accepted && (o.shortfall > FALSE_DB || o.onReflection);
const moves = (o: Outcome): number => o.turns + o.gainChanges;

type Row = Record<string, string | number>;

function row({ name, outcomes }: Result): Row {
  const accepted = outcomes.filter((o) => o.accepted);
  const pair = (pick: (o: Outcome) => number, digits = 0) =>
    [0.5, 0.95].map((share) => quantile(outcomes.map(pick), share).toFixed(digits)).join(' / ');
  const share = (n: number) => `${((100 * n) / outcomes.length).toFixed(2)} %`;
  const shortfalls = accepted.map((o) => o.shortfall);
  return {
    method: name,
    turns: pair((o) => o.turns),
    'gain settings': pair((o) => o.gainChanges),
    readings: pair((o) => o.readings),
    'ladder min': pair(minutes, 1),
    'short of best, dB': [0.5, 0.95, 1].map((s) => quantile(shortfalls, s).toFixed(2)).join(' / '),
    accepted: share(accepted.length),
    'and within 0.2 dB': share(accepted.filter((o) => o.shortfall <= CLOSE_DB).length),
    'false accepts': outcomes.filter(isFalse).length,
    'questions a job': (outcomes.reduce((sum, o) => sum + o.questions, 0) / outcomes.length).toFixed(2),
  };
}

export function printTable(results: readonly Result[]): void {
  console.log('Median / 95th percentile (/ worst):');
  console.table(Object.fromEntries(results.map((r) => [r.name, omitName(row(r))])));
  console.log(`No method can bracket both peaks and return in fewer than ${LEAST_TURNS} turns.`);
}

const omitName = ({ method: _, ...rest }: Row): Row => rest;

/** Each method's moves (turns and gain settings) as a share of plain practice's. */
export function printRatios(results: readonly Result[]): void {
  const plain = results.find((r) => r.name === 'plain practice');
  if (!plain) return;
  for (const { name, outcomes } of results) {
    if (name === plain.name) continue;
    const ratio = (pick: (o: Outcome) => number, share: number) =>
      (quantile(outcomes.map(pick), share) / quantile(plain.outcomes.map(pick), share)).toFixed(2);
    console.log(
      `${name}: turns ${ratio((o) => o.turns, 0.5)} of plain practice at the median, ` +
        `${ratio((o) => o.turns, 0.95)} at the 95th percentile; ` +
        `with gain settings ${ratio(moves, 0.5)} and ${ratio(moves, 0.95)}`,
    );
  }
}
