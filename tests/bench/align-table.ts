import type { Outcome } from './engine-run.ts';

export interface Result {
  name: string;
  outcomes: readonly Outcome[];
}

/** An accepted place this far below the best, or on a reflection, is a false accept. dB. */
const FALSE_DB = 1;
const CLOSE_DB = 0.2;

/** For each adjuster two turns to bracket and one to return, when nothing is flooded. */
const LEAST_TURNS = 6;

export const quantile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
};

const MOVE_S = 6;
const READ_S = 4;
const AIM_S = 60;
const minutes = (o: Outcome): number =>
  ((o.turns + o.gainChanges) * MOVE_S + o.readings * READ_S + o.reAims * AIM_S) / 60;
export const isFalse = (o: Outcome): boolean => o.accepted && (o.shortfall > FALSE_DB || o.onReflection);
const moves = (o: Outcome): number => o.turns + o.gainChanges;

const total = (outcomes: readonly Outcome[], pick: (o: Outcome) => number): number =>
  outcomes.reduce((sum, o) => sum + pick(o), 0);

type Row = Record<string, string | number>;

function row({ name, outcomes }: Result): Row {
  const accepted = outcomes.filter((o) => o.accepted);
  const pair = (pick: (o: Outcome) => number, digits = 0) =>
    [0.5, 0.95].map((share) => quantile(outcomes.map(pick), share).toFixed(digits)).join(' / ');
  const share = (n: number) => `${((100 * n) / outcomes.length).toFixed(2)} %`;
  const mean = (pick: (o: Outcome) => number) => (total(outcomes, pick) / outcomes.length).toFixed(2);
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
    'questions a job': mean((o) => o.questions),
    'aims by eye a job': mean((o) => o.reAims),
  };
}

export function printTable(results: readonly Result[], seed: number): void {
  console.log('Median / 95th percentile (/ worst):');
  console.table(Object.fromEntries(results.map((r) => [r.name, omitName(row(r))])));
  console.log(`No method can bracket both peaks and return in fewer than ${LEAST_TURNS} turns.`);
  for (const { name, outcomes } of results) {
    const list = (which: (o: Outcome) => boolean, say: (o: Outcome) => string) =>
      outcomes.flatMap((o, n) => (which(o) ? [`${seed + n}${say(o)}`] : [])).join(', ') || 'none';
    const falsely = list(isFalse, (o) => ` (${o.shortfall.toFixed(1)} dB)`);
    const unfinished = list(
      (o) => !o.accepted,
      () => '',
    );
    console.log(`${name}: falsely accepted: ${falsely}; not accepted: ${unfinished}`);
  }
}

const omitName = ({ method: _, ...rest }: Row): Row => rest;

/** The turns of each method compared with plain practice, and of a crew with errors compared with a careful one. */
export function printRatios(results: readonly Result[]): void {
  const plain = results.find((r) => r.name === 'plain practice');
  const [careful, erring] = results.filter((r) => r.name.startsWith('engine'));
  if (careful && erring) printRatio(erring, careful);
  for (const result of results) if (plain && result !== plain) printRatio(result, plain);
}

function printRatio({ name, outcomes }: Result, to: Result): void {
  const ratio = (pick: (o: Outcome) => number, share: number) =>
    (quantile(outcomes.map(pick), share) / quantile(to.outcomes.map(pick), share)).toFixed(2);
  const turns = (o: Outcome) => o.turns;
  console.log(
    `${name}: turns against ${to.name}: ${ratio(turns, 0.5)} at the median, ${ratio(turns, 0.95)} at the 95th percentile, ` +
      `${(total(outcomes, turns) / total(to.outcomes, turns)).toFixed(2)} all together; ` +
      `with gain settings ${ratio(moves, 0.5)} and ${ratio(moves, 0.95)}`,
  );
}
