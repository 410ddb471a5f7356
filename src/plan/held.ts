import type { Guidance } from '../model/guidance.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { JobSetup } from '../model/setup.ts';
import {
  checkPlan,
  checkSetup,
  GUIDED,
  type GuidedId,
  limitIn,
  type PlanFigure,
  type Side,
} from './check.ts';

/** One limit that a guidance may have for one figure. */
export interface HeldPoint {
  readonly id: GuidedId;
  readonly side: Side;
}

/** The guidance has no value for it, or the plan has none. */
export type NotHeld = 'no-limit' | 'no-value';

/** What of a plan was held against a guidance, and what was not. */
export interface Held {
  readonly guidance: Guidance;
  readonly ran: readonly HeldPoint[];
  readonly not: readonly (HeldPoint & { readonly why: NotHeld })[];
}

const POINTS: readonly HeldPoint[] = (Object.keys(GUIDED) as GuidedId[]).flatMap((id) =>
  (Object.keys(GUIDED[id]) as Side[]).map((side) => ({ id, side })),
);

/** By the figures that the check really gave: a guidance that was only chosen has held nothing. */
function heldBy(figures: readonly PlanFigure[], guidance: Guidance): Held {
  const at = ({ id, side }: HeldPoint): NotHeld | 'ran' => {
    if (limitIn(guidance, id, side) === undefined) return 'no-limit';
    return figures.some((figure) => figure.id === id && figure.guided?.includes(side)) ? 'ran' : 'no-value';
  };
  return {
    guidance,
    ran: POINTS.filter((point) => at(point) === 'ran'),
    not: POINTS.flatMap((point) => {
      const why = at(point);
      return why === 'ran' ? [] : [{ ...point, why }];
    }),
  };
}

/** Of a plan, under the guidance of its site. Undefined without one. */
export const heldPlan = (plan: PairPlan, guidance: Guidance | undefined): Held | undefined =>
  guidance && heldBy(checkPlan(plan, guidance), guidance);

/** Of the plan that a visit was opened with, under the guidance in its record. */
export const heldSetup = (setup: JobSetup): Held | undefined =>
  setup.guidance && heldBy(checkSetup(setup), setup.guidance);
