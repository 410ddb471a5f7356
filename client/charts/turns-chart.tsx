import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { type Sample, type Series, type Sweep, type Top, topOf } from '../../src/log/series.ts';
import { amountGlyph } from '../../src/phrases/amounts.ts';
import { readingText } from '../../src/phrases/readings.ts';
import type { MeterProfile } from '../../src/profile.ts';
import type { Axis, Eighths } from '../../src/turns.ts';
import { BaseAxis, LevelAxis, MARGIN } from './axes.tsx';
import { gainLabel } from './gain-label.ts';
import { Legend, Swatch } from './legend.tsx';
import { levels } from './levels.ts';
import { Marker, type Picks } from './marker.tsx';
import { useWidth } from './use-width.ts';

const HEIGHT = 240;
const TOP = 40;
const NAME: Record<Axis, string> = { horizontal: 'Horizontal adjuster', vertical: 'Vertical adjuster' };

/** "+¼", "−1½", "0": a position, clockwise positive. */
export const positionText = (eighths: Eighths): string =>
  eighths === 0 ? '0' : `${eighths > 0 ? '+' : '−'}${amountGlyph(eighths)}`;

/** Reading against turns of one adjuster, since the emitter was last aimed by eye. */
export function TurnsChart(props: { series: Series; axis: Axis; meter: MeterProfile } & Picks) {
  const { series, axis } = props;
  const sweeps = series.sweeps.filter((sweep) => sweep.axis === axis && sweep.aim === series.aim);
  const left = series.sweeps
    .filter((sweep) => sweep.axis === axis && sweep.aim !== series.aim)
    .reduce((sum, { samples }) => sum + samples.length, 0);
  const top = topOf(series, axis);
  return (
    <figure class="chart">
      <figcaption>
        <h3>{NAME[axis]}: reading against turns</h3>
        <p>{captionOf(top, series.position[axis], props)}</p>
      </figcaption>
      {sweeps.some(({ samples }) => samples.length > 0) ? (
        <Drawing {...props} sweeps={sweeps} top={top} />
      ) : (
        <p class="empty">
          No readings while this adjuster was turned{series.aim > 0 ? ' since the last aim by eye' : ''}.
        </p>
      )}
      {left > 0 && <p class="note">{left} readings from before the last aim by eye are not shown.</p>}
    </figure>
  );
}

function captionOf(
  top: Top | undefined,
  end: Eighths,
  { axis, series, meter }: { axis: Axis; series: Series; meter: MeterProfile },
): string {
  const left = `Left at ${positionText(end)}.`;
  if (!top) return left;
  const at = positionText(top.sample.position[axis]);
  const sides = `read at ${counted(top.below)} below it and ${top.above} above`;
  const highest = readingText(top.sample.reading, meter);
  return `Highest ${highest} at ${at}, ${gainLabel(series.gains, top.sample.gain)}; ${sides}. ${left}`;
}

const counted = (n: number): string => `${n} position${n === 1 ? '' : 's'}`;

type DrawingProps = {
  series: Series;
  axis: Axis;
  meter: MeterProfile;
  sweeps: Sweep[];
  top: Top | undefined;
} & Picks;

function Drawing({ series, axis, meter, sweeps, top, onPick }: DrawingProps) {
  const [ref, outer] = useWidth<HTMLDivElement>(560);
  const width = Math.max(200, outer - MARGIN.left - MARGIN.right);
  const samples = [...new Set(sweeps.flatMap((sweep) => sweep.samples))];
  const positions = [...samples.map(({ position }) => position[axis]), series.position[axis]];
  const low = Math.min(...positions, -2) - 1;
  const high = Math.max(...positions, 2) + 1;
  const x = scaleLinear().domain([low, high]).range([0, width]);
  const level = levels(samples, meter, HEIGHT);
  const xOf = (sample: Sample) => x(sample.position[axis]);
  const yOf = (sample: Sample) => level.y(sample.reading);
  const path = line<Sample>(xOf, yOf);
  return (
    <>
      <div ref={ref} class="drawing">
        <svg
          viewBox={`0 0 ${width + MARGIN.left + MARGIN.right} ${TOP + HEIGHT + MARGIN.bottom}`}
          aria-label={`${NAME[axis]}: ${samples.length} readings against turns`}
        >
          <g transform={`translate(${MARGIN.left},${TOP})`}>
            <LevelAxis levels={level} meter={meter} width={width} height={HEIGHT} titleY={-TOP + 12} />
            <BaseAxis
              ticks={turnTicks(low, high, width).map((at) => ({ x: x(at), label: positionText(at) }))}
              title={`Turns from ${series.aim > 0 ? 'the last aim by eye' : 'the start'}, clockwise +`}
              width={width}
              height={HEIGHT}
            />
            {top && (
              <Peak at={xOf(top.sample)} label={readingText(top.sample.reading, meter)} width={width} />
            )}
            <path class="end" d={`M${x(series.position[axis])},${HEIGHT}l6,10h-12z`} />
            {sweeps.flatMap((sweep, index) =>
              runsOf(sweep).map((run) => (
                <path
                  key={`${index}-${run[0]?.seq}`}
                  class={sweep === sweeps.at(-1) ? 'run' : 'run earlier'}
                  d={path(run) ?? ''}
                />
              )),
            )}
            {samples.map((sample) => (
              <Marker
                key={sample.seq}
                x={xOf(sample)}
                y={yOf(sample)}
                gain={sample.gain}
                retracted={sample.retractedBy !== undefined}
                cameBy={sample.cameBy[axis]}
                label={`${readingText(sample.reading, meter)} at ${positionText(sample.position[axis])}, ${gainLabel(series.gains, sample.gain)}, entry ${sample.seq}`}
                onPick={() => onPick(sample.seq)}
              />
            ))}
          </g>
        </svg>
      </div>
      <Legend gains={series.gains} samples={samples}>
        <li>
          <Swatch>
            <path class="tail" d="M-9,0H4" />
            <circle class="marker" cx={5} r={3.5} />
          </Swatch>
          tail: side it was turned from
        </li>
        <li>
          <Swatch>
            <path class="end" d="M0,-6l6,10h-12z" />
          </Swatch>
          where it was left
        </li>
        {sweeps.length > 1 && (
          <li>
            <Swatch>
              <path class="run earlier" d="M-9,0H9" />
            </Swatch>
            earlier, the other adjuster elsewhere
          </li>
        )}
      </Legend>
    </>
  );
}

function Peak({ at, label, width }: { at: number; label: string; width: number }) {
  const anchor = at < 40 ? 'start' : at > width - 40 ? 'end' : 'middle';
  return (
    <g class="peak" transform={`translate(${at},0)`}>
      <line y1={-6} y2={HEIGHT} />
      <text y={-10} text-anchor={anchor}>
        highest {label}
      </text>
    </g>
  );
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

/** The parts of a sweep that may be joined by a line: numbers that count, at one gain. */
function runsOf(sweep: Sweep): Sample[][] {
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
