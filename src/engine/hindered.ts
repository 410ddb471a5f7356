import { AXES } from '../model/turns.ts';
import { advice, type TimedAdvice } from './advice.ts';
import { atTheEnd } from './finish.ts';
import type { View } from './view.ts';

/** Nothing more can be done with the screws as they are: one is stuck, or at its end with the peak beyond it. */
export function hindered({ search, here }: View, now: number): TimedAdvice | undefined {
  if (!here || atTheEnd(search, now)) return undefined;
  const causes = AXES.flatMap((axis) => (search.stuck[axis] ? [`${axis}-stuck` as const] : []));
  if (causes.length > 0) return advice('stuck-adjuster', { kind: 'check', causes }, [here]);
  const isAtEnd = AXES.some((axis) => {
    const { low, high } = search.limits[axis];
    return search.turned[axis] <= low || search.turned[axis] >= high;
  });
  return isAtEnd ? advice('end-of-travel', { kind: 're-aim' }, [here]) : undefined;
}
