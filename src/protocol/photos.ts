import * as z from 'zod/mini';
import { JobId, MessageId, Seq } from '../model/ids.ts';
import { Caption, PhotoShows, photoFacts } from '../model/photo.ts';

/**
 * Photos over HTTP; docs/protocol.md numbers the rules. The picture is the body, a JPEG; what is said of it is in the query.
 * `job` is given with the token of a site's desk only: a seat's token has its own job.
 */

/** POST /api/photo and /api/site/photo, answered with `Logged` */
export const TakePhoto = z.strictObject({
  id: MessageId,
  job: z.optional(JobId),
  shows: PhotoShows,
  caption: z.optional(Caption),
});

/** GET /api/photo and /api/site/photo, answered with the picture. `seq`: its entry. */
export const WantPhoto = z.strictObject({ job: z.optional(JobId), seq: z.pipe(z.coerce.number(), Seq) });

const { photo, why } = photoFacts[1].shape;

/** POST /api/photo/remove and /api/site/photo/remove, answered with `Logged` */
export const RemovePhoto = z.object({ id: MessageId, job: z.optional(JobId), photo, why });
