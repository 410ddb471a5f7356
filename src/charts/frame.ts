import type { MeterProfile } from '../model/profile.ts';
import { readingAxisTitle } from '../phrases/charts.ts';
import { readingText, valueText } from '../phrases/readings.ts';
import type { Levels } from './levels.ts';
import { line, type Part, text } from './scene.ts';

/** Space around the plot, pixels: for the scale's numbers on the left, and the axis with its title below. */
export const MARGIN = { left: 62, right: 14, bottom: 50 } as const;

/** Half the height of a digit: baselines are this far below the point that they are centred on. */
const MIDDLE = 4;

/** Where the plot is in its scene. */
export interface Plot {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export const plotIn = (outer: number, top: number, height: number): Plot => ({
  x: MARGIN.left,
  y: top,
  width: Math.max(120, outer - MARGIN.left - MARGIN.right),
  height,
});

/** The vertical axis with its unit, and the strips for readings without a number. `levels` in scene pixels. */
export function levelAxis({ scale, saturated, none }: Levels, meter: MeterProfile, plot: Plot): Part[] {
  const [bottom = 0, top = 0] = scale.range();
  const right = plot.x + plot.width;
  const strip = (edge: number, at: number, label: string): Part[] => [
    line('edge', `M${plot.x},${edge}H${right}`),
    text('small', plot.x - 4, at + MIDDLE, label, 'end'),
  ];
  return [
    ...scale.ticks(5).flatMap((tick) => {
      const y = scale(tick);
      return [
        line('grid', `M${plot.x},${y}H${right}`),
        text('label', plot.x - 8, y + MIDDLE, valueText(tick, meter), 'end'),
      ];
    }),
    line('frame', `M${plot.x},${plot.y}V${plot.y + plot.height}H${right}`),
    ...(saturated === undefined ? [] : strip(top, saturated, readingText({ kind: 'saturated' }, meter))),
    ...(none === undefined ? [] : strip(bottom, none, readingText({ kind: 'none' }, meter))),
    text('title', 2, 12, readingAxisTitle(meter), 'start'),
  ];
}

/** The horizontal axis: marks at scene positions, and a title. */
export function baseAxis(ticks: readonly { x: number; label: string }[], title: string, plot: Plot): Part[] {
  const y = plot.y + plot.height;
  return [
    ...ticks.flatMap(({ x, label }) => [
      line('frame', `M${x},${y}v5`),
      text('label', x, y + 20, label, 'middle'),
    ]),
    text('title', plot.x + plot.width, y + 42, title, 'end'),
  ];
}
