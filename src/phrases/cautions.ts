/**
 * The usual cautions, said before anyone climbs. Common practice, no source, but for the laser
 * (IEC 60825-1 class 2, from memory). The maker's instructions and local rules come first.
 */
export const CAUTIONS: readonly string[] = [
  'Isolate the alarm outputs at the panel and tell whoever relies on them.',
  'On the ladder keep three points of contact, and your hands free: the phone stays on its lanyard.',
  'Never look into an aiming laser.',
  "The maker's instructions and local rules come before anything said here.",
];

/** What stands in the record for the tap that agrees to them. */
export const CAUTIONS_READ = 'Cautions read and understood';

/** At the end, so that nobody leaves a hall unprotected. */
export const AFTERWARDS = 'Restore the alarm outputs, refit the covers, and see the panel back to normal.';
