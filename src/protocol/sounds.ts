import * as z from 'zod/mini';
import { JobId, Seq } from '../model/ids.ts';

/**
 * GET /api/sound and /api/site/sound, answered with the sound. `seq`: the entry of the words. `job` is given with the token of a
 * site only: another token has its own job.
 */
export const WantSound = z.strictObject({ job: z.optional(JobId), seq: z.pipe(z.coerce.number(), Seq) });
