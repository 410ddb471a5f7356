import type { Guidance } from '../model/guidance.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { JobSetup } from '../model/setup.ts';
import { METRES, type Units } from '../model/units.ts';
import { checkPlan, checkSetup, type PlanFigure } from '../plan/check.ts';
import { brokenSide, figureText, limitsText, planFigureWords } from './plan.ts';
import { type Shown, shownFor } from './units.ts';

/** The warnings of the plan check, wherever they are told: to the desk, before the climb, in findings and reports. */

/** "path length 120 m: outside the maker's range (at most 100 m: the maker)", with the limit that it breaks. */
export function warningText(figure: PlanFigure, shown: Shown): string {
  const { name, warning } = planFigureWords(figure);
  const { by, least, most, ...rest } = figure;
  const side = brokenSide(figure);
  const limit = {
    ...(side === 'least' && least !== undefined && { least }),
    ...(side === 'most' && most !== undefined && { most }),
  };
  const limits = limitsText({ ...rest, ...limit }, shown);
  return `${name} ${figureText(figure, shown)}: ${warning} (${by ? `${limits}: ${by}` : limits})`;
}

const textsOf = (figures: readonly PlanFigure[], shown: Shown): string[] =>
  figures.filter(({ warns }) => warns).map((figure) => warningText(figure, shown));

/** Of a plan as it stands on its site. */
export const planWarnings = (
  plan: PairPlan,
  guidance: Guidance | undefined,
  units: Units = METRES,
): string[] => textsOf(checkPlan(plan, guidance), { ...units, path: plan.pathLength });

/** Of a job, with the meter and adjusters in use. */
export const setupWarnings = (setup: JobSetup): string[] => textsOf(checkSetup(setup), shownFor(setup));

export const WARNINGS_TITLE = 'Warnings of the plan check';

/** "1 warning of the plan check", "3 warnings of the plan check" */
export const warningCount = (count: number): string =>
  `${count} ${count === 1 ? 'warning' : 'warnings'} of the plan check`;

/** Said to both before the climb. */
export const warningsAloud = (warnings: readonly string[]): string =>
  `${warningCount(warnings.length)}. ${warnings.map((text) => `${text}.`).join(' ')} Ask the desk if you do not know why.`;
