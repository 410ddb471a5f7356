import { METRES, type Units } from '../model/units.ts';
import type { FigureId, PlanFigure, Side } from '../plan/check.ts';
import { lengthIn } from '../plan/lengths.ts';
import { besideLimits } from './beside-limits.ts';
import { lossText, type Shown } from './units.ts';

/** The words of a figure of the plan check, as a warning needs them. Where they come from: plan-formulas.ts. */

interface FigureWords {
  name: string;
  /** Said when it is outside its limits. */
  warning: string;
}

/** The warning may say on which side of the limits it is. */
type Words = Omit<FigureWords, 'warning'> & { warning: string | Record<Side, string> };

const WORDS: Record<FigureId, Words> = {
  'aiming-tolerance': { name: 'aim by eye to within', warning: '' },
  footprint: { name: 'beam width at the far end', warning: '' },
  'quarter-turn': { name: 'a quarter turn moves the spot by', warning: '' },
  'path-length': { name: 'path length', warning: "outside the maker's range" },
  reach: { name: 'reach to each side', warning: 'part of the area lies too far from a beam' },
  'wall-distance': {
    name: 'nearest wall',
    warning: { least: 'too near to the wall', most: 'too far from the wall' },
  },
  'ceiling-height': {
    name: 'height of the ceiling',
    warning: 'so high that smoke may not reach the beam; beams at more than one height may be needed',
  },
  'emitter-ceiling': {
    name: 'emitter below the ceiling',
    warning: { least: 'too near to the ceiling', most: 'too far below the ceiling' },
  },
  'receiver-ceiling': {
    name: 'receiver below the ceiling',
    warning: { least: 'too near to the ceiling', most: 'too far below the ceiling' },
  },
  level: { name: 'height difference of the two ends', warning: '' },
  'alarm-percent': { name: 'loss of light at the alarm', warning: '' },
  'alarm-db': { name: 'loss of light at the alarm', warning: 'outside the limits of a response threshold' },
  'alarm-delay': { name: 'set delay of the alarm', warning: 'is the alarm meant to come without a delay' },
  'fault-delay': { name: 'set delay of the fault', warning: 'is the fault meant to come without a delay' },
  filter: {
    name: 'strongest test filter',
    warning: 'so strong that the detector may take it for a lost beam',
  },
  'cover-loss': { name: 'held back in the alarm test', warning: 'too little to be sure of an alarm' },
  'expected-reading': { name: 'reading to expect in the alarm test', warning: '' },
};

/** The limit that a figure is outside of, of those it has. */
export const brokenSide = ({ value, least }: PlanFigure): Side =>
  least !== undefined && value < least ? 'least' : 'most';

export function planFigureWords(figure: PlanFigure): FigureWords {
  const { name, warning: words } = WORDS[figure.id];
  return { name, warning: typeof words === 'string' ? words : words[brokenSide(figure)] };
}

interface ShownFigure {
  readonly value: number;
  readonly least: number | undefined;
  readonly most: number | undefined;
  readonly unit: string;
}

/** A figure and its limits in the unit of the site, rounded alike. A limit in feet is no round number. */
function inUnits({ value, least, most, unit }: PlanFigure, { length }: Units): ShownFigure {
  const inFeet = unit === 'm' && length === 'ft';
  const to = (metres: number): number => (inFeet ? lengthIn(metres, length) : metres);
  const limits = [least, most].filter((limit) => limit !== undefined).map(to);
  const shown = besideLimits(to(value), limits, inFeet ? 4 : 3);
  const [low, high] = least === undefined ? [undefined, ...shown.limits] : shown.limits;
  return { value: shown.value, least: low, most: high, unit: inFeet ? length : unit };
}

/** "62 m": to three significant figures or more. A loss is told in dB, and beside it in the unit of the site. */
export function figureText(figure: PlanFigure, shown: Shown = METRES): string {
  const { value, unit } = inUnits(figure, shown);
  const { loss } = shown;
  const other =
    unit === 'dB' && loss !== undefined && loss !== 'dB' ? ` (${lossText(figure.value, shown)})` : '';
  return `${value} ${unit}${other}`;
}

/** "at least 0.025 m, at most 0.6 m (BS 5839-1, from memory)", or nothing. */
export function limitsText(figure: PlanFigure, shown: Shown = METRES): string {
  const { least, most, unit } = inUnits(figure, shown);
  const { by } = figure;
  const limits = [
    least !== undefined && `at least ${least} ${unit}`,
    most !== undefined && `at most ${most} ${unit}`,
  ].filter((text) => text !== false);
  if (limits.length === 0) return '';
  return by ? `${limits.join(', ')} (${by})` : limits.join(', ');
}
