import { scaleTime } from 'd3-scale';
import { line as linePath } from 'd3-shape';
import type { GainAt } from '../findings/behind-gain.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { MeterProfile } from '../model/profile.ts';
import { valueReading } from '../model/reading.ts';
import {
  gainAtText,
  HISTORY_AXIS,
  HISTORY_TITLE,
  historyCaption,
  historyName,
  LIMIT_KEYS,
  pointText,
} from '../phrases/history.ts';
import { valueText } from '../phrases/readings.ts';
import type { Times } from '../phrases/times.ts';
import { readingBehind } from '../plan/expected.ts';
import { baseAxis, levelAxis, MARGIN, plotIn } from './frame.ts';
import { levels } from './levels.ts';
import { type Key, line, type Part, type Scene } from './scene.ts';
import type { Captioned } from './turns-scene.ts';

const TOP = 28;
const HEIGHT = 150;
/** Space for a date along the axis, pixels; half of it before the first visit and after the last. */
const DATE_ROOM = 110;
const SIDE = DATE_ROOM / 2;

/** A pair's history, as far as it is drawn. */
export interface History {
  readonly meter: MeterProfile;
  /** Oldest first. */
  readonly points: readonly {
    /** When it was read, ms. */
    readonly at: number;
    readonly value: number;
    readonly gain?: GainAt | undefined;
    /** The same for the same setting of the gain. */
    readonly setting: string;
    /** Light lost since the first, signal and gain together, dB. */
    readonly lost?: number | undefined;
  }[];
}

/** The signal that each visit left, with the limits of the plan. Fewer than two visits are no history: nothing is drawn. */
export function historyScene(
  { meter, points }: History,
  plan: Pick<PairPlan, 'leastSignal' | 'mostLoss'>,
  times: Times,
  width: number,
  plotHeight = HEIGHT,
): Captioned {
  const [first] = points;
  const last = points.at(-1);
  const limits = limitsOf({ meter, points }, plan);
  const caption = historyCaption({ visits: points.length, lost: last?.lost, plan, unit: meter.unit });
  if (!first || !last || first.at === last.at) return { title: HISTORY_TITLE, caption, scene: undefined };
  const plot = plotIn(width, TOP, plotHeight);
  const { at: from } = first;
  const { at: to } = last;
  const x = scaleTime()
    .domain([from, to])
    .range([plot.x + SIDE, plot.x + plot.width - SIDE]);
  const settings = [...new Set(points.map(({ setting }) => setting))];
  const samples = points.map((point) => ({
    ...point,
    reading: valueReading(point.value),
  }));
  const level = levels(
    [...samples, ...limits.map(({ value }) => ({ reading: valueReading(value) }))],
    meter,
    plot.height,
    plot.y,
  );
  const path = linePath<(typeof samples)[number]>(
    ({ at }) => x(at),
    ({ reading }) => level.y(reading),
  );
  const mark = (setting: string): number => settings.indexOf(setting);
  const parts: Part[] = [
    ...levelAxis(level, meter, plot),
    ...baseAxis(dates(points, x, times), HISTORY_AXIS, plot),
    ...limits.map(({ kind, value }) =>
      line(kind === 'leastSignal' ? 'strong' : 'peak', `M${plot.x},${level.scale(value)}h${plot.width}`),
    ),
    // Readings at two gains are not one falling line.
    ...runs(samples).map((run) => line('run', path(run) ?? '')),
    ...samples.map(
      ({ at, value, gain, setting, reading }): Part => ({
        kind: 'sample',
        seq: 0,
        x: x(at),
        y: level.y(reading),
        gain: mark(setting),
        retracted: false,
        cameBy: 0,
        label: pointText(`${valueText(value, meter)} ${meter.unit}`, times.day(at), gainAtText(gain)),
      }),
    ),
  ];
  const keys: Key[] = [
    ...settings.map(
      (setting): Key => ({
        parts: [
          {
            kind: 'sample',
            seq: 0,
            x: 0,
            y: 0,
            gain: mark(setting),
            retracted: false,
            cameBy: 0,
            label: '',
          },
        ],
        text: gainAtText(points.find((point) => point.setting === setting)?.gain),
      }),
    ),
    ...limits.map(
      ({ kind }): Key => ({
        parts: [line(kind === 'leastSignal' ? 'strong' : 'peak', 'M-9,0H9')],
        text: LIMIT_KEYS[kind],
      }),
    ),
  ];
  const name = historyName(points.length);
  const scene: Scene = { width, height: plot.y + plot.height + MARGIN.bottom, name, parts, keys };
  return { title: HISTORY_TITLE, caption, scene };
}

interface Limit {
  readonly kind: 'leastSignal' | 'mostLoss';
  /** On the meter. */
  readonly value: number;
}

/** The limits as numbers on the meter. A loss in dB is one only while the gain stays as it was at the first visit. */
function limitsOf(
  { meter, points }: History,
  { leastSignal, mostLoss }: Pick<PairPlan, 'leastSignal' | 'mostLoss'>,
): Limit[] {
  const [first] = points;
  const isOneGain = points.every(({ setting }) => setting === first?.setting);
  const behind =
    first && mostLoss !== undefined && isOneGain
      ? readingBehind(valueReading(first.value), mostLoss, meter)
      : undefined;
  return [
    ...(leastSignal === undefined ? [] : [{ kind: 'leastSignal' as const, value: leastSignal }]),
    ...(behind?.kind === 'value' ? [{ kind: 'mostLoss' as const, value: behind.value }] : []),
  ];
}

/** Neighbouring points at one gain. */
function runs<P extends { readonly setting: string }>(points: readonly P[]): P[][] {
  return points.reduce<P[][]>((all, point) => {
    const run = all.at(-1);
    if (run && run.at(-1)?.setting === point.setting) run.push(point);
    else all.push([point]);
    return all;
  }, []);
}

/** The dates of the visits, the last one always, without those that would touch the one after. */
function dates(
  points: History['points'],
  x: (at: number) => number,
  times: Times,
): { x: number; label: string }[] {
  const kept: { x: number; label: string }[] = [];
  for (const { at } of points.toReversed()) {
    const next = kept.at(-1);
    if (!next || next.x - x(at) >= DATE_ROOM) kept.push({ x: x(at), label: times.day(at) });
  }
  return kept;
}
