import type { Input } from '../../src/conversation/input.ts';
import type { History, SearchEvent } from '../../src/engine/history.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { JobState } from '../../src/visit/state.ts';
import type { Decision } from './rules.ts';

/** A state on its way between threads. A list that is linked is copied by going down it, and a long one goes too deep. */
export interface SentState {
  readonly state: Omit<JobState, 'history'>;
  /** Oldest first. */
  readonly events: readonly SearchEvent[];
}

export interface Asked {
  readonly id: number;
  readonly job: JobId;
  readonly input: Input;
  readonly now: number;
  /** What it is decided from: the state after the last decision here, or before it, or another one. */
  readonly from: 'decided' | 'same' | SentState;
}
/** `forget`: jobs that are put away. */
export type ToRules = { readonly asks: readonly Asked[]; readonly forget: readonly JobId[] };
export type FromRules = { readonly id: number } & (
  | { readonly decision: Decision }
  | { readonly failed: string }
);

export function toSend({ history, ...state }: JobState): SentState {
  const events: SearchEvent[] = [];
  for (let link = history; link; link = link.before) events.push(link.event);
  return { state, events: events.reverse() };
}

export function received({ state, events }: SentState): JobState {
  const history = events.reduce<History | undefined>((before, event) => ({ event, before }), undefined);
  return history ? { ...state, history } : state;
}
