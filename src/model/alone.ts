import * as z from 'zod/mini';

/**
 * How one person does the work of two: a second phone watches the meter from its place before the display, or the person
 * walks to the meter for every number.
 */
export const AloneWay = z.enum(['watching', 'walking']);
export type AloneWay = z.infer<typeof AloneWay>;

/** Both seats are held by one phone, which the person carries. */
export const isOnePhone = (alone: AloneWay | undefined): boolean => alone === 'walking';
