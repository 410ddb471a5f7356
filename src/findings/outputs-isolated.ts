import { answerTo } from '../commission/commission.ts';
import { found, type Look } from './finding.ts';

/** The record ends with the alarm outputs still isolated. */
export const outputsIsolated: Look = ({ commission }) => {
  const isolated = answerTo(commission, 'before', 'outputs-isolated');
  const restored = answerTo(commission, 'after', 'outputs-restored');
  if (!isolated?.done || (restored?.done && restored.seq > isolated.seq)) return [];
  return [found('outputs-isolated', { severity: 'serious', entries: [isolated.seq] })];
};
