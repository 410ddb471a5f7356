import { answerTo } from '../commission/commission.ts';
import { isIsolated } from '../commission/progress.ts';
import { found, type Look } from './finding.ts';

/** The record ends with the alarm outputs still isolated. */
export const outputsIsolated: Look = ({ commission }) => {
  const isolated = answerTo(commission, 'before', 'outputs-isolated');
  if (!isolated || !isIsolated(commission)) return [];
  return [found('outputs-isolated', { severity: 'serious', entries: [isolated.seq] })];
};
