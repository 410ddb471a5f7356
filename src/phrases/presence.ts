import type { Seat } from '../model/facts.ts';

/** "panel and emitter", "panel", or nobody: the phones that are linked to a pair now. */
export function whoIsOn({
  online: { panel, emitter },
}: {
  online: { panel: boolean; emitter: boolean };
}): string {
  if (panel && emitter) return 'panel and emitter';
  if (panel || emitter) return panel ? 'panel' : 'emitter';
  return 'nobody';
}

/** Beside a step for a phone that has no link now. */
export const awayText = (seat: Seat): string => `The ${seat} phone is away. This step waits for it.`;

const RECEIPT = {
  shown: 'On the ladder: shown, not spoken to its end.',
  spoken: 'On the ladder: shown and spoken.',
} as const;

/** At the panel, whether an order has reached the phone on the ladder. Whether the person heard it, no phone can know. */
export const receiptText = (how: keyof typeof RECEIPT | undefined): string =>
  how === undefined ? 'On the ladder: not heard yet.' : RECEIPT[how];
