import { Seat } from '../model/facts.ts';
import { found, type Look } from './look.ts';

/** The crew said nothing for longer than this. Common practice, no source. Milliseconds. */
export const LONG_GAP_MS = 10 * 60_000;

/** Much can happen in a long silence that is not in the log. */
export const longGap: Look = ({ entries }) => {
  const crew = entries.filter(({ actor }) => Seat.options.some((seat) => seat === actor));
  return crew.flatMap((entry, i) => {
    const before = crew[i - 1];
    const gap = before ? entry.at - before.at : 0;
    if (!before || gap <= LONG_GAP_MS) return [];
    const figures = { gap: gap / 1000 };
    return [found('long-gap', { severity: 'question', entries: [before.seq, entry.seq], figures })];
  });
};
