/** How much the most likely meaning was believed, and whether it was right. */
export interface Believed {
  belief: number;
  right: boolean;
}

const EDGES = [0, 0.2, 0.4, 0.6, 0.8, 0.9, 0.97, 1.001];
const THRESHOLDS = [0.4, 0.6, 0.7, 0.8, 0.85, 0.9, 0.91, 0.92, 0.94, 0.95, 0.96, 0.97, 0.98, 0.99];

const percent = (part: number, whole: number): string =>
  `${((100 * part) / Math.max(1, whole)).toFixed(1)} %`;

/** How often it is right, for each degree of belief. */
export function printBins(all: readonly Believed[]): void {
  for (const [i, low] of EDGES.slice(0, -1).entries()) {
    const high = EDGES[i + 1] as number;
    const inside = all.filter(({ belief }) => belief >= low && belief < high);
    const right = inside.filter((one) => one.right).length;
    console.log(
      `believed ${low} to ${Math.min(1, high)}: n ${inside.length}, right ${percent(right, inside.length)}`,
    );
  }
}

/** What each threshold would do: how many of all are taken right, and how many wrong. */
export function printThresholds(all: readonly Believed[]): void {
  for (const least of THRESHOLDS) {
    const taken = all.filter(({ belief }) => belief >= least);
    const wrong = taken.filter(({ right }) => !right).length;
    console.log(
      `taken from ${least.toFixed(2)}: right ${percent(taken.length - wrong, all.length).padStart(7)}, wrong ${percent(wrong, all.length).padStart(7)}, n ${all.length}`,
    );
  }
}
