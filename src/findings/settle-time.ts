import { heard, newStay, settled } from '../engine/stay.ts';
import type { Seq } from '../model/ids.ts';
import { isTouch } from '../model/placed.ts';
import { found, type Look } from './look.ts';

/** A turn or gain change was made before the reading had settled. */
export const settleTime: Look = ({ commission }) => {
  const {
    counted,
    setup: { meter },
  } = commission;
  const entries: Seq[] = [];
  let stay = newStay(0);
  for (const fact of counted) {
    const { seq, at } = fact;
    if (fact.type === 'reading') stay = heard(stay, { seq, at, reading: fact.reading }, meter);
    else if (fact.type === 'trend') stay = fact.trend === 'steady' ? { ...stay, since: 0 } : newStay(at);
    else if (isTouch(fact) || fact.type === 'path') {
      const last = stay.run.at(-1);
      const hasty = isTouch(fact) && last?.reading.kind === 'value' && !settled(stay, meter);
      if (last && hasty) entries.push(last.seq, seq);
      stay = newStay(at);
    }
  }
  return entries.length > 0 ? [found('settle-time', { severity: 'question', entries })] : [];
};
