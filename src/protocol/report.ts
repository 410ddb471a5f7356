import * as z from 'zod/mini';
import { MAX_PAIRS, PairId } from '../model/pair-plan.ts';
import { NO_SUCH_ZONE } from '../phrases/refusals.ts';

/** An IANA time zone that this program knows, for the times of a report. */
export const TimeZone = z.string().check(z.maxLength(60), z.refine(isKnown, { message: NO_SUCH_ZONE }));

function isKnown(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en-GB', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}

/** POST /api/site/report. Without `pairs`: all of them. */
export const WantReport = z.object({
  pairs: z.optional(z.array(PairId).check(z.minLength(1), z.maxLength(MAX_PAIRS))),
  zone: z._default(TimeZone, 'UTC'),
});
export const ReportId = z.string().check(z.regex(/^[A-Za-z0-9_-]{8,32}$/));
/** `total`: pairs to print. */
export const ReportBegun = z.object({ report: ReportId, total: z.int() });
export type ReportBegun = z.infer<typeof ReportBegun>;

/** GET /api/site/report?id=REPORT */
export const ReportProgress = z.object({
  done: z.int(),
  total: z.int(),
  ready: z.boolean(),
});
export type ReportProgress = z.infer<typeof ReportProgress>;
