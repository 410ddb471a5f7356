import { isCommissioning } from '../visit/commission.ts';
import { progressOf } from '../visit/progress.ts';
import { found, type Look } from './look.ts';

/** A proving test that does not count, because nobody read the meter before the cover, behind it or after it. */
export const testUnread: Look = ({ commission, until }) => {
  if (!isCommissioning(commission)) return [];
  const unread = progressOf(commission, until).all.flatMap(({ attempt, verdict }) =>
    verdict.kind === 'unread' ? [{ seq: attempt.covered.seq, lacks: verdict.lacks }] : [],
  );
  if (unread.length === 0) return [];
  const entries = unread.map(({ seq }) => seq);
  return [
    found('test-unread', {
      severity: 'note',
      entries,
      about: [...new Set(unread.map(({ lacks }) => lacks))],
    }),
  ];
};
