import { agree } from '../engine/stay.ts';
import { lastOf, type Placed } from '../model/placed.ts';
import { found, type Look } from './look.ts';

/** The last reading with a clear path after acceptance differs from the accepted one. */
export const drift: Look = ({ commission: { counted, setup }, accepted }) => {
  const accept = lastOf(counted, 'accept');
  if (!accept || !accepted) return [];
  let path: Placed<'path'>['state'] = 'clear';
  let last: Placed<'reading'> | undefined;
  for (const fact of counted) {
    if (fact.type === 'path') path = fact.state;
    if (fact.type === 'reading' && path === 'clear' && fact.seq > accept.seq) last = fact;
  }
  if (!last || agree(accept.reading, last.reading, setup.meter)) return [];
  const figures = {
    ...(accept.reading.kind === 'value' && { accepted: accept.reading.value }),
    ...(last.reading.kind === 'value' && { later: last.reading.value }),
  };
  return [found('drift', { severity: 'question', entries: [accept.seq, last.seq], figures })];
};
