import { METRES, type Units } from '../model/units.ts';
import type { FigureId, PlanFigure, Side } from '../plan/check.ts';
import { PRE_AIM_M } from '../plan/geometry.ts';
import { lengthIn } from '../plan/lengths.ts';
import { besideLimits } from './beside-limits.ts';
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

/** The warning may say on which side of the limits it is. */
type Words = Omit<FigureWords, 'warning'> & { warning: string | Record<Side, string> };

/** What stands in the words below in metres; where a site reads feet, they are put in its place. */
const aim = (units: Units) => {
  const length = lengthText(PRE_AIM_M, units);
  return { length, near: units.length === 'ft' ? length : nearText(PRE_AIM_M, units) };
};
const AIM = aim(METRES);

const NO_SOURCE = 'common practice, no source';
const GEOMETRY = 'plane geometry';

const WORDS: Record<FigureId, Words> = {
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
    source: 'arithmetic',
    warning: 'part of the area lies too far from a beam',
  },
  'wall-distance': {
    name: 'nearest wall',
    formula: 'as planned',
    source: 'the plan',
    warning: { least: 'too near to the wall', most: 'too far from the wall' },
  },
  'ceiling-height': {
    name: 'height of the ceiling',
    formula: 'as planned',
    source: 'the plan',
    warning: 'so high that smoke may not reach the beam; beams at more than one height may be needed',
  },
  'emitter-ceiling': {
    name: 'emitter below the ceiling',
    formula: 'ceiling height - emitter height',
    source: 'arithmetic',
    warning: { least: 'too near to the ceiling', most: 'too far below the ceiling' },
  },
  'receiver-ceiling': {
    name: 'receiver below the ceiling',
    formula: 'ceiling height - receiver height',
    source: 'arithmetic',
    warning: { least: 'too near to the ceiling', most: 'too far below the ceiling' },
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

/** The limit that a figure is outside of, of those it has. */
export const brokenSide = ({ value, least }: PlanFigure): Side =>
  least !== undefined && value < least ? 'least' : 'most';

export function planFigureWords(figure: PlanFigure, units: Units = METRES): FigureWords {
  const { name, formula, source, warning: words } = WORDS[figure.id];
  const { length, near } = aim(units);
  const warning = typeof words === 'string' ? words : words[brokenSide(figure)];
  return {
    name,
    warning,
    formula: formula.replace(AIM.length, length),
    source: source.replace(AIM.near, near),
  };
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

/** One line: name, value, formula, source, limits, and that it is guidance. */
export function planFigureText(figure: PlanFigure, shown: Shown = METRES): string {
  const { name, formula, source, warning } = planFigureWords(figure, shown);
  const limits = limitsText(figure, shown);
  const checked = figure.warns ? `Warning: ${warning}; ${limits}. ` : limits && `Checked against ${limits}. `;
  return `${name}: ${figureText(figure, shown)}. ${checked}Formula: ${formula}. Source: ${source}. ${GUIDANCE_ONLY}`;
}
