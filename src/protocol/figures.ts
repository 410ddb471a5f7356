import * as z from 'zod/mini';
import { FINDING_IDS, SEVERITIES, SITE_FINDING_IDS } from '../model/finding.ts';
import { JobId } from '../model/ids.ts';
import { PairId } from '../model/pair-plan.ts';

const Many = z.int().check(z.nonnegative());

/** A pair that is named in the figures. `site`: as it is called. */
const Named = z.object({ site: z.string(), log: JobId, pair: PairId });

/** GET /api/figures: over all sites of the firm. They are derived: each log outranks them. Times: ms. */
export const Figures = z.object({
  sites: Many,
  /** That belong to a site now. */
  pairs: Many,
  /** Whose log has grown since they were counted, and nobody works on them now. */
  behind: Many,
  /** Whose log fails its check: they are in no other figure. */
  damaged: Many,
  drifting: z.object({
    pairs: Many,
    /** That have more than one visit to compare. */
    compared: Many,
    /** Those that have lost most, dB, at most twenty. */
    most: z.array(z.extend(Named, { lost: z.optional(z.number()) })),
  }),
  /** On the ladder, all visits of a pair together: half of the pairs took no longer than `half`, nine of ten than `most`. */
  ladder: z.object({ pairs: Many, half: z.optional(Many), most: z.optional(Many) }),
  /** In how many pairs, at the latest visit. */
  findings: z.array(
    z.object({
      id: z.enum([...FINDING_IDS, ...SITE_FINDING_IDS]),
      severity: z.enum(SEVERITIES),
      pairs: Many,
    }),
  ),
  due: z.object({
    over: Many,
    /** Within thirty days. */
    soon: Many,
    later: Many,
    /** Where nobody wrote down when. */
    none: Many,
    /** Those that are due first, at most twenty. */
    next: z.array(z.extend(Named, { due: z.number() })),
  }),
});
export type Figures = z.infer<typeof Figures>;

/** "Soon" in the figures of what is due. */
export const SOON_MS = 30 * 24 * 3600_000;
/** Pairs that are named of each kind. */
export const MOST_NAMED = 20;
