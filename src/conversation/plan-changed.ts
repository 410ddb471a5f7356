import type { PairPlan } from '../model/pair-plan.ts';
import { METRES } from '../model/units.ts';
import { planBackText, planChangedText } from '../phrases/plan-changes.ts';
import { changedFields, planSince } from '../plan/changes.ts';
import type { Composer } from './composer.ts';

/**
 * Tells the crew of an open visit what the desk has changed in the plan of its pair, against what the crew knew until
 * then. A signed visit is over: there the change is a finding of the site.
 */
export function planChanged(job: Composer, plan: PairPlan): void {
  const { setup, planNow, signed, changedBy } = job.state;
  if (!setup?.plan || (signed && changedBy === undefined)) return;
  const { meter, adjusters, units = METRES } = setup;
  // What stood in for a plan without profiles stands in for the new one, too.
  const standIn = { ...(!setup.plan.meter && { meter }), ...(!setup.plan.adjusters && { adjusters }) };
  const plans = { from: planNow ?? { ...setup.plan, meter, adjusters }, to: { ...standIn, ...plan } };
  if (changedFields(plans).length === 0) return;
  job.put('supervisor', { type: 'plan-changed', before: plans.from, after: plans.to });
  const isBack = planSince(setup, plan) === undefined;
  job.notice('plan-changed', isBack ? planBackText(plans, units) : planChangedText(plans, units));
}
