import { AS_LEFT_FIELDS, type AsLeftField } from '../model/hand-over.ts';
import type { JobSetup } from '../model/setup.ts';
import {
  asPlannedText,
  capital,
  conditionsText,
  HAND_OVER_ROWS,
  LEFT_NAMES,
  leftText,
  NO_HAND_OVER,
  nextDueText,
  struckText,
  variationText,
  withdrawnText,
} from '../phrases/hand-over.ts';
import { HEADINGS } from '../phrases/headings.ts';
import { shownFor } from '../phrases/units.ts';
import { leftOtherwise, PLANNED_TOO } from '../visit/as-left.ts';
import type { HandOver } from '../visit/hand-over.ts';
import type { Block, Fact } from './report.ts';

/** How the pair was left, in what conditions, what was agreed and what comes next. */
export function handOverBlock(handOver: HandOver, setup: JobSetup): Block {
  const rows = handOverRows(handOver, setup);
  const none = { name: HEADINGS.handOver, value: NO_HAND_OVER };
  return { kind: 'facts', title: HEADINGS.handOver, rows: rows.length > 0 ? rows : [none] };
}

/** Empty where nothing was written down. What was left otherwise than planned has both figures. */
export function handOverRows(handOver: HandOver, setup: JobSetup): Fact[] {
  const { asLeft, conditions, struckOut, variations, nextDue } = handOver;
  const shown = shownFor(setup);
  const { plan, meter } = setup;
  const otherwise = new Set<string>(leftOtherwise(asLeft, plan));
  const planned = plan && {
    threshold: plan[PLANNED_TOO.threshold],
    alarmDelay: plan.alarmDelay,
    faultDelay: plan.faultDelay,
    emitterHeight: plan.emitterHeight,
    receiverHeight: plan.receiverHeight,
  };
  return [
    ...AS_LEFT_FIELDS.filter((field) => asLeft[field] !== undefined).map((field): Fact => {
      const left = leftText(field, asLeft, meter, shown);
      const beside = planned && otherwise.has(field) ? leftText(field, planned, meter, shown) : '';
      return {
        name: capital(LEFT_NAMES[field]),
        value: beside ? `${left} (${asPlannedText(beside)})` : left,
      };
    }),
    // Struck out, and not written anew since.
    ...struckOut
      .filter(({ field }, i) => asLeft[field] === undefined && lastStruck(struckOut, field) === i)
      .map(({ field, was, struck }) => ({
        name: capital(LEFT_NAMES[field]),
        value: struckText(leftText(field, was, meter, shown), struck),
      })),
    ...(conditions ? [{ name: HAND_OVER_ROWS.conditions, value: conditionsText(conditions) }] : []),
    ...variations.map(({ what, agreedWith, struck }) =>
      struck
        ? { name: HAND_OVER_ROWS.withdrawn, value: withdrawnText(variationText(what, agreedWith), struck) }
        : { name: HAND_OVER_ROWS.variation, value: variationText(what, agreedWith) },
    ),
    ...(nextDue ? [{ name: HAND_OVER_ROWS.next, value: nextDueText(nextDue.what, nextDue.on) }] : []),
  ];
}

const lastStruck = (struckOut: HandOver['struckOut'], field: AsLeftField): number =>
  struckOut.findLastIndex((each) => each.field === field);
