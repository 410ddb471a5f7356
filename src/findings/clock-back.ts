import { found, type Look } from './look.ts';

/** The server's clock went back: delays and gaps across that entry are wrong. */
export const clockBack: Look = ({ entries }) =>
  entries.flatMap((entry, i) => {
    const before = entries[i - 1];
    if (!before || entry.at >= before.at) return [];
    const figures = { back: (before.at - entry.at) / 1000 };
    return [found('clock-back', { severity: 'serious', entries: [before.seq, entry.seq], figures })];
  });
