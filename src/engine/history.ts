import type { SearchFact } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';

export interface SearchEvent {
  readonly seq: Seq;
  /** Milliseconds. */
  readonly at: number;
  readonly fact: SearchFact;
}

/**
 * Every event, newest first, to fold again without one of them. A linked list, so that adding always costs
 * the same.
 */
export interface History {
  readonly event: SearchEvent;
  readonly before: History | undefined;
}

/** The entry that an event replaces, if it corrects one. */
export const replacedBy = ({ fact }: SearchEvent): Seq | undefined =>
  fact.type === 'reading' || fact.type === 'move' ? fact.replaces : undefined;

/** True if an event changes what earlier events mean. */
export const rewrites = (event: SearchEvent): boolean =>
  event.fact.type === 'retract' || replacedBy(event) !== undefined;

/**
 * The events that still count, oldest first. A retraction can itself be retracted; a correction counts at the
 * place and time of what it corrects.
 */
export function counting(history: History): SearchEvent[] {
  const gone = new Set<Seq>();
  const standIns = new Map<Seq, SearchEvent>();
  const kept: SearchEvent[] = [];
  for (let link: History | undefined = history; link; link = link.before) {
    const { event } = link;
    const standIn = standIns.get(event.seq);
    const target = replacedBy(event);
    if (standIn) {
      if (target === undefined) kept.push({ ...standIn, at: event.at });
      else standIns.set(target, standIn);
    } else if (!gone.has(event.seq)) {
      if (event.fact.type === 'retract') gone.add(event.fact.target);
      else if (target === undefined) kept.push(event);
      else standIns.set(target, event);
    }
  }
  return kept.reverse();
}
