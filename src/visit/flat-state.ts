import type { History, SearchEvent } from '../engine/history.ts';
import type { JobState } from './state.ts';

/** A state on its way between threads. A linked list is copied by going down it, and a long one goes too deep. */
export interface FlatState {
  readonly state: Omit<JobState, 'history'>;
  /** Oldest first. */
  readonly events: readonly SearchEvent[];
}

export function flat({ history, ...state }: JobState): FlatState {
  const events: SearchEvent[] = [];
  for (let link = history; link; link = link.before) events.push(link.event);
  return { state, events: events.reverse() };
}

export function unflat({ state, events }: FlatState): JobState {
  const history = events.reduce<History | undefined>((before, event) => ({ event, before }), undefined);
  return history ? { ...state, history } : state;
}
