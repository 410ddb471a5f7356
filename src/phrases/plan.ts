import type { FigureId, PlanFigure } from '../plan/check.ts';

/** Said with every figure of a plan. */
export const GUIDANCE_ONLY = 'guidance; local code and the maker decide';

interface FigureWords {
  name: string;
  formula: string;
  source: string;
  /** Said when it is outside its limits. */
  warning: string;
}

const NO_SOURCE = 'common practice, no source';
const GEOMETRY = 'plane geometry';

const WORDS: Record<FigureId, FigureWords> = {
  'aiming-tolerance': {
    name: 'aim by eye to within',
    formula: 'atan(0.15 m / path length)',
    source: `15 cm: ${NO_SOURCE}`,
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

export const planFigureWords = ({ id }: PlanFigure): FigureWords => WORDS[id];

/** Rounded to three significant figures. */
export const figureText = ({ value, unit }: PlanFigure): string => `${Number(value.toPrecision(3))} ${unit}`;

/** "at least 0.025 m, at most 0.6 m (BS 5839-1, from memory)", or nothing. */
export function limitsText({ least, most, by, unit }: PlanFigure): string {
  const limits = [
    least !== undefined && `at least ${Number(least.toPrecision(4))} ${unit}`,
    most !== undefined && `at most ${Number(most.toPrecision(4))} ${unit}`,
  ].filter((text) => text !== false);
  if (limits.length === 0) return '';
  return by ? `${limits.join(', ')} (${by})` : limits.join(', ');
}

/** One line: name, value, formula, source, limits, and that it is guidance. */
export function planFigureText(figure: PlanFigure): string {
  const { name, formula, source, warning } = planFigureWords(figure);
  const limits = limitsText(figure);
  const checked = figure.warns ? `Warning: ${warning}; ${limits}. ` : limits && `Checked against ${limits}. `;
  return `${name}: ${figureText(figure)}. ${checked}Formula: ${formula}. Source: ${source}. ${GUIDANCE_ONLY}`;
}
