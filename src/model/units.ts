import * as z from 'zod/mini';

export const LengthUnit = z.enum(['m', 'ft']);
export type LengthUnit = z.infer<typeof LengthUnit>;

/** How a loss of light is told: over the whole path, or for each metre or foot of it. */
export const LossUnit = z.enum(['dB', 'percent', 'percent/m', 'percent/ft']);
export type LossUnit = z.infer<typeof LossUnit>;

/**
 * The units that people of a site read and write in. Plans, facts and rules hold metres and, for a loss, dB or percent
 * of the whole path. Without `loss`: dB, and a threshold as its plan states it.
 */
export const Units = z.object({ length: LengthUnit, loss: z.optional(LossUnit) });
export type Units = z.infer<typeof Units>;

/** Of logs that name none. */
export const METRES: Units = { length: 'm' };

/** The international foot, exactly (NIST SP 811, 2008 edition, appendix B.6, from memory). */
export const METRES_PER_FOOT = 0.3048;
