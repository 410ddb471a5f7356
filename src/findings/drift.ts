import { agree } from '../engine/stay.ts';
import { lastOf, type Placed } from '../model/placed.ts';
import type { Trend } from '../model/reports.ts';
import { found, type Look } from './look.ts';

/** "Wandering" says no way, and "steady" that there was none. */
const CHANGES: ReadonlySet<Trend> = new Set(['rising', 'falling']);

/**
 * The last reading with a clear path after acceptance differs from the accepted one. Where no number is read: the light was last
 * seen to change.
 */
export const drift: Look = ({ commission: { counted, setup }, accepted }) => {
  const accept = lastOf(counted, 'accept');
  if (!accept || !accepted) return [];
  let path: Placed<'path'>['state'] = 'clear';
  let last: Placed<'reading'> | undefined;
  let changed: Placed<'trend'> | undefined;
  for (const fact of counted) {
    if (fact.type === 'path') path = fact.state;
    if (path !== 'clear' || fact.seq < accept.seq) continue;
    if (fact.type === 'reading') last = fact;
    if (fact.type === 'trend' && CHANGES.has(fact.trend)) changed = fact;
  }
  if (changed && accept.reading.kind === 'seen')
    return [
      found('drift', { severity: 'question', entries: [accept.seq, changed.seq], about: [changed.trend] }),
    ];
  if (!last || agree(accept.reading, last.reading, setup.meter)) return [];
  const figures = {
    ...(accept.reading.kind === 'value' && { accepted: accept.reading.value }),
    ...(last.reading.kind === 'value' && { later: last.reading.value }),
  };
  return [found('drift', { severity: 'question', entries: [accept.seq, last.seq], figures })];
};
