import { answerTo } from '../visit/commission.ts';
import { isIsolated } from '../visit/progress.ts';
import { found, type Look } from './look.ts';

/** The record ends with the alarm outputs still isolated. */
export const outputsIsolated: Look = ({ commission }) => {
  const isolated = answerTo(commission, 'before', 'outputs-isolated');
  if (!isolated || !isIsolated(commission)) return [];
  return [found('outputs-isolated', { severity: 'serious', entries: [isolated.seq] })];
};
