import { AS_LEFT_FIELDS, type AsLeftField } from '../../src/model/hand-over.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import {
  BUILDING_WORDS,
  CONDITION_NAMES,
  capital,
  HAND_OVER_ROWS,
  LEFT_NAMES,
  leftText,
  nextDueText,
  SUN_WORDS,
  variationText,
} from '../../src/phrases/hand-over.ts';
import { STEP_RESULTS } from '../../src/phrases/steps.ts';
import { shownFor } from '../../src/phrases/units.ts';
import { afterHandOver, type HandOver } from '../../src/visit/hand-over.ts';
import { type AnsweredStep, stepsOf } from '../../src/visit/steps.ts';
import type { Pending } from '../link/link.ts';

/** One thing to be written down. `value`: as it stands, in words; empty where nothing does. */
export type Item = { readonly key: string; readonly name: string; readonly value: string } & (
  | { readonly kind: 'step'; readonly step: AnsweredStep }
  | { readonly kind: 'left'; readonly field: AsLeftField }
  | { readonly kind: 'sun' | 'weather' | 'building' | 'variation' | 'next' }
);

/** Everything that a crew can write down about its pair, in the order in which it is asked for. */
export function itemsOf(setup: JobSetup, handOver: HandOver): Item[] {
  const { asLeft, conditions, variations, nextDue } = handOver;
  const shown = shownFor(setup);
  const other = (kind: 'sun' | 'weather' | 'building' | 'variation' | 'next', name: string, value = '') => ({
    key: kind,
    kind,
    name,
    value,
  });
  return [
    ...stepsOf(setup, handOver).map((step) => ({
      key: `step ${step.cause}`,
      kind: 'step' as const,
      name: step.cause,
      value: step.answer ? STEP_RESULTS[step.answer.result] : '',
      step,
    })),
    ...AS_LEFT_FIELDS.map((field) => ({
      key: field,
      kind: 'left' as const,
      name: capital(LEFT_NAMES[field]),
      value: leftText(field, asLeft, setup.meter, shown),
      field,
    })),
    other('sun', CONDITION_NAMES.sun, conditions?.sun && SUN_WORDS[conditions.sun]),
    other('weather', CONDITION_NAMES.weather, conditions?.weather),
    other(
      'building',
      CONDITION_NAMES.building,
      conditions?.building?.map((each) => BUILDING_WORDS[each]).join(', '),
    ),
    other(
      'variation',
      HAND_OVER_ROWS.variation,
      variations
        .filter(({ struck }) => !struck)
        .map(({ what, agreedWith }) => variationText(what, agreedWith))
        .join('; '),
    ),
    other('next', HAND_OVER_ROWS.next, nextDue && nextDueText(nextDue.what, nextDue.on)),
  ];
}

/** The hand-over as it will be when what waits on this phone is taken. `seq`: the next entry of the log. */
export const withWaiting = (handOver: HandOver, outbox: readonly Pending[], seq: number): HandOver =>
  outbox.reduce(
    (so, { letter, since }) =>
      letter.t === 'hand-over' ? afterHandOver(so, { ...letter.fact, seq, at: since }) : so,
    handOver,
  );

/** The first thing after `key` that nobody has written; those before it come last. A variation need not be. */
export function nextOpen(items: readonly Item[], key: string | undefined): Item | undefined {
  const at = items.findIndex((item) => item.key === key);
  return [...items.slice(at + 1), ...items.slice(0, Math.max(at, 0))].find(
    ({ value, kind }) => value === '' && kind !== 'variation',
  );
}
