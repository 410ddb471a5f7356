import { SHORTFALL_ALLOWED_DB } from '../engine/accept.ts';
import { BEAM_FALL_DB } from '../engine/fall.ts';
import { type MeterProfile, midBand } from '../model/profile.ts';
import { EIGHTHS_PER_TURN } from '../model/turns.ts';
import { METRES } from '../model/units.ts';
import { fixedBeside, setText } from './beside-limits.ts';
import { elapsedText, restoredText, setDelayText } from './delays.ts';
import { valueText } from './readings.ts';
import { type LossOptions, lossText, type Shown } from './units.ts';

type Phrase = (
  value: number,
  meter: MeterProfile,
  shown: Shown,
  figures: Readonly<Record<string, number>>,
) => string;

const inMeterUnits =
  (name: string): Phrase =>
  (value, meter) =>
    `${name} ${valueText(value, meter)}`;
const inTurns =
  (name: string): Phrase =>
  (eighths) =>
    `${name} ${(eighths / EIGHTHS_PER_TURN).toFixed(2)} turns`;
const inSeconds =
  (name: string): Phrase =>
  (value) =>
    `${name} ${Math.round(value)} s`;
/** A limit as the profile states it. */
const asStated =
  (name: string): Phrase =>
  (value) =>
    `${name} ${Number(value.toFixed(6))}`;

const beside = (...losses: readonly (number | undefined)[]): LossOptions => ({
  beside: losses.filter((loss) => loss !== undefined),
});

/** Beside the limit that it was judged by, so that it never crosses it. */
const sinceText = (db: number, shown: Shown): string => {
  const size = fixedBeside(Math.abs(db), [BEAM_FALL_DB], 1);
  if (Number(size) === 0) return 'the same light';
  // More light than before is no part of the light.
  return db > 0
    ? `${lossText(db, shown, { places: 1, beside: [BEAM_FALL_DB] })} less light`
    : `${size} dB more light`;
};

/** Further below a peak than half its light, nobody has seen how high it is. dB. */
const UNSEEN_DB = 3;

/** A number that far above another, on a linear meter. */
const above = (value: number, db: number, meter: MeterProfile): number =>
  meter.min + (value - meter.min) * 10 ** (db / 10);

/** On a step of the meter, and at least one: what is worked out is not known any better. */
const inSteps = (units: number, { resolution }: MeterProfile): number =>
  Number((Math.max(1, Math.round(units / resolution)) * resolution).toFixed(6));

/** How far below the peak it may be: as a number where the meter follows the light, in dB only where it does not. */
const shortfallText: Phrase = (db, meter, _, { reading }) => {
  if (!(db <= UNSEEN_DB)) return 'the peak is not known yet';
  if (meter.law !== 'linear' || reading === undefined)
    return `up to ${fixedBeside(db, [SHORTFALL_ALLOWED_DB], 2)} dB below the peak`;
  // Never shown as what it reads already.
  const peak = reading + inSteps(above(reading, db, meter) - reading, meter);
  return peak >= meter.saturatedAt
    ? 'the peak may saturate the meter'
    : `the peak may read up to ${valueText(peak, meter)}`;
};

const uncertaintyText: Phrase = (db, meter, _, { peak, expected }) => {
  const about = peak ?? expected;
  if (meter.law !== 'linear' || about === undefined) return `plus or minus ${db.toFixed(2)} dB`;
  return `plus or minus ${valueText(inSteps(above(about, db, meter) - about, meter), meter)}`;
};

/** What to set here, and why it is not the middle of the band, where the peak is elsewhere or not known yet. */
const towardText: Phrase = (value, meter, _, { peak }) => {
  const target = valueText(value, meter);
  if (peak !== undefined) return `${target} here, so that the peak reads ${valueText(midBand(meter), meter)}`;
  return value < meter.bandLow
    ? `toward ${target}, below the band: the peak may be brighter`
    : `toward ${target}`;
};

/** How each figure of an advice, or of something still missing, is said. Units are the engine's. */
export const FIGURES: Record<string, Phrase> = {
  reading: inMeterUnits('reading'),
  best: inMeterUnits('best so far'),
  lastLeft: inMeterUnits('at the last visit'),
  lostSince: (db, _, shown) => sinceText(db, shown),
  peak: inMeterUnits('peak about'),
  toward: towardText,
  low: asStated('band from'),
  high: asStated('band to'),
  expected: inMeterUnits('expected'),
  fittedPeak: inTurns('fitted peak at'),
  uncertainty: inTurns('plus or minus'),
  uncertaintyDb: uncertaintyText,
  shortfall: shortfallText,
  held: (value, _, __, { needed }) =>
    `held for ${fixedBeside(value, needed === undefined ? [] : [needed], 0)} s`,
  needed: (value) => `of ${setText(value, 0)} s`,
  age: inSeconds('read'),
  elapsed: (value, _, __, delay) => `after ${elapsedText(value, delay)}`,
  delay: (value) => `set ${setDelayText(value)}`,
  tolerance: (value) => `plus or minus ${setDelayText(value)}`,
  restored: (value) => `normal after ${restoredText(value)}`,
  loss: (db, _, shown, { threshold }) => `${lossText(db, shown, beside(threshold))} lost`,
  expectedLoss: (db, _, shown, { threshold }) => `${lossText(db, shown, beside(threshold))} expected`,
  threshold: (db, _, shown, { loss, expectedLoss }) =>
    `alarm set at ${lossText(db, shown, beside(loss, expectedLoss))}`,
  fall: (db, _, shown) => `the clear reading fell by ${lossText(db, shown, beside(BEAM_FALL_DB))}`,
  filterNeeded: (percent) => `a filter of at least ${percent} %`,
  places: (count) => `${count} places tried`,
};

/** "fitted peak at 0.38 turns, plus or minus 0.03 turns" */
export const figuresText = (
  figures: Readonly<Record<string, number>>,
  meter: MeterProfile,
  shown: Shown = METRES,
): string =>
  Object.entries(figures)
    .flatMap(([name, value]) => FIGURES[name]?.(value, meter, shown, figures) ?? [])
    .join(', ');
