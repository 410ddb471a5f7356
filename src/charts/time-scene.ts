import { line as linePath } from 'd3-shape';
import type { Mark, Sample, Series } from '../log/series.ts';
import type { MeterProfile } from '../model/profile.ts';
import {
  bandKey,
  KEYS,
  MOMENT_LABELS,
  panelMoment,
  STRETCH_LABELS,
  sampleText,
  TIME_TITLE,
  timeAxisTitle,
  timeChartName,
} from '../phrases/charts.ts';
import { gainLabel } from '../phrases/gain.ts';
import { readingText } from '../phrases/readings.ts';
import type { Times } from '../phrases/times.ts';
import { baseAxis, levelAxis, MARGIN, plotIn } from './frame.ts';
import { sampleKeys } from './keys.ts';
import { levels } from './levels.ts';
import { type PlacedLabel, placeLabels } from './place-labels.ts';
import { box, type Key, line, type Part, type Scene, text } from './scene.ts';
import { timeAxis } from './time-axis.ts';
import { type Captioned, PLOT_HEIGHT } from './turns-scene.ts';

const ROW = 15;

/** A stretch of time, shaded; single moments are lines. */
interface Band {
  readonly seq: number;
  readonly from: number;
  readonly to: number;
  /** Holds are many and have no label: the key says what they are. */
  readonly label?: string;
}

/** What became of something later, at its moment: known only from the whole log. */
export interface Note {
  readonly seq: number;
  readonly at: number;
  readonly text: string;
}

interface Look {
  readonly plotHeight?: number;
  readonly notes?: readonly Note[];
  /** A label in the language of the reader: its place follows from its length. */
  readonly said?: (english: string) => string;
}

/**
 * Reading against time, with everything that affects it. `whole`: the series of the whole log, which sets the
 * time axis: it must not grow in a replay.
 */
export function timeScene(
  series: Series,
  whole: Series,
  meter: MeterProfile,
  times: Times,
  width: number,
  { plotHeight = PLOT_HEIGHT, notes = [], said = (english) => english }: Look = {},
): Captioned {
  const title = TIME_TITLE;
  const { samples, gains } = series;
  if (samples.length === 0) return { title, caption: '', scene: undefined };
  // From the first to the last thing drawn: a phone that disconnects hours later must not squeeze the chart.
  const moments = [...whole.samples, ...whole.marks].map(({ at }) => at);
  const first = Math.min(...moments);
  const last = Math.max(...moments);
  const room = width - MARGIN.left - MARGIN.right;
  const { x, ticks, breaks } = timeAxis(moments, MARGIN.left, room);
  const bands = bandsOf(series.marks, last);
  const rules = series.marks.flatMap((mark) => {
    const label = ruleLabel(mark, series);
    return label === undefined ? [] : [{ mark, label }];
  });
  const inPlot = (at: number) => x(at) - MARGIN.left;
  const labels = placeLabels(
    [
      ...rules.map(({ mark, label }) => ({ key: `rule ${mark.seq}`, x: inPlot(mark.at), text: label })),
      ...notes.map(({ seq, at, text: words }) => ({ key: `note ${seq}`, x: inPlot(at), text: words })),
      ...bands.flatMap(({ seq, from: at, label }) =>
        label === undefined ? [] : [{ key: `band ${seq}`, x: inPlot(at), text: label }],
      ),
    ].map((label) => ({ ...label, text: said(label.text) })),
    room,
  );
  const plot = plotIn(width, 28 + ROW * (1 + Math.max(0, ...labels.map(({ row }) => row))), plotHeight);
  const foot = plot.y + plot.height;
  const level = levels(samples, meter, plot.height, plot.y);
  const path = linePath<Sample>(
    ({ at }) => x(at),
    ({ reading }) => level.y(reading),
  );
  const [least = 0, most = 0] = level.scale.domain();
  const tickLabels = times.labels(ticks);
  const parts: Part[] = [
    ...bands.map(({ from, to }) =>
      box('stretch', x(from), plot.y, Math.max(2, x(to) - x(from)), plot.height),
    ),
    ...levelAxis(level, meter, plot),
    ...[meter.bandLow, meter.bandHigh]
      .filter((edge) => edge >= least && edge <= most)
      .map((edge) => line('usable', `M${plot.x},${level.scale(edge)}h${plot.width}`)),
    ...baseAxis(
      ticks.map((at, index) => ({ x: x(at), label: tickLabels[index] ?? '' })),
      timeAxisTitle(times.day(first), times.zone(first)),
      plot,
    ),
    ...breaks.map((at) => line('strong', `M${at - 6},${foot + 6}l6,-12M${at},${foot + 6}l6,-12`)),
    ...rules.map(({ mark }) =>
      line(STRONG.has(mark.what) ? 'strong' : 'rule', `M${x(mark.at)},${plot.y - 4}V${foot}`),
    ),
    ...labels.flatMap((label) => leaderParts(label, plot.x, plot.y)),
    ...labels.map((label) => labelPart(label, plot.x, plot.y)),
    line('run', path(samples.filter(counts)) ?? ''),
    ...samples.map(
      (sample): Part => ({
        kind: 'sample',
        seq: sample.seq,
        x: x(sample.at),
        y: level.y(sample.reading),
        gain: sample.gain,
        retracted: sample.retractedBy !== undefined,
        cameBy: 0,
        label: sampleText(
          readingText(sample.reading, meter),
          times.clock(sample.at, true),
          gainLabel(gains, sample.gain),
          sample.seq,
        ),
      }),
    ),
  ];
  const keys: Key[] = [
    ...sampleKeys(samples, gains),
    {
      parts: [line('usable', 'M-9,0H9')],
      text: bandKey(meter),
    },
    ...(bands.length > 0 ? [{ parts: [box('stretch', -9, -7, 18, 14)], text: KEYS.stretch }] : []),
    ...(breaks.length > 0
      ? [{ parts: [line('strong', 'M-6,6l6,-12M0,6l6,-12')], text: KEYS.timeLeftOut }]
      : []),
  ];
  const scene: Scene = {
    width,
    height: foot + MARGIN.bottom,
    name: timeChartName(samples.length),
    parts,
    keys,
  };
  return { title, caption: '', scene };
}

const counts = ({ retractedBy }: Sample): boolean => retractedBy === undefined;

const STRONG: ReadonlySet<Mark['what']> = new Set(['accept', 'signed']);

const baseOf = (row: number, top: number): number => top - 10 - row * ROW;

/** The line down from a label that stands higher. */
function leaderParts({ x, row }: PlacedLabel, left: number, top: number): Part[] {
  return row > 0 ? [line('leader', `M${left + x},${baseOf(row, top) + 3}V${top - 4}`)] : [];
}

const labelPart = ({ textX, text: words, row, anchor }: PlacedLabel, left: number, top: number): Part =>
  text('label', left + textX + (anchor === 'end' ? 2 : -2), baseOf(row, top), words, anchor);

function ruleLabel(mark: Mark, { gains }: Series): string | undefined {
  switch (mark.what) {
    case 'gain':
      return gainLabel(gains, mark.gain ?? 0);
    case 're-aimed':
    case 'disturbed':
      return MOMENT_LABELS[mark.what];
    case 'accept':
      return mark.override ? MOMENT_LABELS.overridden : MOMENT_LABELS.accepted;
    case 'panel':
      return panelMoment(mark.shows);
    case 'signed':
    case 'stopped':
    case 'restarted':
      return MOMENT_LABELS[mark.what];
    default:
      return undefined;
  }
}

/** Which marks open a stretch, what it is called, and which close it. */
const STRETCHES: Partial<Record<Mark['what'], { label: string; closedBy: Mark['what'][] }>> = {
  blocked: { label: STRETCH_LABELS.blocked, closedBy: ['clear', 'partial', 're-aimed'] },
  partial: { label: STRETCH_LABELS.partial, closedBy: ['clear', 'blocked', 're-aimed'] },
  pause: { label: STRETCH_LABELS.pause, closedBy: ['resume', 'restarted'] },
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
