import * as z from 'zod/mini';

/** The two adjusters of an emitter. */
export const Axis = z.enum(['horizontal', 'vertical']);
export type Axis = z.infer<typeof Axis>;

export const AXES = Axis.options;

export const otherAxis = (axis: Axis): Axis => (axis === 'horizontal' ? 'vertical' : 'horizontal');

/**
 * A turn of an adjuster, or its position, in eighths of a full turn: the smallest step a hand can do
 * reliably. Integers, so that turning back always ends exactly at the start. Positive is clockwise as seen by
 * the person facing the screw.
 */
export const Eighths = z.int();
export type Eighths = z.infer<typeof Eighths>;

/** What is known of a turn that somebody reported, while the crew is asked for the rest. `eighths`: how far, positive. */
export const TurnSoFar = z.object({
  axis: z.optional(Axis),
  eighths: z.optional(z.int().check(z.positive())),
  way: z.optional(z.enum(['clockwise', 'anticlockwise'])),
});
export type TurnSoFar = z.infer<typeof TurnSoFar>;

export const EIGHTHS_PER_TURN = 8;
export const EIGHTH = 1;
export const QUARTER = 2;

export const toTurns = (eighths: Eighths): number => eighths / EIGHTHS_PER_TURN;
