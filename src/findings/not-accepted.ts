import { lastOf } from '../model/placed.ts';
import { found, type Look } from './look.ts';

/** The record ends without any accepted alignment. */
export const notAccepted: Look = ({ accepted, commission, entries }) => {
  if (accepted || lastOf(commission.counted, 'accept')) return [];
  return [found('not-accepted', { severity: 'serious', entries: entries.slice(-1).map(({ seq }) => seq) })];
};
