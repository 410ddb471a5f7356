import type { JobSetup } from '../model/setup.ts';

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

/** Read beside the other cautions. Common practice, no source. */
export const ALONE_CAUTIONS: readonly string[] = [
  'Alone: tell somebody where you work, and when they will hear from you.',
  'Nobody holds the ladder: tie it or foot it. Close the ground below it.',
];

/** Read too where eyes alone tell what the light does. Common practice, no source. */
export const LOOKING_CAUTIONS: readonly string[] = [
  'Look at the indicator only when you stand still and hold on. Never look into the emitter or a laser.',
];

/** Those of a job: alone, some more. */
export const cautionsOf = (setup: Pick<JobSetup, 'alone'> | undefined): readonly string[] =>
  setup?.alone === undefined
    ? CAUTIONS
    : [...CAUTIONS, ...ALONE_CAUTIONS, ...(setup.alone === 'looking' ? LOOKING_CAUTIONS : [])];

/** Beside them, where it is so. */
export const KEEP_AWAKE = 'This browser cannot keep the screen on: set it in the phone so that it stays on.';

/** Said aloud before the first aim by eye, where it can hurt. */
export const LASER_CAUTION = 'Never look into the laser.';

/** What the record says when somebody agrees to them. */
export const CAUTIONS_READ = 'Cautions read and understood';

/** At the end, so that nobody leaves a hall unprotected. */
export const AFTERWARDS = 'Restore the alarm outputs. Put the covers back. Check that the panel is normal.';

/** While the phone refuses what its browser could do. */
export const SCREEN_SLEEPS = 'The phone lets its screen go dark: charge it, or end its power saving.';
