import { METRES, type Units } from '../model/units.ts';
import type { FigureId, PlanFigure } from '../plan/check.ts';
import { PRE_AIM_M } from '../plan/geometry.ts';
import { lengthIn } from '../plan/lengths.ts';
import { lengthText, lossText, nearText, type Shown } from './units.ts';

/** Said with every figure of a plan. */
export const GUIDANCE_ONLY = 'guidance; local code and the maker decide';

interface FigureWords {
  name: string;
  formula: string;
  source: string;
  /** Said when it is outside its limits. */
  warning: string;
}

/** What stands in the words below in metres; where a site reads feet, they are put in its place. */
const aim = (units: Units) => ({ length: lengthText(PRE_AIM_M, units), near: nearText(PRE_AIM_M, units) });
const AIM = aim(METRES);

const NO_SOURCE = 'common practice, no source';
const GEOMETRY = 'plane geometry';

const WORDS: Record<FigureId, FigureWords> = {
  'aiming-tolerance': {
    name: 'aim by eye to within',
    formula: `atan(${AIM.length} / path length)`,
    source: `${AIM.near}: ${NO_SOURCE}`,
    warning: '',
  },
  footprint: {
    name: 'beam width at the far end',
    formula: '2 * path length * tan(beam angle / 2)',
    source: `${GEOMETRY}; beam angle as stated by the maker`,
    warning: '',
  },
  'quarter-turn': {
    name: 'a quarter turn moves the spot by',
    formula: 'path length * tan(degrees a turn / 4)',
    source: `${GEOMETRY}; pitch as in the adjuster profile`,
    warning: '',
  },
  'path-length': {
    name: 'path length',
    formula: 'as planned',
    source: "the maker's range",
    warning: "outside the maker's range",
  },
  reach: {
    name: 'reach to each side',
    formula: 'spacing / 2',
    source: 'the chosen guidance',
    warning: 'part of the area lies too far from a beam',
  },
  'wall-distance': {
    name: 'nearest wall',
    formula: 'as planned',
    source: 'the chosen guidance',
    warning: 'too near to or too far from the wall',
  },
  'emitter-ceiling': {
    name: 'emitter below the ceiling',
    formula: 'ceiling height - emitter height',
    source: 'the chosen guidance',
    warning: 'too near to or too far below the ceiling',
  },
  'receiver-ceiling': {
    name: 'receiver below the ceiling',
    formula: 'ceiling height - receiver height',
    source: 'the chosen guidance',
    warning: 'too near to or too far below the ceiling',
  },
  level: {
    name: 'height difference of the two ends',
    formula: '|emitter height - receiver height|',
    source: 'arithmetic',
    warning: '',
  },
  'alarm-percent': {
    name: 'loss of light at the alarm',
    formula: '100 * (1 - 10^(-dB / 10))',
    source: 'EN 54-12 and ISO 7240-12, from memory',
    warning: '',
  },
  'alarm-db': {
    name: 'loss of light at the alarm',
    formula: '10 * log10(100 / (100 - percent))',
    source: 'EN 54-12 and ISO 7240-12, from memory',
    warning: 'outside the limits of a response threshold',
  },
  'alarm-delay': {
    name: 'set delay of the alarm',
    formula: 'as planned',
    source: NO_SOURCE,
    warning: 'is the alarm meant to come without a delay',
  },
  'fault-delay': {
    name: 'set delay of the fault',
    formula: 'as planned',
    source: NO_SOURCE,
    warning: 'is the fault meant to come without a delay',
  },
  filter: {
    name: 'strongest test filter',
    formula: 'as marked',
    source: NO_SOURCE,
    warning: 'so strong that the detector may take it for a lost beam',
  },
  'cover-loss': {
    name: 'held back in the alarm test',
    formula: '10 * log10(100 / (100 - percent)); half covered: 50 percent',
    source: `half the face, half the power: ${NO_SOURCE}; filter as marked`,
    warning: 'too little to be sure of an alarm',
  },
  'expected-reading': {
    name: 'reading to expect in the alarm test',
    formula: 'linear: lowest + (final - lowest) * 10^(-dB / 10); logarithmic: final - dB / dB a unit',
    source: "the meter's law, from the final reading or the middle of the band",
    warning: '',
  },
};

export function planFigureWords({ id }: PlanFigure, units: Units = METRES): FigureWords {
  const { formula, source, ...words } = WORDS[id];
  const { length, near } = aim(units);
  return { ...words, formula: formula.replace(AIM.length, length), source: source.replace(AIM.near, near) };
}

/** Rounded to three significant figures. A loss is told in dB, and beside it in the unit of the site. */
export function figureText({ value, unit }: PlanFigure, shown: Shown = METRES): string {
  const figure = `${inUnit(value, unit, shown, 3)} ${unitText(unit, shown)}`;
  const { loss } = shown;
  return unit === 'dB' && loss !== undefined && loss !== 'dB'
    ? `${figure} (${lossText(value, shown)})`
    : figure;
}

/** Lengths are metres inside. */
const inUnit = (value: number, unit: string, { length }: Units, figures: number): number =>
  // In feet, a length and its limit have the same figures: the limit is no round number there.
  unit === 'm' && length === 'ft'
    ? Number(lengthIn(value, length).toPrecision(4))
    : Number(value.toPrecision(figures));
const unitText = (unit: string, { length }: Units): string => (unit === 'm' ? length : unit);

/** "at least 0.025 m, at most 0.6 m (BS 5839-1, from memory)", or nothing. */
export function limitsText({ least, most, by, unit }: PlanFigure, shown: Shown = METRES): string {
  const limits = [
    least !== undefined && `at least ${inUnit(least, unit, shown, 4)} ${unitText(unit, shown)}`,
    most !== undefined && `at most ${inUnit(most, unit, shown, 4)} ${unitText(unit, shown)}`,
  ].filter((text) => text !== false);
  if (limits.length === 0) return '';
  return by ? `${limits.join(', ')} (${by})` : limits.join(', ');
}

/** One line: name, value, formula, source, limits, and that it is guidance. */
export function planFigureText(figure: PlanFigure, shown: Shown = METRES): string {
  const { name, formula, source, warning } = planFigureWords(figure, shown);
  const limits = limitsText(figure, shown);
  const checked = figure.warns ? `Warning: ${warning}; ${limits}. ` : limits && `Checked against ${limits}. `;
  return `${name}: ${figureText(figure, shown)}. ${checked}Formula: ${formula}. Source: ${source}. ${GUIDANCE_ONLY}`;
}
