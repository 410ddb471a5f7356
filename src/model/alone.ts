import * as z from 'zod/mini';

/**
 * How one person does the work of two: a second phone watches the meter from its place before the display; or listens to a tone
 * or looks at a lamp there, as it was taught, and no number is read; the person walks to the meter for every number; or sees
 * from the ladder what an indicator does, and no number is read.
 */
export const AloneWay = z.enum(['watching', 'sensing', 'walking', 'looking']);
export type AloneWay = z.infer<typeof AloneWay>;

/** Both seats are held by one phone, which the person carries. */
export const isOnePhone = (alone: AloneWay | undefined): boolean =>
  alone === 'walking' || alone === 'looking';

/** The panel's seat is held by a phone that stands there by itself, and tells what it sees or hears. */
export const isPropped = (alone: AloneWay | undefined): boolean =>
  alone === 'watching' || alone === 'sensing';

/** Nobody reads a number: only what the light does is said. */
export const hasNoNumbers = (alone: AloneWay | undefined): boolean =>
  alone === 'looking' || alone === 'sensing';
