import type { PairPlan } from '../model/pair-plan.ts';
import { PLAN_ROWS, placeText, settingsText } from '../phrases/planned.ts';
import type { Shown } from '../phrases/units.ts';
import type { Fact } from './report.ts';

/** What was planned for a pair, as far as it is known, in two lines. */
export const planRows = (plan: PairPlan, shown: Shown): Fact[] => [
  { name: PLAN_ROWS.place, value: placeText(plan, shown) },
  { name: PLAN_ROWS.settings, value: settingsText(plan, shown) },
];
