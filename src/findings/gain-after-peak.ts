import { lastOf } from '../model/placed.ts';
import { AXES } from '../model/turns.ts';
import { found, type Look } from './look.ts';

/**
 * Both adjusters were turned, there and back; then the gain was changed and nothing was turned again, before
 * acceptance or after it: no peak was checked at that gain.
 */
export const gainAfterPeak: Look = ({ commission: { counted } }) => {
  const accept = lastOf(counted, 'accept');
  const moves = counted.filter((fact) => fact.type === 'move');
  const ways = new Set(moves.map(({ axis, eighths }) => `${axis} ${Math.sign(eighths)}`));
  const worked = AXES.every((axis) => ways.has(`${axis} 1`) && ways.has(`${axis} -1`));
  const last = moves.at(-1);
  if (!accept || !last || !worked) return [];
  const gains = counted.filter(({ type, seq }) => type === 'gain' && seq > last.seq);
  if (gains.length === 0) return [];
  const entries = [accept, ...gains].map(({ seq }) => seq).sort((a, b) => a - b);
  return [found('gain-after-peak', { severity: 'serious', entries })];
};
