import type { JobSetup } from '../model/setup.ts';
import { ALONE_CAUTIONS } from './alone.ts';

/**
 * The usual cautions, said before anyone climbs. Common practice, no source, except for the laser (IEC
 * 60825-1 class 2, from memory). The maker's instructions and local rules come first.
 */
export const CAUTIONS: readonly string[] = [
  'Isolate the alarm outputs at the panel. Tell everybody who relies on them.',
  'On the ladder, keep three points of contact. Keep your hands free: leave the phone on its lanyard.',
  'Never look into an aiming laser.',
  "The maker's instructions and local rules come first.",
];

/** Those of a job: alone, some more. */
export const cautionsOf = (setup: Pick<JobSetup, 'alone'> | undefined): readonly string[] =>
  setup?.alone === undefined ? CAUTIONS : [...CAUTIONS, ...ALONE_CAUTIONS];

/** Said aloud before the first aim by eye, where it can hurt. */
export const LASER_CAUTION = 'Never look into the laser.';

/** What the record says when somebody agrees to them. */
export const CAUTIONS_READ = 'Cautions read and understood';

/** At the end, so that nobody leaves a hall unprotected. */
export const AFTERWARDS = 'Restore the alarm outputs. Put the covers back. Check that the panel is normal.';
