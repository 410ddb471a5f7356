import { SHORTFALL_ALLOWED_DB } from '../engine/accept.ts';
import { KEPT_FALL_DB } from '../engine/kept.ts';
import type { MeterProfile } from '../model/profile.ts';
import { EIGHTHS_PER_TURN } from '../model/turns.ts';
import { METRES } from '../model/units.ts';
import { BEAM_FALL_DB } from '../visit/beam.ts';
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
const sinceText = (db: number): string => {
  const size = fixedBeside(Math.abs(db), [KEPT_FALL_DB], 1);
  if (Number(size) === 0) return 'the same light';
  return `${size} dB ${db > 0 ? 'less' : 'more'} light`;
};

/** How each figure of an advice, or of something still missing, is said. Units are the engine's. */
export const FIGURES: Record<string, Phrase> = {
  reading: inMeterUnits('reading'),
  best: inMeterUnits('best so far'),
  lastLeft: inMeterUnits('at the last visit'),
  lostSince: (db) => sinceText(db),
  peak: inMeterUnits('peak about'),
  toward: inMeterUnits('toward'),
  low: asStated('band from'),
  high: asStated('band to'),
  expected: inMeterUnits('expected'),
  fittedPeak: inTurns('fitted peak at'),
  uncertainty: inTurns('plus or minus'),
  uncertaintyDb: (db) => `plus or minus ${db.toFixed(2)} dB`,
  shortfall: (db) =>
    Number.isFinite(db)
      ? `up to ${fixedBeside(db, [SHORTFALL_ALLOWED_DB], 2)} dB below the peak`
      : 'the peak is not known yet',
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
