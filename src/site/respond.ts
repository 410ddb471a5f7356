import type { Draft } from '../model/entry.ts';
import type { FactOf, SiteFact } from '../model/facts.ts';
import type { Guidance } from '../model/guidance.ts';
import type { JobId } from '../model/ids.ts';
import type { PairId, PairPlan } from '../model/pair-plan.ts';
import { idKey, MAX_PAIRS } from '../model/pair-plan.ts';
import { type AdjusterProfile, type MeterProfile, NEUTRAL_ADJUSTERS } from '../model/profile.ts';
import type { Refusal } from '../model/refusal.ts';
import type { JobSetup } from '../model/setup.ts';
import type { TestStep } from '../model/steps.ts';
import type { Units } from '../model/units.ts';
import { LOG_VERSION } from '../model/written.ts';
import { noMeter, noSuchPair, sameIdText, TOO_MANY_PAIRS } from '../phrases/refusals.ts';
import { STEPS_OF_EVERY_VISIT } from '../phrases/steps.ts';
import type { SitePair, SiteState } from './state.ts';

/** The answer to a command of the desk: facts for the site's log, or a named refusal. */
export type SiteResponse =
  | { readonly kind: 'facts'; readonly drafts: readonly Draft[] }
  | { readonly kind: 'refused'; readonly reason: Refusal; readonly text: string };

const facts = (...list: readonly SiteFact[]): SiteResponse => ({
  kind: 'facts',
  drafts: list.map((fact) => ({ actor: 'supervisor', fact })),
});
const refused = (text: string): SiteResponse & { kind: 'refused' } => ({
  kind: 'refused',
  reason: 'bad-target',
  text,
});

/** What a site is opened with, beside its name. */
export interface SiteOptions {
  readonly code?: Guidance | undefined;
  readonly units?: Units | undefined;
}

export function openSite(site: string, { code, units }: SiteOptions): SiteResponse {
  const opened: FactOf<'site-opened'> = { type: 'site-opened', site, logVersion: LOG_VERSION };
  return facts({ ...opened, ...(code && { code }), ...(units && { units }) });
}

export const defineSteps = (steps: readonly TestStep[]): SiteResponse =>
  facts({ type: 'steps-defined', steps: [...steps] });

export const chooseUnits = (units: Units): SiteResponse => facts({ type: 'units-chosen', units });

export function planPairs({ pairs }: SiteState, plans: readonly PairPlan[]): SiteResponse {
  const together = new Set([...pairs.keys(), ...plans.map(({ id }) => id)]).size;
  if (together > MAX_PAIRS) return refused(TOO_MANY_PAIRS);
  const spelled = new Map([...pairs.keys()].map((id) => [idKey(id), id]));
  const other = plans.find(({ id }) => !pairs.has(id) && spelled.has(idKey(id)));
  if (other) return refused(sameIdText(spelled.get(idKey(other.id)) ?? other.id, other.id));
  return facts(...plans.map((pair) => ({ type: 'pair-planned', pair }) as const));
}

export function dropPair(state: SiteState, pair: PairId, reason: string): SiteResponse {
  return livePair(state, pair) ? facts({ type: 'pair-dropped', pair, reason }) : refused(noSuchPair(pair));
}

export function beginVisit(state: SiteState, pair: PairId, job: JobId): SiteResponse {
  return livePair(state, pair) ? facts({ type: 'job-begun', pair, job }) : refused(noSuchPair(pair));
}

/** How a visit begins. */
export interface VisitOptions {
  /** Without it: a commissioning. */
  readonly scope?: 'commissioning' | 'periodic' | undefined;
  /** The profiles for a plan that has none. */
  readonly meter?: MeterProfile | undefined;
  readonly adjusters?: AdjusterProfile | undefined;
}

/** The setup of a visit to a pair. What a periodic one is compared with is not in the log of the site: it is added. */
export function setupOf(
  state: SiteState,
  pair: PairId,
  { scope = 'commissioning', ...standIn }: VisitOptions,
): JobSetup | (SiteResponse & { kind: 'refused' }) {
  const plan = livePair(state, pair)?.plan;
  if (!plan || state.site === undefined) return refused(noSuchPair(pair));
  const meter = plan.meter ?? standIn.meter;
  if (!meter) return refused(noMeter(pair));
  return {
    site: state.site,
    pair: plan.name,
    meter,
    adjusters: plan.adjusters ?? standIn.adjusters ?? NEUTRAL_ADJUSTERS,
    ...(plan.pathLength !== undefined && { pathLength: plan.pathLength }),
    scope,
    plan,
    ...(state.code && { guidance: state.code }),
    steps: stepsFor(state),
    ...(state.units && { units: state.units }),
  };
}

/** Those of every visit, then those of the site; with the same cause, as the site has it. */
function stepsFor({ steps = [] }: SiteState): TestStep[] {
  const own = new Set(steps.map(({ cause }) => cause.toLowerCase()));
  return [...STEPS_OF_EVERY_VISIT.filter(({ cause }) => !own.has(cause.toLowerCase())), ...steps];
}

function livePair({ pairs }: SiteState, id: PairId): SitePair | undefined {
  const pair = pairs.get(id);
  return pair?.dropped ? undefined : pair;
}
