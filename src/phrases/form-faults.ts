import type { Inverted } from '../model/pair-plan.ts';
import type { LengthUnit, LossUnit } from '../model/units.ts';
import { METER_LABELS } from './profiles.ts';
import { limitFigures } from './units.ts';

/** What is wrong with a field of a form. */

export const NO_NUMBER = 'Enter a number.';
export const numberLike = (example: string): string => `Enter a number, such as ${example}.`;
export const rangeText = (low: number | null, high: number | null): string => `From ${low} to ${high}.`;

export const NO_SITE_NAME = 'Name the site, so that the record can be found again.';
export const NO_PAIR_NAME = 'Name the beam pair, for example B2.';
const NO_NAME = 'Give it a name.';

export const BAD_PAIR_ID = 'Up to 32 letters, figures, dots and dashes, no spaces, such as B2.';
export const takenIdText = (id: string): string =>
  `There is a pair ${id} already. Change its plan instead, or give this one another id.`;
/** By the figure that is above the one it must not be above. */
export const INVERTED: Record<Inverted[0], string> = {
  rangeMin: 'The longest path is shorter than the shortest. Check both.',
  emitterHeight: 'The ceiling is below the emitter. Check both.',
  receiverHeight: 'The ceiling is below the receiver. Check both.',
};
export const HIDDEN_CHARACTER = 'There is a character here that nobody sees. Type it again.';
export const alarmLossText = (unit: LossUnit): string =>
  `Above 0, and ${unit === 'percent' ? 'below 100 percent' : 'at most 40 dB'}${unit.includes('/') ? ' over the whole path' : ''}.`;
export const NEEDS_PATH =
  'Enter the length of the path first: percent per metre or foot is told for all of it.';
export const lengthLike = (unit: LengthUnit): string =>
  `Enter a length, such as ${unit === 'ft' ? '203, 203 ft or 62 m' : '62.5, 62.5 m or 205 ft'}.`;
/** Rounded so that both are still allowed. */
export const lengthRangeText = (low: number | null, high: number | null, unit: LengthUnit): string =>
  `From ${limitFigures(low ?? 0, unit, 'up')} to ${limitFigures(high ?? 0, unit, 'down')} ${unit}.`;

/** As much of an issue that the schema raises as is used here. */
interface Issue {
  code: string;
  message: string;
  minimum?: unknown;
  maximum?: unknown;
}

const OF_ADJUSTERS: Readonly<Record<string, string>> = {
  'adjusters.name': NO_NAME,
  'adjusters.maxStep': 'From 0.25 to 1.5 turns, in eighths of a turn.',
  'adjusters.backlash': 'From 0 to 1 turn.',
  'adjusters.travel': 'From 1 to 100 turns, in eighths of a turn.',
};

/** What is wrong with a field of a job's setup. `path`: as in the form, "meter.bandLow". */
export function setupFaultText(path: string, { code, message, minimum, maximum }: Issue): string {
  if (code === 'custom') return withLabels(message);
  if (path === 'site') return NO_SITE_NAME;
  if (path === 'pair') return NO_PAIR_NAME;
  const ofAdjusters = OF_ADJUSTERS[path];
  if (ofAdjusters) return ofAdjusters;
  if (code === 'too_small' && minimum === 0) return 'This must be above zero.';
  if (code === 'too_small') return path.endsWith('name') ? NO_NAME : `At least ${minimum}.`;
  if (code === 'too_big') return `At most ${maximum}${path.endsWith('name') ? ' letters' : ''}.`;
  return message;
}

/** The profile's checks name its fields. A person knows them by the labels of the form. */
const withLabels = (message: string): string =>
  Object.entries(METER_LABELS).reduce(
    (text, [key, label]) => text.replace(new RegExp(`\\b${key}\\b`, 'g'), `"${label}"`),
    message,
  );
export const FILTERS = 'Percent each, above 0 and below 100, such as 20; 40; 60.';

export const NUMBER_LIKE_LOSS = 'Give a loss of light like "35 %" or "1.9 dB".';
export const outOfRange = (text: string): string => `"${text}" cannot be right here.`;
