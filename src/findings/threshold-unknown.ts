import { thresholdDb } from '../plan/covers.ts';
import { isCommissioning } from '../visit/commission.ts';
import { progressOf } from '../visit/progress.ts';
import { found, type Look } from './look.ts';

/** The alarm test passed, and nobody knows whether its cover was the right one for the threshold that is set. */
export const thresholdUnknown: Look = ({ commission, until }) => {
  if (!isCommissioning(commission) || thresholdDb(commission.setup.plan) !== undefined) return [];
  const { alarm } = progressOf(commission, until).last;
  if (alarm?.verdict.kind !== 'passed') return [];
  return [found('threshold-unknown', { severity: 'question', entries: [alarm.attempt.covered.seq] })];
};
