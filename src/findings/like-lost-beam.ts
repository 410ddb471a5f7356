import { looksLost } from '../plan/covers.ts';
import { isCommissioning } from '../visit/commission.ts';
import { coverOf } from '../visit/cover.ts';
import { progressOf } from '../visit/progress.ts';
import { found, type Look } from './look.ts';

/** The alarm test passed behind a filter that a detector can hardly tell from a lost beam. */
export const likeLostBeam: Look = ({ commission, until }) => {
  if (!isCommissioning(commission)) return [];
  const { alarm } = progressOf(commission, until).last;
  if (alarm?.verdict.kind !== 'passed') return [];
  const cover = coverOf(alarm.attempt, commission.setup);
  if (!cover || !looksLost(cover)) return [];
  const figures = { ...(cover.filter !== undefined && { filter: cover.filter }) };
  return [found('like-lost-beam', { severity: 'question', entries: [alarm.attempt.covered.seq], figures })];
};
