import { AXES } from '../model/turns.ts';
import { found, type Look } from './look.ts';

/** An adjuster could not be turned: freed and turned later, or left as it was. */
export const adjusterHindered: Look = ({ commission: { counted } }) =>
  AXES.flatMap((axis) => {
    const cannots = counted.filter((fact) => fact.type === 'cannot' && fact.turn?.axis === axis);
    const last = cannots.at(-1);
    if (!last) return [];
    const isFreed = counted.some((fact) => fact.type === 'move' && fact.axis === axis && fact.seq > last.seq);
    const severity = isFreed ? 'note' : 'question';
    const about = [axis, ...(isFreed ? ['turned-later'] : [])];
    return [found('adjuster-hindered', { severity, entries: cannots.map(({ seq }) => seq), about })];
  });
