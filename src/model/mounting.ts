import * as z from 'zod/mini';
import type { Axis } from './turns.ts';

/** How the emitter hangs, as seen by the person facing it: where its top points. On its side, that is left or right. */
export const Mounting = z.enum(['upright', 'top-left', 'top-right', 'upside-down']);
export type Mounting = z.infer<typeof Mounting>;

/** The line along which an adjuster moves the beam, as seen by the person facing the unit. */
export type Along = 'left-right' | 'up-down';

export const isOnItsSide = (mounting: Mounting): boolean =>
  mounting === 'top-left' || mounting === 'top-right';

/**
 * Where the adjuster that is called `axis` on an upright unit moves the beam of one that hangs like this. Which end of
 * that line a clockwise turn leads to is not known of any unit; clockwise stays clockwise, for the screw is faced.
 */
export const movesAlong = (mounting: Mounting, axis: Axis): Along =>
  (axis === 'horizontal') === isOnItsSide(mounting) ? 'up-down' : 'left-right';
