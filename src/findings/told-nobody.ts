import { answerTo } from '../visit/commission.ts';
import { namesNobody } from '../visit/told.ts';
import { found, type Look } from './look.ts';

/** Where it was asked who was told that the alarm is out of service, the answer names nobody. */
export const toldNobody: Look = ({ commission }) => {
  const told = answerTo(commission, 'before', 'people-told');
  if (!told?.done || told.note === undefined || !namesNobody(told.note)) return [];
  return [found('told-nobody', { severity: 'question', entries: [told.seq] })];
};
