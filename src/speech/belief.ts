import type { Weighed } from './weigh.ts';

/**
 * Probability that the likeliest meaning is what was said, from how far it leads, how much better free letters fit
 * the sound, and how long it is. A logistic curve fitted by `npm run bench:speech -- --fit`.
 */
const FIT = { constant: 3, lead: 0.5, strain: -0.6 };
/** Beyond this a lead says nothing more. */
const MOST_LEAD = 8;

export function belief({ share, strain }: Weighed): number {
  const lead = Math.min(MOST_LEAD, Math.log(share / Math.max(1e-9, 1 - share)));
  const logit = FIT.constant + FIT.lead * lead + FIT.strain * strain;
  return 1 / (1 + Math.exp(-logit));
}
