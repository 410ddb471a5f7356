import type { JobId, Seq } from '../model/ids.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import { valueReading } from '../model/reading.ts';
import { lossBetween } from '../plan/expected.ts';
import { type BehindGain, type GainAt, type GainChange, gainSet, weakerBy } from './behind-gain.ts';
import type { VisitOutcome } from './outcome.ts';

/** The signal over the clear path that a visit left a pair with. */
export interface SignalPoint extends BehindGain {
  readonly job: JobId;
  readonly seq: Seq;
  /** When it was read, ms. */
  readonly at: number;
  /** Which setting of the gain it was read at: the same for the same one, whether somebody named it or not. */
  readonly setting: string;
  /** Light lost since the first point, signal and gain together, dB. Undefined where they cannot be compared. */
  readonly lost?: number;
}

/** One point for each visit that left a signal, oldest first; only those read with the meter of the latest. */
export function signalHistory(visits: readonly VisitOutcome[]): SignalPoint[] {
  // The gain stays as it was left until somebody changes it; at the first visit, as it was found.
  let gain: { readonly at: GainAt; readonly setting: string } = { at: undefined, setting: 'as found' };
  const read = visits.flatMap(
    ({ job, left, commission: { counted, setup } }): Omit<SignalPoint, 'lost'>[] => {
      const changes = counted
        .filter(({ type }) => type === 'gain')
        .map((change) => ({ seq: change.seq, at: gainSet(change), setting: settingOf(job, change) }));
      const before = changes.findLast(({ seq }) => left && seq < left.seq) ?? gain;
      gain = changes.at(-1) ?? gain;
      return left ? [{ job, ...left, gain: before.at, setting: before.setting, meter: setup.meter }] : [];
    },
  );
  const meter = read.at(-1)?.meter.name;
  const same = read.filter((each) => each.meter.name === meter);
  const [first] = same;
  return same.map((each) => {
    const lost = first && lostBetween(first, each);
    return lost !== undefined && Number.isFinite(lost) ? { ...each, lost } : each;
  });
}

/** A change that nobody named leaves a setting that is like no other. */
const settingOf = (job: JobId, change: GainChange): string =>
  String(gainSet(change) ?? `${job} #${change.seq}`);

function lostBetween(first: Omit<SignalPoint, 'lost'>, point: Omit<SignalPoint, 'lost'>): number | undefined {
  if (first.setting === point.setting) {
    return lossBetween(valueReading(first.value), valueReading(point.value), point.meter);
  }
  const compared = weakerBy(first, point);
  return compared?.moreGain === undefined ? undefined : compared.weaker;
}

/** A limit of the plan, and how far each point that it can be held against is from the first of them, dB. */
export interface HeldAgainst {
  readonly kind: 'least-signal' | 'most-loss';
  /** Loss since the first of `points` at which the limit is reached, dB. */
  readonly limit: number;
  readonly points: readonly { readonly point: SignalPoint; readonly lost: number }[];
}

type Limits = Pick<PairPlan, 'leastSignal' | 'mostLoss'>;

/**
 * The history against each limit of the plan. The least signal is a number on the meter: it is held against readings
 * at the gain of the latest visit only. Where the law of the meter is not known there are no decibels, and nothing here.
 */
export function heldAgainst(history: readonly SignalPoint[], plan: Limits): HeldAgainst[] {
  const last = history.at(-1);
  if (!last) return [];
  const { leastSignal, mostLoss } = plan;
  const atOneGain = history.filter(({ setting }) => setting === last.setting);
  const least = leastSignal === undefined ? undefined : lossTo(atOneGain[0], leastSignal);
  return [
    ...(least === undefined
      ? []
      : [{ kind: 'least-signal' as const, limit: least, points: lossesOf(atOneGain) }]),
    ...(mostLoss === undefined
      ? []
      : [
          {
            kind: 'most-loss' as const,
            limit: mostLoss,
            points: history.flatMap((point) =>
              point.lost === undefined ? [] : [{ point, lost: point.lost }],
            ),
          },
        ]),
  ];
}

function lossTo(first: SignalPoint | undefined, value: number): number | undefined {
  const loss = first && lossBetween(valueReading(first.value), valueReading(value), first.meter);
  return loss !== undefined && Number.isFinite(loss) ? loss : undefined;
}

const lossesOf = (points: readonly SignalPoint[]): HeldAgainst['points'] =>
  points.flatMap((point) => {
    const lost = lossTo(points[0], point.value);
    return lost === undefined ? [] : [{ point, lost }];
  });
