import * as z from 'zod/mini';

/** How a phone that watches the meter came to a number: so many frames, and the belief in the least sure of them. */
export const CameraReading = z.object({
  frames: z.int().check(z.minimum(1), z.maximum(1_000)),
  belief: z.number().check(z.minimum(0), z.maximum(1)),
});
export type CameraReading = z.infer<typeof CameraReading>;

/** What such a phone says of itself. Each is said once, when it begins. */
export const CameraState = z.enum([
  'watching',
  /** The display is not where it was confirmed, or something else is before the camera. */
  'moved',
  'dark',
  /** There is light, and no number that could be taken. */
  'unreadable',
  'battery-low',
  'ended',
]);
export type CameraState = z.infer<typeof CameraState>;
