import type { PairPlan } from '../model/pair-plan.ts';
import { PLAN_ROWS, placeText, settingsText } from '../phrases/planned.ts';
import type { Fact } from './report.ts';

/** What was planned for a pair, as far as it is known, in two lines. */
export const planRows = (plan: PairPlan): Fact[] => [
  { name: PLAN_ROWS.place, value: placeText(plan) },
  { name: PLAN_ROWS.settings, value: settingsText(plan) },
];
