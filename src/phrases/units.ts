import type { AlarmThreshold } from '../model/pair-plan.ts';
import type { JobSetup } from '../model/setup.ts';
import { type LengthUnit, type LossUnit, METRES, type Units } from '../model/units.ts';
import { lengthIn } from '../plan/lengths.ts';
import { lossIn, thresholdIn } from '../plan/losses.ts';
import { placesBeside } from './beside-limits.ts';

/** The units to show figures of a pair in, with its path where that is known: a loss per foot needs it. */
export interface Shown extends Units {
  readonly path?: number | undefined;
}

export const shownFor = ({ units = METRES, pathLength, plan }: Partial<JobSetup>): Shown => ({
  ...units,
  path: pathLength ?? plan?.pathLength,
});

/**
 * The same for the crew of a job: where the site has chosen no unit for a loss, in percent of the light, as test filters are
 * marked. In dB only where the meter itself counts in them.
 */
export function shownToCrew(setup: JobSetup): Shown {
  const shown = shownFor(setup);
  return { ...shown, loss: shown.loss ?? (setup.meter.law === 'linear' ? 'percent' : 'dB') };
}

/** "62 m", "203.4 ft": a length, from metres. To the millimetre, or to four figures in feet. */
export const lengthText = (metres: number, { length }: Units): string =>
  `${lengthFigures(metres, length)} ${length}`;

/** The same without its unit. */
export const lengthFigures = (metres: number, unit: LengthUnit): number =>
  unit === 'ft' ? Number(lengthIn(metres, unit).toPrecision(4)) : Number(metres.toFixed(3));

/** A limit that a length must not pass: rounded inward, so that what is shown is still allowed. */
export function limitFigures(metres: number, unit: LengthUnit, inward: 'up' | 'down'): number {
  if (unit === 'm') return metres;
  const hundredths = lengthIn(metres, unit) * 100;
  return (inward === 'up' ? Math.ceil(hundredths - 1e-6) : Math.floor(hundredths + 1e-6)) / 100;
}

export const LOSS_SIGNS: Record<LossUnit, string> = {
  dB: 'dB',
  percent: '%',
  'percent/m': '%/m',
  'percent/ft': '%/ft',
};
/** Figures after the point. */
const LOSS_PLACES: Record<LossUnit, number> = { dB: 2, percent: 1, 'percent/m': 3, 'percent/ft': 3 };

export interface LossOptions {
  /** Figures after the point of a loss in dB. */
  readonly places?: number;
  /** Losses in dB that stand beside it: rounding must not show it on another side of them. */
  readonly beside?: readonly number[];
}

/** "1.87 dB", "35.0 %", "0.211 %/ft": a loss of light, from dB. Without a path, what needs one is told in dB. */
export function lossText(db: number, { loss = 'dB', path }: Shown, options: LossOptions = {}): string {
  const unit = lossIn(db, loss, path) === undefined ? 'dB' : loss;
  const to = (each: number): number => lossIn(each, unit, path) as number;
  const places = unit === 'dB' ? (options.places ?? LOSS_PLACES.dB) : LOSS_PLACES[unit];
  const figures = placesBeside(to(db), (options.beside ?? []).map(to), places);
  return `${to(db).toFixed(figures)} ${LOSS_SIGNS[unit]}`;
}

/** "35 %", "1.9 dB": a threshold in the site's unit; as it is stated, exactly as stated. */
export function thresholdText(threshold: AlarmThreshold, { loss, path }: Shown): string {
  const unit = loss ?? threshold.unit;
  const value = thresholdIn(threshold, unit, path);
  if (value === undefined) return `${threshold.value} ${LOSS_SIGNS[threshold.unit]}`;
  return `${lossFigures(value, unit)} ${LOSS_SIGNS[unit]}`;
}

export const wholePathText = (db: number): string =>
  `${lossText(db, { length: 'm', loss: 'dB' })} over the whole path`;

export const lossFigures = (value: number, unit: LossUnit): number =>
  Number(value.toFixed(LOSS_PLACES[unit] + 1));
