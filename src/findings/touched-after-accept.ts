import { isTouch, lastOf } from '../model/placed.ts';
import { found, type Look } from './look.ts';

/** An adjuster was turned after acceptance, and nothing was accepted again: the accepted position is lost. */
export const touchedAfterAccept: Look = ({ commission: { counted } }) => {
  const accept = lastOf(counted, 'accept');
  if (!accept) return [];
  const turns = counted.filter((fact) => isTouch(fact) && fact.type !== 'gain' && fact.seq > accept.seq);
  if (turns.length === 0) return [];
  const entries = [accept, ...turns].map(({ seq }) => seq);
  return [found('touched-after-accept', { severity: 'serious', entries })];
};
