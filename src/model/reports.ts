import * as z from 'zod/mini';

/** "wandering": up and down without a trend, so that no single value is right. */
export const Trend = z.enum(['rising', 'falling', 'steady', 'wandering']);
export type Trend = z.infer<typeof Trend>;

export const PathState = z.enum(['blocked', 'partial', 'clear']);
export type PathState = z.infer<typeof PathState>;

export const PanelIndication = z.enum(['alarm', 'fault', 'normal']);
export type PanelIndication = z.infer<typeof PanelIndication>;

export const DisturbedWhy = z.enum(['knocked', 'uncounted-turn']);
export type DisturbedWhy = z.infer<typeof DisturbedWhy>;

export const CannotWhy = z.enum(['stuck', 'end-of-travel', 'out-of-reach', 'unsaid']);
export type CannotWhy = z.infer<typeof CannotWhy>;
