import { useRef } from 'preact/hooks';
import type { Entry } from '../../src/model/entry.ts';
import { type Hall, hallAfter } from '../../src/practice/hall.ts';

/** The simulated pair as it is now, folded as the entries come. */
export function useHall(entries: readonly Entry[]): Hall | undefined {
  const known = useRef<{ count: number; hall: Hall | undefined }>({ count: 0, hall: undefined });
  const { count, hall } = known.current;
  if (entries.length !== count)
    known.current = { count: entries.length, hall: entries.slice(count).reduce(hallAfter, hall) };
  return known.current.hall;
}
