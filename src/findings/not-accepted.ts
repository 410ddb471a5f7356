import { isTouch, lastOf } from '../model/placed.ts';
import { isLeft } from '../visit/state.ts';
import { found, type Look } from './look.ts';

/**
 * The record ends without any accepted alignment. It is serious once the crew has left a pair that it turned: until
 * then the work goes on.
 */
export const notAccepted: Look = ({ accepted, commission, end, entries }) => {
  if (accepted || lastOf(commission.counted, 'accept')) return [];
  const severity = isLeft(end) && commission.counted.some(isTouch) ? 'serious' : 'question';
  return [found('not-accepted', { severity, entries: entries.slice(-1).map(({ seq }) => seq) })];
};
