import type { UsedCover } from '../model/checklists.ts';
import type { Placed } from '../model/placed.ts';
import type { Reading } from '../model/reading.ts';
import type { JobSetup } from '../model/setup.ts';
import {
  COVER_TOLERANCE_DB,
  type KnownLoss,
  kitOf,
  lossOf,
  MEASURED_TOLERANCE_DB,
  type Side,
  sideOfLoss,
  thresholdDb,
} from '../plan/covers.ts';
import { lossBetween } from '../plan/expected.ts';

/**
 * What is known of a cover: how it went on, and what the meter showed before and behind it. `clearReading`: the
 * one just before it; where nobody took one, what was accepted. `reading`: the last while covered.
 */
export interface Covering {
  readonly covered: Placed<'path'>;
  readonly clearReading: Reading;
  readonly reading?: Placed<'reading'>;
}

/** With what it was covered. Undefined where one of several filters was used and nobody said which. */
export function coverOf({ covered }: Pick<Covering, 'covered'>, { plan }: JobSetup): UsedCover | undefined {
  if (covered.state === 'blocked') return { how: 'full' };
  const { cover } = covered;
  if (cover && (cover.how !== 'filter' || cover.filter !== undefined)) return cover;
  const [filter, ...others] = kitOf(plan);
  if (others.length > 0) return undefined;
  return filter === undefined ? { how: cover?.how ?? 'half' } : { how: 'filter', filter };
}

/** What was lost behind the cover, dB, where the meter can say. */
export const measuredLoss = ({ clearReading, reading }: Covering, { meter }: JobSetup): number | undefined =>
  reading && lossBetween(clearReading, reading.reading, meter);

/** Nobody has read the meter behind it, and on this meter a reading would tell what it holds back. */
export const isUnread = (covering: Covering, setup: JobSetup): boolean =>
  !covering.reading && setup.meter.law !== 'unknown';

/**
 * The reading behind the cover is not what that cover leaves. Only judged where it was read. Behind all of it there
 * is no light, whatever the law of the meter.
 */
export function isReadingOff(covering: Covering, setup: JobSetup): boolean {
  const cover = coverOf(covering, setup);
  if (!cover || !covering.reading) return false;
  const { reading } = covering.reading;
  if (reading.kind === 'saturated') return true;
  if (cover.how === 'full') return reading.kind === 'value' && reading.value > setup.meter.lostAt;
  const loss = measuredLoss(covering, setup);
  return loss !== undefined && Math.abs(loss - lossOf(cover)) > COVER_TOLERANCE_DB[cover.how];
}

/** On which side of the alarm threshold a cover of a part was. Undefined where the plan has no threshold. */
export function sideOf(covering: Covering, setup: JobSetup): Side | undefined {
  const threshold = thresholdDb(setup.plan);
  if (threshold === undefined) return undefined;
  const loss = knownLoss(covering, setup);
  return loss ? sideOfLoss(loss, threshold) : 'between';
}

/** A filter holds back its grade; half a cover what the meter shows, where it shows about the half. */
function knownLoss(covering: Covering, setup: JobSetup): KnownLoss | undefined {
  const cover = coverOf(covering, setup);
  if (!cover || (cover.how === 'filter' && cover.filter === undefined)) return undefined;
  const measured = measuredLoss(covering, setup);
  return cover.how === 'half' && measured !== undefined && !isReadingOff(covering, setup)
    ? { db: measured, tolerance: MEASURED_TOLERANCE_DB }
    : { db: lossOf(cover), tolerance: COVER_TOLERANCE_DB[cover.how] };
}
