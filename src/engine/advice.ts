import type { Action, Addressee, Advice } from '../model/advice.ts';
import type { Axis } from '../model/turns.ts';
import type { RuleId } from './rules.ts';
import type { Sample } from './sample.ts';
import type { View } from './view.ts';

/** The advice of a rule, and when to look again if nothing happens before. */
export interface TimedAdvice {
  readonly advice: Advice;
  readonly wakeAt?: number;
}

/** Who acts, unless the rule says otherwise. */
export const HEARER: Record<Action['kind'], Addressee> = {
  turn: 'emitter',
  gain: 'emitter',
  read: 'panel',
  hold: 'both',
  're-aim': 'emitter',
  block: 'emitter',
  unblock: 'emitter',
  ask: 'both',
  check: 'both',
  'offer-accept': 'panel',
  'confirm-item': 'both',
  cover: 'both',
  uncover: 'emitter',
  'watch-panel': 'panel',
  'settle-issue': 'both',
  'offer-sign': 'both',
  finished: 'both',
};

/** The most entries that an advice names: enough to judge it, few enough to say. */
const BECAUSE_KEPT = 8;

export function advice(
  rule: RuleId,
  action: Action,
  because: readonly (Sample | undefined)[] = [],
  figures: Record<string, number> = {},
): TimedAdvice {
  const seqs = because.flatMap((s) => s?.seqs.slice(-1) ?? []);
  const kept = [...new Set(seqs)].sort((a, b) => a - b).slice(-BECAUSE_KEPT);
  const advice = { to: HEARER[action.kind], action, rule, because: kept, figures };
  return action.kind === 'hold' ? { advice, wakeAt: action.until } : { advice };
}

export type TurnAction = Extract<Action, { kind: 'turn' }>;

/** Cuts a turn to what the hand and the screw can do; undefined if nothing is left. */
export function turnBy(
  { search }: Pick<View, 'search'>,
  axis: Axis,
  eighths: number,
): TurnAction | undefined {
  if (search.stuck[axis]) return undefined;
  const { low, high } = search.limits[axis];
  const from = search.turned[axis];
  const within = Math.max(low, Math.min(high, from + Math.round(eighths)));
  // A crew may be outside the range by more than one turn of the hand: first the limits, then the hand.
  const step = Math.max(-search.adjusters.maxStep, Math.min(search.adjusters.maxStep, within - from));
  if (step === 0) return undefined;
  const reversal = search.lastTurn[axis] !== 0 && Math.sign(step) !== search.lastTurn[axis];
  return { kind: 'turn', axis, eighths: step, reversal };
}

/** Two decimals are enough for any spoken or printed figure. */
export const figure = (value: number): number => Number(value.toFixed(2));
