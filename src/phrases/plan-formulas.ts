import { METRES, type Units } from '../model/units.ts';
import type { FigureId, PlanFigure } from '../plan/check.ts';
import { PRE_AIM_M } from '../plan/geometry.ts';
import { nearText } from './near.ts';
import { figureText, limitsText, planFigureWords } from './plan.ts';
import { lengthText, type Shown } from './units.ts';

/** Where each figure of a plan comes from, for the desk. */

/** Said with every figure of a plan. */
export const GUIDANCE_ONLY = 'guidance; local code and the maker decide';

interface Origin {
  readonly formula: string;
  readonly source: string;
}

/** What stands in the words below in metres; where a site reads feet, they are put in its place. */
const aim = (units: Units) => {
  const length = lengthText(PRE_AIM_M, units);
  return { length, near: units.length === 'ft' ? length : nearText(PRE_AIM_M, units) };
};
const AIM = aim(METRES);

const NO_SOURCE = 'common practice, no source';
const GEOMETRY = 'plane geometry';

const ORIGINS: Record<FigureId, Origin> = {
  'aiming-tolerance': { formula: `atan(${AIM.length} / path length)`, source: `${AIM.near}: ${NO_SOURCE}` },
  footprint: {
    formula: '2 * path length * tan(beam angle / 2)',
    source: `${GEOMETRY}; beam angle as stated by the maker`,
  },
  'quarter-turn': {
    formula: 'path length * tan(degrees a turn / 4)',
    source: `${GEOMETRY}; pitch as in the adjuster profile`,
  },
  'path-length': { formula: 'as planned', source: "the maker's range" },
  reach: { formula: 'spacing / 2', source: 'arithmetic' },
  'wall-distance': { formula: 'as planned', source: 'the plan' },
  'ceiling-height': { formula: 'as planned', source: 'the plan' },
  'emitter-ceiling': { formula: 'ceiling height - emitter height', source: 'arithmetic' },
  'receiver-ceiling': { formula: 'ceiling height - receiver height', source: 'arithmetic' },
  level: { formula: '|emitter height - receiver height|', source: 'arithmetic' },
  'alarm-percent': { formula: '100 * (1 - 10^(-dB / 10))', source: 'EN 54-12 and ISO 7240-12, from memory' },
  'alarm-db': {
    formula: '10 * log10(100 / (100 - percent))',
    source: 'EN 54-12 and ISO 7240-12, from memory',
  },
  'alarm-delay': { formula: 'as planned', source: NO_SOURCE },
  'fault-delay': { formula: 'as planned', source: NO_SOURCE },
  filter: { formula: 'as marked', source: NO_SOURCE },
  'cover-loss': {
    formula: '10 * log10(100 / (100 - percent)); half covered: 50 percent',
    source: `half the face, half the power: ${NO_SOURCE}; filter as marked`,
  },
  'expected-reading': {
    formula: 'linear: lowest + (final - lowest) * 10^(-dB / 10); logarithmic: final - dB / dB a unit',
    source: "the meter's law, from the final reading or the middle of the band",
  },
};

export function planFigureOrigin(figure: PlanFigure, units: Units = METRES): Origin {
  const { formula, source } = ORIGINS[figure.id];
  const { length, near } = aim(units);
  return { formula: formula.replace(AIM.length, length), source: source.replace(AIM.near, near) };
}

/** One line: name, value, formula, source, limits, and that it is guidance. */
export function planFigureText(figure: PlanFigure, shown: Shown = METRES): string {
  const { name, warning } = planFigureWords(figure);
  const { formula, source } = planFigureOrigin(figure, shown);
  const limits = limitsText(figure, shown);
  const checked = figure.warns ? `Warning: ${warning}; ${limits}. ` : limits && `Checked against ${limits}. `;
  return `${name}: ${figureText(figure, shown)}. ${checked}Formula: ${formula}. Source: ${source}. ${GUIDANCE_ONLY}`;
}
