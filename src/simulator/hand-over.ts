import type { AsLeft } from '../model/hand-over.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { Plant } from './plants.ts';

export const LEFT_PLANTS = [
  'left-threshold',
  'left-delay',
  'left-height',
  'left-signal',
] as const satisfies readonly Plant[];

/** What is written down as left, with the planted fault: each is just clear of what was planned or read. */
export function leftWith(plant: (typeof LEFT_PLANTS)[number], plan: PairPlan | undefined): AsLeft {
  switch (plant) {
    case 'left-threshold':
      return { threshold: { unit: 'dB', value: 6 } };
    case 'left-delay':
      return { alarmDelay: (plan?.alarmDelay ?? 0) + 5, faultDelay: plan?.faultDelay };
    case 'left-height':
      return { receiverHeight: (plan?.receiverHeight ?? 0) + 1 };
    case 'left-signal':
      return { signal: 1 };
  }
}
