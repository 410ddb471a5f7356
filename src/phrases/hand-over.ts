import {
  AS_LEFT_FIELDS,
  type AsLeft,
  type AsLeftField,
  type BuildingState,
  type HandOverFact,
  type Sun,
} from '../model/hand-over.ts';
import type { MeterProfile } from '../model/profile.ts';
import { METRES } from '../model/units.ts';
import { valueText } from './readings.ts';
import { stepText } from './steps.ts';
import { lengthText, type Shown, thresholdText } from './units.ts';

export const LEFT_NAMES: Record<AsLeftField, string> = {
  signal: 'signal',
  gain: 'gain',
  threshold: 'alarm threshold',
  alarmDelay: 'alarm delay',
  faultDelay: 'fault delay',
  emitterSerial: 'serial number of the emitter',
  receiverSerial: 'serial number of the receiver',
  firmware: 'firmware',
  emitterPosition: 'position of the emitter',
  receiverPosition: 'position of the receiver',
  emitterHeight: 'height of the emitter',
  receiverHeight: 'height of the receiver',
  pointsAt: 'fixed on and pointing at',
};

export const SUN_WORDS: Record<Sun, string> = {
  none: 'no sun near the receiver',
  near: 'sun near the receiver',
  'on-receiver': 'sun on the receiver',
};

export const BUILDING_WORDS: Record<BuildingState, string> = {
  enclosed: 'building closed',
  open: 'building not closed yet',
  heated: 'heated',
  unheated: 'not heated',
  dusty: 'dust in the air',
  'doors-open': 'doors open',
  'in-use': 'in use',
};

export const HAND_OVER_ROWS = {
  conditions: 'Conditions',
  variation: 'Variation agreed',
  withdrawn: 'Variation withdrawn',
  next: 'To be done next',
} as const;

export const CONDITION_NAMES = { sun: 'Sun', weather: 'Weather', building: 'Building' } as const;

/** Behind a value that this phone still keeps to itself. */
export const notSentText = (value: string): string => `${value}, not sent yet`;
export const CHANGES_SIGNED =
  'This record is signed. What you write now changes it: it must then be signed again.';

export const NO_HAND_OVER = 'Nothing was written down for the hand-over.';

/** "1.2 s", "6 m": one value of how a pair was left. */
export function leftText(
  field: AsLeftField,
  values: AsLeft,
  meter: MeterProfile | undefined,
  shown: Shown,
): string {
  const value = values[field];
  if (value === undefined) return '';
  switch (field) {
    case 'signal':
      return meter ? `${valueText(Number(value), meter)} ${meter.unit}` : String(value);
    case 'threshold':
      return values.threshold ? thresholdText(values.threshold, shown) : '';
    case 'alarmDelay':
    case 'faultDelay':
      return `${value} s`;
    case 'emitterHeight':
    case 'receiverHeight':
      return lengthText(Number(value), shown);
    default:
      return String(value);
  }
}

export const conditionsText = ({
  sun,
  weather,
  building = [],
}: Omit<Extract<HandOverFact, { type: 'conditions' }>, 'type'>): string =>
  [sun && SUN_WORDS[sun], weather, ...building.map((each) => BUILDING_WORDS[each])]
    .filter((part) => part)
    .join(', ');

export const variationText = (what: string, agreedWith: string): string =>
  `${what} (agreed with ${agreedWith})`;
/** "No cover at hand (agreed with W. Example). Withdrawn, #312: a cover was found" */
export const withdrawnText = (was: string, { seq, why }: Struck): string =>
  `${was}. Withdrawn, #${seq}: ${why}`;
/** "not known. 42 no longer holds, #312: misread" */
export const struckText = (was: string, { seq, why }: Struck): string =>
  `not known. ${was} no longer holds, #${seq}: ${why}`;
interface Struck {
  readonly seq: number;
  readonly why: string;
}
export const nextDueText = (what: string, on: string): string => `${what}, by ${on}`;
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
export const asPlannedText = (planned: string): string => `planned: ${planned}`;

/** A fact of the hand-over in a few words. */
export function handOverText(fact: HandOverFact, meter: MeterProfile | undefined): string {
  switch (fact.type) {
    case 'as-left': {
      const { values } = fact;
      const parts = AS_LEFT_FIELDS.filter((field) => values[field] !== undefined).map(
        (field) => `${LEFT_NAMES[field]} ${leftText(field, values, meter, METRES)}`,
      );
      return `left with ${parts.join(', ') || 'nothing written down'}`;
    }
    case 'conditions':
      return `conditions: ${conditionsText(fact) || 'none'}`;
    case 'variation':
      return `variation: ${variationText(fact.what, fact.agreedWith)}`;
    case 'next-due':
      return `next: ${nextDueText(fact.what, fact.on)}`;
    case 'struck-out':
      return fact.field === undefined
        ? `variation of #${fact.entry} withdrawn: ${fact.why}`
        : `${LEFT_NAMES[fact.field]} of #${fact.entry} no longer holds: ${fact.why}`;
    case 'step':
      return stepText(fact.cause, fact.result, fact.note);
  }
}

/** Under the box of a value as left. Undefined where nothing was read or planned. */
export const expectedHint = (field: AsLeftField, value: string): string | undefined =>
  value === '' ? undefined : `${field === 'signal' ? 'Last reading' : 'Planned'}: ${value}`;
