import { AsLeft, type AsLeftField } from '../../src/model/hand-over.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import type { LossUnit } from '../../src/model/units.ts';
import { lengthLike, NUMBER_LIKE_LOSS, numberLike, outOfRange } from '../../src/phrases/form-faults.ts';
import { lengthFigures, lossFigures, shownFor } from '../../src/phrases/units.ts';
import { readLength } from '../../src/plan/lengths.ts';
import { readLoss, thresholdIn, thresholdOf } from '../../src/plan/losses.ts';
import type { HandOver } from '../../src/visit/hand-over.ts';

export type LeftDraft = Record<AsLeftField, string>;

/** In which unit a threshold without one is read. */
export const lossUnit = (setup: JobSetup): LossUnit =>
  setup.units?.loss ?? setup.plan?.alarmThreshold?.unit ?? 'percent';

/** What was written before; otherwise what the meter showed last, and what was planned. */
export function leftDraft(setup: JobSetup, { asLeft }: HandOver, signal: number | undefined): LeftDraft {
  const { plan } = setup;
  const shown = shownFor(setup);
  const unit = lossUnit(setup);
  const threshold = asLeft.threshold ?? plan?.alarmThreshold;
  const loss = threshold && thresholdIn(threshold, unit, shown.path);
  const typed = (value: string | number | undefined): string => (value === undefined ? '' : String(value));
  const height = (value: number | undefined): string =>
    value === undefined ? '' : String(lengthFigures(value, shown.length));
  return {
    signal: typed(asLeft.signal ?? signal),
    gain: typed(asLeft.gain),
    threshold: loss === undefined ? '' : String(lossFigures(loss, unit)),
    alarmDelay: typed(asLeft.alarmDelay ?? plan?.alarmDelay),
    faultDelay: typed(asLeft.faultDelay ?? plan?.faultDelay),
    emitterSerial: typed(asLeft.emitterSerial),
    receiverSerial: typed(asLeft.receiverSerial),
    firmware: typed(asLeft.firmware),
    emitterPosition: typed(asLeft.emitterPosition),
    receiverPosition: typed(asLeft.receiverPosition),
    emitterHeight: height(asLeft.emitterHeight ?? plan?.emitterHeight),
    receiverHeight: height(asLeft.receiverHeight ?? plan?.receiverHeight),
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
