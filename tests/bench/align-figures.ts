import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ScaleContinuousNumeric, scaleLinear, scaleLog } from 'd3-scale';
import type { Result } from './align-table.ts';
import type { Outcome } from './engine-run.ts';

/** Widths and dashes, so that the methods differ in black and white. The thick lines are the engine's. */
const STROKES = [
  [3, ''],
  [2.2, '9 4'],
  [1.2, ''],
  [1.2, '2 3'],
  [1.2, '8 3 2 3'],
] as const;

function stroke(method: number, d: string): string {
  const [width, dash] = STROKES[method % STROKES.length] ?? STROKES[0];
  return `<path fill="none" stroke="#000" stroke-width="${width}" stroke-dasharray="${dash}" d="${d}"/>`;
}

const SIZE = { width: 640, height: 360, left: 60, right: 16, top: 16, bottom: 48, key: 18 };

interface Figure {
  readonly title: string;
  readonly x: ScaleContinuousNumeric<number, number>;
  readonly ticks: readonly number[];
  /** A limit that is drawn as a line. */
  readonly limit?: number;
  readonly pick: (o: Outcome) => number;
}

/** Draws for each method the share of cases that needed at most so much. */
export function writeFigures(results: readonly Result[], folder: string): void {
  mkdirSync(folder, { recursive: true });
  const range = [SIZE.left, SIZE.width - SIZE.right];
  const figures: Record<string, Figure> = {
    'turns.svg': {
      title: 'turns of a screw until accepted',
      x: scaleLinear([0, 70], range),
      ticks: [0, 10, 20, 30, 40, 50, 60, 70],
      pick: (o) => (o.accepted ? o.turns : Number.POSITIVE_INFINITY),
    },
    'shortfall.svg': {
      title: 'accepted no further below the best than, dB',
      x: scaleLog([0.001, 3], range),
      ticks: [0.001, 0.003, 0.01, 0.03, 0.1, 0.2, 0.3, 1, 3],
      limit: 0.2,
      pick: (o) => (o.accepted ? Math.max(0.001, o.shortfall) : Number.POSITIVE_INFINITY),
    },
  };
  for (const [name, figure] of Object.entries(figures))
    writeFileSync(join(folder, name), drawing(figure, results));
}

function drawing({ title, x, ticks, limit, pick }: Figure, results: readonly Result[]): string {
  const { width, height, left, right, top, bottom, key } = SIZE;
  const floor = height - bottom;
  const y = scaleLinear([0, 1], [floor, top]);
  const grid = [0, 0.25, 0.5, 0.75, 1].map(
    (share) =>
      `<path stroke="#ccc" d="M${left},${y(share)}H${width - right}"/><text x="${left - 8}" y="${y(share) + 4}" text-anchor="end">${100 * share} %</text>`,
  );
  const marks = ticks.map(
    (tick) =>
      `<path stroke="#000" d="M${x(tick)},${floor}v5"/><text x="${x(tick)}" y="${floor + 20}" text-anchor="middle">${tick}</text>`,
  );
  const curves = results.map(({ outcomes }, i) => stroke(i, steps(outcomes.map(pick), x, y)));
  const keys = results.map(({ name }, i) => {
    const at = height + key * i + 6;
    return `${stroke(i, `M${left},${at}h48`)}<text x="${left + 58}" y="${at + 4}">${name}</text>`;
  });
  const bound =
    limit === undefined
      ? ''
      : `<path stroke="#000" stroke-dasharray="1 4" d="M${x(limit)},${top}V${floor}"/>`;
  const tall = height + key * results.length + 6;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${tall}" font-family="sans-serif" font-size="13">
<title>Share of cases: ${title}</title>
<rect width="${width}" height="${tall}" fill="#fff"/>
${[...grid, ...marks, bound, ...curves].join('\n')}
<text x="${width - right}" y="${floor + 40}" text-anchor="end">${title}</text>
${keys.join('\n')}
</svg>
`;
}

/** The share of the values up to each, as a path of steps. */
function steps(values: number[], x: Figure['x'], y: (share: number) => number): string {
  const sorted = values.sort((a, b) => a - b).filter(Number.isFinite);
  const [from = 0, to = 0] = x.range();
  let path = `M${from},${y(0)}`;
  // Of all points on one pixel only the last is drawn.
  const pixel = (value = Number.POSITIVE_INFINITY) => Math.round(Math.min(to, x(value)));
  for (const [i, value] of sorted.entries()) {
    if (i + 1 < sorted.length && pixel(value) === pixel(sorted[i + 1])) continue;
    path += `H${pixel(value)}V${y((i + 1) / values.length).toFixed(1)}`;
  }
  return `${path}H${to}`;
}
