import { scaleLinear } from 'd3-scale';
import { line as linePath } from 'd3-shape';
import { SPREAD } from '../engine/curve.ts';
import type { Search } from '../engine/search.ts';
import type { Sample, Series } from '../log/series.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { Axis } from '../model/turns.ts';
import { PEAK_UNKNOWN, peakThought, turnsChartName } from '../phrases/charts.ts';
import { estimateText } from '../phrases/position.ts';
import { alongAxis } from './along.ts';
import { levels } from './levels.ts';
import { area, box, line, type Part, type Scene } from './scene.ts';
import { fitLine, likely, runsOf } from './turns-scene.ts';

/** In and out of the plot, pixels, so that no mark is cut at the edge. */
const EDGE = 7;

/** A chart without figures, to be seen beside other things; its result is in words. */
export interface Small {
  /** Where the peak is thought to be and how sure that is, or that it is not known. */
  readonly words: string;
  readonly scene: Scene;
}

/**
 * The readings along one adjuster with the fitted beam, as `turnsScene`, in `width` by `height` pixels. Where the peak is
 * thought to be is a broken line, and the bar on the ground below it is how sure that is: 95 % within the bar.
 */
export function smallTurnsScene(
  series: Series,
  search: Search | undefined,
  axis: Axis,
  meter: MeterProfile,
  { width, height }: { width: number; height: number },
): Small {
  const { sweeps, samples, low, high, curve } = alongAxis(series, search, axis);
  const foot = height - EDGE;
  const x = scaleLinear()
    .domain([low, high])
    .range([EDGE, width - EDGE])
    .clamp(true);
  const level = levels(samples, meter, foot - 2 * EDGE, EDGE);
  const at = ({ position }: Sample) => x(position[axis]);
  const run = linePath<Sample>(at, ({ reading }) => level.y(reading));
  const parts: Part[] = [
    ...(curve ? [...likely(curve, x, level.scale), ...fitLine(curve, x, level.scale)] : []),
    line('frame', `M${EDGE},${foot}H${width - EDGE}`),
    ...(curve ? peakBar(x(curve.peak.value), sureness(curve.peak, x), foot) : []),
    ...(curve ? [] : sweeps.flatMap((sweep) => runsOf(sweep).map((each) => line('run', run(each) ?? '')))),
    ...samples.map(
      (sample): Part => ({
        kind: 'sample',
        seq: sample.seq,
        x: at(sample),
        y: level.y(sample.reading),
        gain: sample.gain,
        retracted: sample.retractedBy !== undefined,
        cameBy: 0,
        label: '',
      }),
    ),
    area('end', `M${x(series.position[axis])},${foot}l5,${EDGE}h-10z`),
  ];
  const words = curve ? peakThought(axis, estimateText(curve.peak)) : PEAK_UNKNOWN;
  const name = `${turnsChartName(axis, samples.length)}. ${words}.`;
  return { words, scene: { width, height, name, parts, keys: [] } };
}

type Scale = (at: number) => number;

const sureness = ({ value, sd }: { value: number; sd: number }, x: Scale): [number, number] => [
  x(value - SPREAD * sd),
  x(value + SPREAD * sd),
];

const BAR = 5;

const peakBar = (at: number, [from, to]: [number, number], foot: number): Part[] => [
  line('peak', `M${at},1V${foot}`),
  box('sure', from, foot - BAR, Math.max(2, to - from), BAR),
];
