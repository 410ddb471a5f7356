import { lastOf } from '../job/state.ts';
import { found, type Look } from './finding.ts';

/** The gain was the last thing changed, before the acceptance or after it: no peak was checked at that gain. */
export const gainAfterPeak: Look = ({ end: { counted } }) => {
  const accept = lastOf(counted, 'accept');
  const move = lastOf(counted, 'move');
  if (!accept || !move) return [];
  const gains = counted.filter(({ type, seq }) => type === 'gain' && seq > move.seq);
  if (gains.length === 0) return [];
  const entries = [accept, ...gains].map(({ seq }) => seq).sort((a, b) => a - b);
  return [found('gain-after-peak', { severity: 'serious', entries })];
};
