import { z } from 'zod';

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
export const Eighths = z.number().int();
export type Eighths = z.infer<typeof Eighths>;

export const EIGHTHS_PER_TURN = 8;
export const EIGHTH = 1;
export const QUARTER = 2;

export const toTurns = (eighths: Eighths): number => eighths / EIGHTHS_PER_TURN;
