import { AsLeft, type AsLeftField } from '../../src/model/hand-over.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import type { LossUnit } from '../../src/model/units.ts';
import { lengthLike, NUMBER_LIKE_LOSS, numberLike, outOfRange } from '../../src/phrases/form-faults.ts';
import { LOSS_SIGNS, lengthFigures, lossFigures, shownFor } from '../../src/phrases/units.ts';
import { LENGTH_NAMES } from '../../src/phrases/units-chosen.ts';
import { readLength } from '../../src/plan/lengths.ts';
import { readLoss, thresholdIn, thresholdOf } from '../../src/plan/losses.ts';

export type LeftDraft = Record<AsLeftField, string>;

/** In which unit a threshold without one is read. */
export const lossUnit = (setup: JobSetup): LossUnit =>
  setup.units?.loss ?? setup.plan?.alarmThreshold?.unit ?? 'percent';

/** In what a value is typed, as it stands beside its box. */
export function leftUnits(setup: JobSetup): Partial<Record<AsLeftField, string>> {
  const length = LENGTH_NAMES[setup.units?.length ?? 'm'];
  return {
    signal: setup.meter.unit,
    threshold: LOSS_SIGNS[lossUnit(setup)],
    alarmDelay: 's',
    faultDelay: 's',
    emitterHeight: length,
    receiverHeight: length,
  };
}

/** What the meter showed last and what was planned: to be compared with what is found at the device, not to be taken over. */
export const expectedDraft = (setup: JobSetup, signal: number | undefined): LeftDraft => {
  const { alarmThreshold, alarmDelay, faultDelay, emitterHeight, receiverHeight } = setup.plan ?? {};
  const planned = { threshold: alarmThreshold, alarmDelay, faultDelay, emitterHeight, receiverHeight };
  return leftDraft(setup, { signal, ...planned });
};

/** Values as they stand in the form; empty where there is none. */
export function leftDraft(
  setup: JobSetup,
  asLeft: { readonly [field in AsLeftField]?: AsLeft[field] | undefined },
): LeftDraft {
  const shown = shownFor(setup);
  const unit = lossUnit(setup);
  const loss = asLeft.threshold && thresholdIn(asLeft.threshold, unit, shown.path);
  const typed = (value: string | number | undefined): string => (value === undefined ? '' : String(value));
  const height = (value: number | undefined): string =>
    value === undefined ? '' : String(lengthFigures(value, shown.length));
  return {
    signal: typed(asLeft.signal),
    gain: typed(asLeft.gain),
    threshold: loss === undefined ? '' : String(lossFigures(loss, unit)),
    alarmDelay: typed(asLeft.alarmDelay),
    faultDelay: typed(asLeft.faultDelay),
    emitterSerial: typed(asLeft.emitterSerial),
    receiverSerial: typed(asLeft.receiverSerial),
    firmware: typed(asLeft.firmware),
    emitterPosition: typed(asLeft.emitterPosition),
    receiverPosition: typed(asLeft.receiverPosition),
    emitterHeight: height(asLeft.emitterHeight),
    receiverHeight: height(asLeft.receiverHeight),
    pointsAt: typed(asLeft.pointsAt),
  };
}

export interface ParsedLeft {
  readonly values: AsLeft;
  readonly errors: Partial<Record<AsLeftField, string>>;
}

const LENGTHS: ReadonlySet<AsLeftField> = new Set(['emitterHeight', 'receiverHeight']);
const NUMBERS: ReadonlySet<AsLeftField> = new Set(['signal', 'alarmDelay', 'faultDelay']);

/** What the form means, and what is wrong with it. Empty fields are not known. */
export function parseLeft(draft: LeftDraft, setup: JobSetup): ParsedLeft {
  const errors: Partial<Record<AsLeftField, string>> = {};
  const shown = shownFor(setup);
  const entries = (Object.entries(draft) as [AsLeftField, string][]).flatMap(([field, typed]) => {
    const text = typed.trim();
    if (text === '') return [];
    const value = read(field, text);
    if (value === undefined) {
      errors[field] = LENGTHS.has(field)
        ? lengthLike(shown.length)
        : field === 'threshold'
          ? NUMBER_LIKE_LOSS
          : numberLike('10');
      return [];
    }
    if (!AsLeft.shape[field].safeParse(value).success) errors[field] = outOfRange(text);
    return [[field, value]];
  });
  return { values: Object.fromEntries(entries) as AsLeft, errors };

  function read(field: AsLeftField, text: string): unknown {
    if (LENGTHS.has(field)) return readLength(text, shown.length);
    if (NUMBERS.has(field)) {
      const value = Number(text.replace(',', '.').replace('−', '-'));
      return Number.isFinite(value) ? value : undefined;
    }
    if (field !== 'threshold') return text;
    const loss = readLoss(text, lossUnit(setup));
    return loss && thresholdOf(loss.value, loss.unit, shown.path);
  }
}
