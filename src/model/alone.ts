import * as z from 'zod/mini';

/**
 * How one person does the work of two: a second phone watches the meter from its place before the display; the person
 * walks to the meter for every number; or sees from the ladder what an indicator does, and no number is read.
 */
export const AloneWay = z.enum(['watching', 'walking', 'looking']);
export type AloneWay = z.infer<typeof AloneWay>;

/** Both seats are held by one phone, which the person carries. */
export const isOnePhone = (alone: AloneWay | undefined): boolean =>
  alone === 'walking' || alone === 'looking';

/** Nobody reads a number: only what the light does is said. */
export const hasNoNumbers = (alone: AloneWay | undefined): boolean => alone === 'looking';
