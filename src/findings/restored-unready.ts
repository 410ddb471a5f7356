import { answerTo } from '../visit/commission.ts';
import { isIsolated } from '../visit/progress.ts';
import { found, type Look } from './look.ts';

/** The outputs are back in service, while covers are off or the panel is not normal. */
export const restoredUnready: Look = ({ commission }) => {
  const restored = answerTo(commission, 'after', 'outputs-restored');
  if (!restored?.done || isIsolated(commission)) return [];
  const unready = (['covers-on', 'panel-normal'] as const).flatMap((item) => {
    const answer = answerTo(commission, 'after', item);
    return answer && !answer.done ? [{ item, seq: answer.seq }] : [];
  });
  // What the panel was seen to show says more than an older answer about it.
  const shown = commission.counted.findLast((fact) => fact.type === 'panel');
  const normal = answerTo(commission, 'after', 'panel-normal');
  const since = Math.max(restored.seq, normal?.seq ?? 0);
  if (shown?.type === 'panel' && shown.shows !== 'normal' && shown.seq > since && normal?.done !== false) {
    unready.push({ item: 'panel-normal', seq: shown.seq });
  }
  if (unready.length === 0) return [];
  const entries = [restored.seq, ...unready.map(({ seq }) => seq)].toSorted((a, b) => a - b);
  return [
    found('restored-unready', { severity: 'serious', entries, about: unready.map(({ item }) => item) }),
  ];
};
