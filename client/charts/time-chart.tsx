import { scaleTime } from 'd3-scale';
import { line } from 'd3-shape';
import type { Mark, Sample, Series } from '../../src/log/series.ts';
import { readingText } from '../../src/phrases/readings.ts';
import type { MeterProfile } from '../../src/profile.ts';
import { BaseAxis, LevelAxis, MARGIN } from './axes.tsx';
import { gainLabel } from './gain-label.ts';
import { Legend, Swatch } from './legend.tsx';
import { type Levels, levels } from './levels.ts';
import { Marker, type Picks } from './marker.tsx';
import { placeLabels } from './place-labels.ts';
import { clock, clockLabels, timeZone } from './times.ts';
import { useWidth } from './use-width.ts';

const HEIGHT = 240;
const ROW = 15;
/** Room between marks on the time axis, pixels. */
const LABEL_ROOM = 84;
const SHORTEST_SPAN_MS = 60_000;

interface Props extends Picks {
  series: Series;
  /** The series of the whole log, which sets the time axis: in a replay it must not grow. */
  whole: Series;
  meter: MeterProfile;
}

/** Reading against time, with everything that bears on it. */
export function TimeChart(props: Props) {
  return (
    <figure class="chart wide">
      <figcaption>
        <h3>Reading against time</h3>
      </figcaption>
      {props.series.samples.length > 0 ? <Drawing {...props} /> : <p class="empty">No readings yet.</p>}
    </figure>
  );
}

/** A stretch of time, shaded; the rules are single moments. */
interface Band {
  seq: number;
  from: number;
  to: number;
  /** Holds are many and have none: the legend says what they are. */
  label?: string;
}

function Drawing({ series, whole, meter, onPick }: Props) {
  const [ref, outer] = useWidth<HTMLDivElement>(900);
  const width = Math.max(200, outer - MARGIN.left - MARGIN.right);
  const { samples, gains } = series;
  // From the first to the last thing drawn: a phone that drops off hours later must not squeeze it all.
  const times = [...whole.samples, ...whole.marks].map(({ at }) => at);
  const from = Math.min(...times);
  const to = Math.max(...times);
  const span = Math.max(to - from, SHORTEST_SPAN_MS);
  const x = scaleTime()
    .domain([from, from + span])
    .range([0, width]);
  const ticks = x.ticks(Math.max(2, Math.floor(width / LABEL_ROOM))).map((tick) => tick.getTime());
  const tickLabels = clockLabels(ticks);
  const level = levels(samples, meter, HEIGHT);
  const path = line<Sample>(
    ({ at }) => x(at),
    ({ reading }) => level.y(reading),
  );
  const bands = bandsOf(series.marks, to);
  const rules = series.marks.flatMap((mark) => {
    const label = ruleLabel(mark, series);
    return label === undefined ? [] : [{ mark, label }];
  });
  const labels = placeLabels(
    [
      ...rules.map(({ mark, label }) => ({ key: `rule ${mark.seq}`, x: x(mark.at), text: label })),
      ...bands.flatMap(({ seq, from: at, label }) =>
        label === undefined ? [] : [{ key: `band ${seq}`, x: x(at), text: label }],
      ),
    ],
    width,
  );
  const top = 28 + ROW * (1 + Math.max(0, ...labels.map(({ row }) => row)));
  const rowY = (row: number) => -10 - row * ROW;
  return (
    <>
      <div ref={ref} class="drawing">
        <svg
          viewBox={`0 0 ${width + MARGIN.left + MARGIN.right} ${top + HEIGHT + MARGIN.bottom}`}
          aria-label={`${samples.length} readings against time`}
        >
          <defs>
            <pattern
              id="hatch"
              width={6}
              height={6}
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(45)"
            >
              <line class="hatch" y2={6} />
            </pattern>
          </defs>
          <g transform={`translate(${MARGIN.left},${top})`}>
            {bands.map((band) => (
              <rect
                key={band.seq}
                class="stretch"
                x={x(band.from)}
                width={Math.max(2, x(band.to) - x(band.from))}
                height={HEIGHT}
              />
            ))}
            <LevelAxis levels={level} meter={meter} width={width} height={HEIGHT} titleY={-top + 12} />
            <BandEdges levels={level} meter={meter} width={width} />
            <BaseAxis
              ticks={ticks.map((at, index) => ({ x: x(at), label: tickLabels[index] ?? '' }))}
              title={`Time, ${timeZone(from)}`}
              width={width}
              height={HEIGHT}
            />
            {rules.map(({ mark }) => (
              <line
                key={mark.seq}
                class={mark.what === 'accept' ? 'rule strong' : 'rule'}
                x1={x(mark.at)}
                x2={x(mark.at)}
                y1={-4}
                y2={HEIGHT}
              />
            ))}
            {labels.map(({ key, x: at, text, row, anchor }) => (
              <g key={key}>
                <text class="moment" x={at} y={rowY(row)} text-anchor={anchor} dx={anchor === 'end' ? 2 : -2}>
                  {text}
                </text>
                {row > 0 && <line class="leader" x1={at} x2={at} y1={rowY(row) + 3} y2={-4} />}
              </g>
            ))}
            <path class="run" d={path(samples.filter(joins)) ?? ''} />
            {samples.map((sample) => (
              <Marker
                key={sample.seq}
                x={x(sample.at)}
                y={level.y(sample.reading)}
                gain={sample.gain}
                retracted={sample.retractedBy !== undefined}
                label={`${readingText(sample.reading, meter)} at ${clock(sample.at, true)}, ${gainLabel(gains, sample.gain)}, entry ${sample.seq}`}
                onPick={() => onPick(sample.seq)}
              />
            ))}
          </g>
        </svg>
      </div>
      <Legend gains={gains} samples={samples}>
        <li>
          <Swatch>
            <line class="usable" x1={-9} x2={9} />
          </Swatch>
          band {meter.bandLow} to {meter.bandHigh} {meter.unit}
        </li>
        {bands.length > 0 && (
          <li>
            <Swatch>
              <rect class="stretch" x={-9} y={-7} width={18} height={14} />
            </Swatch>
            hold, pause or covered beam
          </li>
        )}
      </Legend>
    </>
  );
}

const joins = ({ retractedBy }: Sample): boolean => retractedBy === undefined;

/** The edges of the band in which an alignment may be accepted, where the scale shows them. */
function BandEdges({ levels, meter, width }: { levels: Levels; meter: MeterProfile; width: number }) {
  const [low = 0, high = 0] = levels.scale.domain();
  return (
    <g>
      {[meter.bandLow, meter.bandHigh]
        .filter((edge) => edge >= low && edge <= high)
        .map((edge) => (
          <line key={edge} class="usable" x2={width} y1={levels.scale(edge)} y2={levels.scale(edge)} />
        ))}
    </g>
  );
}

function ruleLabel(mark: Mark, { gains }: Series): string | undefined {
  switch (mark.what) {
    case 'gain':
      return gainLabel(gains, mark.gain ?? 0);
    case 're-aimed':
      return 'aimed by eye';
    case 'accept':
      return mark.override ? 'accepted by override' : 'accepted';
    case 'stopped':
    case 'restarted':
      return mark.what;
    default:
      return undefined;
  }
}

/** Which marks open a stretch, what it is called, and which close it. */
const STRETCHES: Partial<Record<Mark['what'], { label: string; closedBy: Mark['what'][] }>> = {
  blocked: { label: 'covered', closedBy: ['clear', 'partial', 're-aimed'] },
  partial: { label: 'half covered', closedBy: ['clear', 'blocked', 're-aimed'] },
  pause: { label: 'pause', closedBy: ['resume', 'restarted'] },
};

function bandsOf(marks: readonly Mark[], end: number): Band[] {
  return marks.flatMap(({ seq, at, what, until }, index) => {
    if (what === 'hold') return [{ seq, from: at, to: Math.min(until ?? at, end) }];
    const stretch = STRETCHES[what];
    if (!stretch) return [];
    const close = marks.slice(index + 1).find((later) => stretch.closedBy.includes(later.what));
    return [{ seq, from: at, to: close?.at ?? end, label: stretch.label }];
  });
}
