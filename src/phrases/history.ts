import type { PairPlan } from '../model/pair-plan.ts';

export const HISTORY_TITLE = 'Signal left at each visit';
export const HISTORY_TABLE = 'The same in figures';
export const HISTORY_AXIS = 'Day of the visit';
export const historyName = (visits: number): string => `Signal left at each of ${visits} visits`;

export const HISTORY_COLUMNS = {
  day: 'Day',
  signal: 'Signal left',
  gain: 'Gain',
  lost: 'Against the first visit',
} as const;

export const LIMIT_KEYS = {
  leastSignal: 'least signal of the plan',
  mostLoss: 'most loss of the plan',
} as const;

/** The gain that a signal was read at. */
export const gainAtText = (gain: number | 'full' | undefined): string =>
  gain === undefined ? 'gain not named' : `gain ${gain}`;

/** One point in words. */
export const pointText = (signal: string, day: string, gain: string): string =>
  `${signal} on ${day}, ${gain}`;

export const FIRST_VISIT = 'first visit';

/** "0.4 dB less", "0.2 dB more", "the same" */
export function lostText(lost: number | undefined): string {
  if (lost === undefined) return 'cannot be compared';
  const shown = Math.abs(lost).toFixed(1);
  if (shown === '0.0') return 'the same';
  return `${shown} dB ${lost > 0 ? 'less' : 'more'}`;
}

interface Told {
  readonly visits: number;
  readonly lost: number | undefined;
  readonly plan: Pick<PairPlan, 'leastSignal' | 'mostLoss'>;
  readonly unit: string;
}

/** What the history comes to, and what it is held against. */
export function historyCaption({ visits, lost, plan, unit }: Told): string {
  const since = visits < 2 ? 'One visit: nothing to compare with.' : `Since the first: ${lostText(lost)}.`;
  return `${since} ${limitsText(plan, unit)}`;
}

function limitsText({ leastSignal, mostLoss }: Told['plan'], unit: string): string {
  const stated = [
    ...(leastSignal === undefined ? [] : [`at least ${leastSignal} ${unit}`]),
    ...(mostLoss === undefined ? [] : [`at most ${mostLoss} dB lost since the first visit`]),
  ];
  return stated.length > 0
    ? `Limit: ${stated.join(', ')}.`
    : 'The plan states no limit: write the one of the maker or the site into it.';
}
