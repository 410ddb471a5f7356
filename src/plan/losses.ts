import { AlarmThreshold } from '../model/pair-plan.ts';
import type { LossUnit } from '../model/units.ts';
import { dbOf, lossOf } from './attenuation.ts';
import { thresholdDb } from './covers.ts';

/** True where a loss in this unit means something only over a path of known length. */
export const needsPath = (unit: LossUnit): boolean => unit === 'percent/m' || unit === 'percent/ft';

/** A loss of `db` over a path of `metres`. Undefined where the unit needs a path and there is none. */
export const lossIn = (db: number, unit: LossUnit, metres: number | undefined): number | undefined =>
  needsPath(unit) && metres === undefined ? undefined : lossOf(db, unit, metres ?? 1);

/**
 * A threshold from a number in any unit. One for each metre or foot becomes the dB of the whole path: that is what the
 * detector sees, and what the tests block. Undefined: it needs a path, or is not from above 0 to below 100 % or 40 dB.
 */
export function thresholdOf(
  value: number,
  unit: LossUnit,
  metres: number | undefined,
): AlarmThreshold | undefined {
  if (unit === 'dB' || unit === 'percent') return AlarmThreshold.safeParse({ unit, value }).data;
  if (metres === undefined) return undefined;
  // To a millionth of a dB: what is beyond it is the error of the logarithm.
  const db = Number(dbOf(value, unit, metres).toFixed(6));
  return AlarmThreshold.safeParse({ unit: 'dB', value: db }).data;
}

/** A threshold in a unit, as `lossIn`. In the unit that it is stated in, exactly as stated. */
export function thresholdIn(
  threshold: AlarmThreshold,
  unit: LossUnit,
  metres: number | undefined,
): number | undefined {
  if (threshold.unit === unit) return threshold.value;
  const db = thresholdDb({ alarmThreshold: threshold });
  return db === undefined ? undefined : lossIn(db, unit, metres);
}

const UNITS: readonly [RegExp, LossUnit][] = [
  [/^db$/i, 'dB'],
  [/^(%|percent|per cent)$/i, 'percent'],
  [/^(%|percent|per cent)\s*(\/|per|a|each)\s*(ft\.?|foot|feet)$/i, 'percent/ft'],
  [/^(%|percent|per cent)\s*(\/|per|a|each)\s*(m|metre|meter)$/i, 'percent/m'],
];

/** A loss as people write it: a number in `unit`, or with a unit of its own ("35 %", "1.9 dB", "1.2 %/ft"). */
export function readLoss(text: string, unit: LossUnit): { value: number; unit: LossUnit } | undefined {
  const [, digits, named = ''] = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+))\s*(.*)$/.exec(text.trim()) ?? [];
  if (digits === undefined) return undefined;
  const [, found] = UNITS.find(([form]) => form.test(named)) ?? [];
  if (named !== '' && !found) return undefined;
  return { value: Number(digits.replace(',', '.')), unit: found ?? unit };
}
