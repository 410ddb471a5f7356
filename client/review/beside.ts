import type { JobState } from '../../src/visit/state.ts';

/** Photos or sound may be kept beside a log. `soundDays` is there from the first time on that sound was kept, or was not any more. */
export const hasBeside = ({ photos, soundDays }: Pick<JobState, 'photos' | 'soundDays'>): boolean =>
  photos.length > 0 || soundDays !== undefined;
