import type { UsedCover } from '../model/checklists.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import { type MeterProfile, midBand } from '../model/profile.ts';
import { valueReading } from '../model/reading.ts';
import { dbOfPercent, HALF_COVER_DB, percentOfDb } from './attenuation.ts';
import { readingBehind } from './expected.ts';

/**
 * What a cover says about the alarm threshold: behind one that is clearly above it the detector must alarm,
 * behind one clearly below it must not. Between the two, whatever the panel shows says nothing. The response
 * threshold value is measured with filters of known attenuation: EN 54-12:2002 5.1.5 (from memory); in the draft for
 * the 2015 edition annex A, "Bench for response threshold value measurements", A.1 the attenuators (titles read in its
 * published table of contents). An optical filter in
 * the path is one of the ways to test a projected beam detector: NFPA 72 Table 14.4.3.2; BS 5839-1 clause 45 (both
 * from memory). That a site tests on both sides of it: common practice, no source.
 */
export type Side = 'above' | 'below' | 'between';

/** How far a cover's loss may be from what it should hold back, dB. Common practice, no source. */
export const COVER_TOLERANCE_DB: Record<UsedCover['how'], number> = { half: 1.5, filter: 0.5, full: 0 };

/** How well a loss is known that was read on the meter, dB. Common practice, no source. */
export const MEASURED_TOLERANCE_DB = 0.5;

/** A stronger filter looks like a lost beam, and may bring a fault, percent. Common practice, no source. */
export const FILTER_MOST_PERCENT = 95;

/** A filter so strong that the detector may take it for a lost beam, and show a fault for an alarm. */
export const looksLost = ({ how, filter }: UsedCover): boolean =>
  how === 'filter' && filter !== undefined && filter > FILTER_MOST_PERCENT;

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

/** Behind it the meter would show no signal, so that nobody could tell it from a lost beam. */
const isDark = (cover: UsedCover, meter: MeterProfile | undefined): boolean =>
  meter !== undefined && readingBehind(valueReading(midBand(meter)), lossOf(cover), meter)?.kind === 'none';

interface Planned {
  readonly plan?: Partial<PairPlan> | undefined;
  readonly meter?: MeterProfile | undefined;
}

/**
 * The cover that must bring the alarm: the weakest filter clearly above the threshold, else half a cover where
 * that is. Undefined where neither is. Without a threshold: the strongest filter, or half a cover. A filter that
 * looks like a lost beam comes last, and not at all where the meter goes dark behind it.
 */
export function alarmCover({ plan, meter }: Planned): UsedCover | undefined {
  const threshold = thresholdDb(plan);
  const kit = kitOf(plan).map(filterOf);
  const usable = kit.filter((each) => !looksLost(each));
  const strong = kit.filter((each) => looksLost(each) && !isDark(each, meter));
  if (threshold === undefined) return usable.at(-1) ?? strong.at(-1) ?? { how: 'half' };
  const isAbove = (loss: KnownLoss): boolean => sideOfLoss(loss, threshold) === 'above';
  const filter = usable.find((each) => isAbove(asPlanned(each)));
  if (filter) return filter;
  if (isAbove(halfCover(meter))) return { how: 'half' };
  return strong.find((each) => isAbove(asPlanned(each)));
}

/** The cover behind which the panel must stay at normal: the strongest filter clearly below, where there is one. */
export function quietCover({ plan }: Planned): UsedCover | undefined {
  const threshold = thresholdDb(plan);
  if (threshold === undefined) return undefined;
  return kitOf(plan)
    .map(filterOf)
    .findLast((each) => !looksLost(each) && sideOfLoss(asPlanned(each), threshold) === 'below');
}

/** What the cover of the alarm test holds back; where none is clearly above the threshold, the strongest there is. */
export function alarmLoss({ plan, meter }: Planned): KnownLoss {
  const half = halfCover(meter);
  const cover = alarmCover({ plan, meter });
  if (cover) return cover.how === 'half' ? half : asPlanned(cover);
  const strongest = kitOf(plan).findLast((grade) => !looksLost(filterOf(grade)));
  const filter = strongest === undefined ? undefined : asPlanned(filterOf(strongest));
  return filter && filter.db > half.db ? filter : half;
}

/** The weakest filter that is clearly above a threshold (dB), percent, rounded up. */
export const filterNeeded = (threshold: number): number =>
  Math.ceil(percentOfDb(threshold + COVER_TOLERANCE_DB.filter));
