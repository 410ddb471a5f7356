import type { FindingId } from '../findings/finding.ts';

/** What can be made to go wrong on a simulated visit, and the findings a reviewer must then come to, no others. */
export const PLANTS = {
  misread: ['corrections'],
  takeover: ['takeover'],
  'long-gap': ['long-gap'],
  'clock-back': ['clock-back'],
  /** A turn made on a reading that was called out at once. */
  hasty: ['settle-time'],
  /** The light weakens by half a decibel after the acceptance. */
  drift: ['drift'],
  'late-alarm': ['test-failed'],
  'left-isolated': ['outputs-isolated'],
  /** Turned, or the gain changed, after the signature; the outputs had been restored. */
  'touched-since': ['touched-after-accept', 'changed-since-signed'],
  'gain-since': ['gain-after-peak', 'changed-since-signed'],
} as const satisfies Record<string, readonly FindingId[]>;
export type Plant = keyof typeof PLANTS;
