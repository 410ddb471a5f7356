import type { UsedCover } from '../model/checklists.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { MeterProfile } from '../model/profile.ts';
import { dbOfPercent, HALF_COVER_DB, percentOfDb } from './attenuation.ts';

/**
 * What a cover says about the alarm threshold: behind one that is clearly above it the detector must alarm,
 * behind one clearly below it must not. Between the two, whatever the panel shows says nothing. Testing from both
 * sides of the response value is what EN 54-12 and NFPA 72 do with filters (from memory).
 */
export type Side = 'above' | 'below' | 'between';

/** How far a cover's loss may be from what it should hold back, dB. Common practice, no source. */
export const COVER_TOLERANCE_DB: Record<UsedCover['how'], number> = { half: 1.5, filter: 0.5, full: 0 };

/** How well a loss is known that was read on the meter, dB. Common practice, no source. */
export const MEASURED_TOLERANCE_DB = 0.5;

/** A loss of light in dB, and how far off it may be. */
export interface KnownLoss {
  readonly db: number;
  readonly tolerance: number;
}

export function sideOfLoss({ db, tolerance }: KnownLoss, threshold: number): Side {
  if (db - tolerance >= threshold) return 'above';
  return db + tolerance <= threshold ? 'below' : 'between';
}

/** The loss at which the detector alarms, dB, where the plan says it. */
export function thresholdDb(plan: Partial<PairPlan> | undefined): number | undefined {
  const threshold = plan?.alarmThreshold;
  if (!threshold) return undefined;
  return threshold.unit === 'dB' ? threshold.value : dbOfPercent(threshold.value);
}

/** The test filters that the crew owns, percent, weakest first. */
export function kitOf(plan: Partial<PairPlan> | undefined): readonly number[] {
  const { filters = [], filterPercent } = plan ?? {};
  if (filters.length > 0) return filters.toSorted((a, b) => a - b);
  return filterPercent === undefined ? [] : [filterPercent];
}

/** Decibels that a cover holds back, as planned: infinite where all is covered. */
export function lossOf({ how, filter }: UsedCover): number {
  if (how === 'full') return Number.POSITIVE_INFINITY;
  return how === 'filter' && filter !== undefined ? dbOfPercent(filter) : HALF_COVER_DB;
}

const asPlanned = (cover: UsedCover): KnownLoss => ({
  db: lossOf(cover),
  tolerance: COVER_TOLERANCE_DB[cover.how],
});

const filterOf = (filter: number): UsedCover => ({ how: 'filter', filter });

/** Half a cover is coarse, unless the meter then shows what it really holds back. */
const halfCover = (meter: MeterProfile | undefined): KnownLoss =>
  meter && meter.law !== 'unknown'
    ? { db: HALF_COVER_DB, tolerance: MEASURED_TOLERANCE_DB }
    : asPlanned({ how: 'half' });

interface Planned {
  readonly plan?: Partial<PairPlan> | undefined;
  readonly meter?: MeterProfile | undefined;
}

/**
 * The cover that must bring the alarm: the weakest filter clearly above the threshold, else half a cover where
 * that is. Undefined where neither is. Without a threshold: the strongest filter, or half a cover.
 */
export function alarmCover({ plan, meter }: Planned): UsedCover | undefined {
  const threshold = thresholdDb(plan);
  const kit = kitOf(plan).map(filterOf);
  if (threshold === undefined) return kit.at(-1) ?? { how: 'half' };
  const filter = kit.find((each) => sideOfLoss(asPlanned(each), threshold) === 'above');
  if (filter) return filter;
  return sideOfLoss(halfCover(meter), threshold) === 'above' ? { how: 'half' } : undefined;
}

/** The cover behind which the panel must stay at normal: the strongest filter clearly below, where there is one. */
export function quietCover({ plan }: Planned): UsedCover | undefined {
  const threshold = thresholdDb(plan);
  if (threshold === undefined) return undefined;
  return kitOf(plan)
    .map(filterOf)
    .findLast((each) => sideOfLoss(asPlanned(each), threshold) === 'below');
}

/** What the cover of the alarm test holds back; where none is clearly above the threshold, the strongest there is. */
export function alarmLoss({ plan, meter }: Planned): KnownLoss {
  const half = halfCover(meter);
  const cover = alarmCover({ plan, meter });
  if (cover) return cover.how === 'half' ? half : asPlanned(cover);
  const strongest = kitOf(plan).at(-1);
  const filter = strongest === undefined ? undefined : asPlanned(filterOf(strongest));
  return filter && filter.db > half.db ? filter : half;
}

/** The weakest filter that is clearly above a threshold (dB), percent, rounded up. */
export const filterNeeded = (threshold: number): number =>
  Math.ceil(percentOfDb(threshold + COVER_TOLERANCE_DB.filter));
