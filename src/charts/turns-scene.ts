import { scaleLinear } from 'd3-scale';
import { area as areaPath, curveMonotoneX, line as linePath } from 'd3-shape';
import type { Curve } from '../engine/curve.ts';
import type { Sample, Series, Sweep, Top } from '../log/series.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import {
  highestCaption,
  highestText,
  KEYS,
  leftAt,
  sampleText,
  turnsAxisTitle,
  turnsChartName,
  turnsTitle,
} from '../phrases/charts.ts';
import { gainLabel } from '../phrases/gain.ts';
import { estimateText, positionText } from '../phrases/position.ts';
import { readingText } from '../phrases/readings.ts';
import type { Along } from './along.ts';
import { baseAxis, levelAxis, plotIn } from './frame.ts';
import { sampleKeys } from './keys.ts';
import { levels } from './levels.ts';
import { area, type Key, line, type Part, type Scene, text } from './scene.ts';

/** Height of the plot, pixels. */
export const PLOT_HEIGHT = 240;
const TOP = 40;

/** A chart with its heading and a sentence on the result. */
export interface Captioned {
  readonly title: string;
  readonly caption: string;
  /** Undefined if there is nothing to draw. */
  readonly scene: Scene | undefined;
}

/** Reading against turns of one adjuster, since the emitter was last aimed by eye. `along`: of the same series. */
export function turnsScene(
  series: Series,
  { sweeps, samples, low, high, top, curve }: Along,
  axis: Axis,
  meter: MeterProfile,
  width: number,
  plotHeight = PLOT_HEIGHT,
): Captioned {
  const title = turnsTitle(axis);
  const caption = captionOf(series, axis, meter, top, curve);
  if (samples.length === 0) return { title, caption, scene: undefined };

  const plot = plotIn(width, TOP, plotHeight);
  const foot = plot.y + plot.height;
  const x = scaleLinear()
    .domain([low, high])
    .range([plot.x, plot.x + plot.width]);
  const level = levels(samples, meter, plot.height, plot.y);
  const xOf = (sample: Sample) => x(sample.position[axis]);
  const run = linePath<Sample>(xOf, ({ reading }) => level.y(reading));
  const joined = curve ? [] : sweeps;
  const parts: Part[] = [
    ...(curve ? likely(curve, x, level.scale) : []),
    ...levelAxis(level, meter, plot),
    ...baseAxis(
      turnTicks(low, high, plot.width).map((at) => ({ x: x(at), label: positionText(at) })),
      turnsAxisTitle(series.aim > 0),
      plot,
    ),
    ...(curve ? fitLine(curve, x, level.scale) : []),
    ...(top ? peak(xOf(top.sample), plot, highestText(readingText(top.sample.reading, meter))) : []),
    area('end', `M${x(series.position[axis])},${foot}l6,10h-12z`),
    // Straight lines between readings would cross the fitted curve: the curve alone says how they go on.
    ...joined.flatMap((sweep) =>
      runsOf(sweep).map((each) => line(sweep === sweeps.at(-1) ? 'run' : 'earlier', run(each) ?? '')),
    ),
    ...samples.map(
      (sample): Part => ({
        kind: 'sample',
        seq: sample.seq,
        x: xOf(sample),
        y: level.y(sample.reading),
        gain: sample.gain,
        retracted: sample.retractedBy !== undefined,
        cameBy: sample.cameBy[axis],
        label: sampleText(
          readingText(sample.reading, meter),
          positionText(sample.position[axis]),
          gainLabel(series.gains, sample.gain),
          sample.seq,
        ),
      }),
    ),
  ];
  const keys: Key[] = [
    ...sampleKeys(samples, series.gains),
    ...(curve ? [LIKELY] : []),
    TAIL,
    LEFT,
    ...(joined.length > 1 ? [EARLIER] : []),
  ];
  const name = turnsChartName(axis, samples.length);
  return { title, caption, scene: { width, height: foot + 50, name, parts, keys } };
}

const LIKELY: Key = {
  parts: [area('likely', 'M-9,-6h18v12h-18Z'), line('fit', 'M-9,0H9')],
  text: KEYS.likely,
};
const TAIL: Key = {
  parts: [
    line('tail', 'M-9,0H4'),
    { kind: 'sample', seq: 0, x: 4, y: 0, gain: 0, retracted: false, cameBy: 0, label: '' },
  ],
  text: KEYS.tail,
};
const LEFT: Key = { parts: [area('end', 'M0,-6l6,10h-12z')], text: KEYS.left };
const EARLIER: Key = {
  parts: [line('earlier', 'M-9,0H9')],
  text: KEYS.earlier,
};

type Scale = ReturnType<typeof scaleLinear<number, number>>;
type Point = Curve['points'][number];

export function likely({ points }: Curve, x: Scale, y: Scale): Part[] {
  const [least = 0, most = 0] = y.domain();
  const held = (value: number) => y(Math.min(most, Math.max(least, value)));
  const shade = areaPath<Point>(
    ({ at }) => x(at),
    ({ low }) => held(low),
    ({ high }) => held(high),
  );
  return [area('likely', shade([...points]) ?? '')];
}

export function fitLine({ points }: Curve, x: Scale, y: Scale): Part[] {
  const [least = 0, most = 0] = y.domain();
  const curve = linePath<Point>(
    ({ at }) => x(at),
    ({ value }) => y(value),
  )
    .curve(curveMonotoneX)
    .defined(({ value }) => value >= least && value <= most);
  return [line('fit', curve([...points]) ?? '')];
}

function peak(
  x: number,
  plot: { x: number; y: number; width: number; height: number },
  words: string,
): Part[] {
  const anchor = x - plot.x < 40 ? 'start' : x - plot.x > plot.width - 40 ? 'end' : 'middle';
  return [
    line('peak', `M${x},${plot.y - 6}V${plot.y + plot.height}`),
    text('title', x, plot.y - 10, words, anchor),
  ];
}

function captionOf(
  series: Series,
  axis: Axis,
  meter: MeterProfile,
  top: Top | undefined,
  curve: Curve | undefined,
): string {
  const left = leftAt(positionText(series.position[axis]));
  if (!top) return left;
  const highest = highestCaption({
    reading: readingText(top.sample.reading, meter),
    position: positionText(top.sample.position[axis]),
    gain: gainLabel(series.gains, top.sample.gain),
    below: top.below,
    above: top.above,
    fitted: curve && estimateText(curve.peak),
  });
  return `${highest} ${left}`;
}

/** Steps between marks, in eighths: the first that leaves room for the labels. */
const STEPS = [1, 2, 4, 8, 16, 32, 64];
const LABEL_ROOM = 46;

function turnTicks(low: Eighths, high: Eighths, width: number): Eighths[] {
  const step = STEPS.find((each) => (width * each) / (high - low) >= LABEL_ROOM) ?? 128;
  const first = Math.ceil(low / step);
  const last = Math.floor(high / step);
  return Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
}

/** The parts of a sweep that a line may join: numbers that count, at one gain. */
export function runsOf(sweep: Sweep): Sample[][] {
  const runs: Sample[][] = [];
  let before: Sample | undefined;
  for (const sample of sweep.samples) {
    if (sample.retractedBy !== undefined) continue;
    const joins =
      before?.gain === sample.gain && before.reading.kind === 'value' && sample.reading.kind === 'value';
    if (joins) runs.at(-1)?.push(sample);
    else runs.push([sample]);
    before = sample;
  }
  return runs.filter((run) => run.length > 1);
}
