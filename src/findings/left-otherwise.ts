import { leftOtherwise as differing } from '../visit/as-left.ts';
import { found, type Look } from './look.ts';

/** A figure was left otherwise than planned. With another threshold or delay the tests proved something else. */
export const leftOtherwise: Look = ({ end: { handOver }, commission: { setup } }) => {
  const fields = differing(handOver.asLeft, setup.plan);
  if (fields.length === 0) return [];
  const isTested = fields.some((field) => TESTED.has(field));
  const entries = [...new Set(fields.flatMap((field) => handOver.leftBy[field] ?? []))].sort((a, b) => a - b);
  return [found('left-otherwise', { severity: isTested ? 'serious' : 'question', entries, about: fields })];
};

const TESTED: ReadonlySet<string> = new Set(['threshold', 'alarmDelay', 'faultDelay']);
