import * as z from 'zod/mini';
import { Stamping } from '../log/time-stamp.ts';
import { Signature } from '../model/facts.ts';
import { FINDING_IDS, SEVERITIES, SITE_FINDING_IDS } from '../model/finding.ts';
import { Guidance, invertedGuidance } from '../model/guidance.ts';
import { HandOverFact } from '../model/hand-over.ts';
import { Hash, Head, JobId, MessageId, Seq } from '../model/ids.ts';
import { Name } from '../model/name.ts';
import { idKey, invertedIn, MAX_PAIRS, PairId, PairPlan } from '../model/pair-plan.ts';
import { PairStatus } from '../model/pair-status.ts';
import { Person } from '../model/person.ts';
import { MeterProfile } from '../model/profile.ts';
import type { Scope } from '../model/setup.ts';
import { SiteSteps } from '../model/steps.ts';
import { Units } from '../model/units.ts';
import { currentAdjusters, currentPlan, WrittenAdjusters, WrittenPlan } from '../model/written.ts';
import { DECLARATION } from '../phrases/declaration.ts';
import { sameIdText } from '../phrases/refusals.ts';
import { Sitter, Token } from './access.ts';
import { noneInverted } from './incoming.ts';

/**
 * A site over HTTP; docs/protocol.md numbers the rules. Every request but the first carries one of the site's
 * two tokens as `Authorization: Bearer`.
 */

/** The desk plans, begins visits and signs; a watcher only reads. */
export const SiteRole = z.enum(['desk', 'watcher']);
export type SiteRole = z.infer<typeof SiteRole>;

const reason = z.string().check(z.trim(), z.minLength(3), z.maxLength(500));

/** POST /api/sites */
export const OpenSite = z.object({
  site: Name,
  code: z.optional(Guidance.check(z.superRefine(noneInverted(invertedGuidance)))),
  units: z.optional(Units),
});
export const SiteOpened = z.object({ log: JobId, desk: Token, watch: Token });
export type SiteOpened = z.infer<typeof SiteOpened>;

/** POST /api/site/pairs: all of them or none. A pair with a known id gets the new plan. */
export const PlanPairs = z.object({
  id: MessageId,
  pairs: z
    .array(z.pipe(WrittenPlan.check(z.superRefine(noneInverted(invertedIn))), z.transform(currentPlan)))
    .check(
      z.minLength(1),
      z.maxLength(MAX_PAIRS),
      z.superRefine((pairs, ctx) => {
        const [one, other] = alike(pairs.map(({ id }) => id)) ?? [];
        if (one !== undefined && other !== undefined) {
          ctx.issues.push({ code: 'custom', input: pairs, message: sameIdText(one, other) });
        }
      }),
    ),
});

/** The first two ids that are equal but for their case. */
function alike(ids: readonly PairId[]): [PairId, PairId] | undefined {
  const seen = new Map<string, PairId>();
  for (const id of ids) {
    const earlier = seen.get(idKey(id));
    if (earlier !== undefined) return [earlier, id];
    seen.set(idKey(id), id);
  }
  return undefined;
}

/** POST /api/site/units */
export const ChooseUnits = z.object({ id: MessageId, units: Units });

/** POST /api/site/steps */
export const DefineSteps = z.object({ id: MessageId, steps: SiteSteps });

/** POST /api/site/drop */
export const DropPair = z.object({ id: MessageId, pair: PairId, reason });

/**
 * POST /api/site/jobs, answered with `JobOpened`. The profiles are used where the pair's plan has none;
 * without any meter no visit can begin.
 */
export const BeginVisit = z.object({
  id: MessageId,
  pair: PairId,
  ...Sitter.shape,
  /** Without it: a commissioning. */
  scope: z.optional(z.enum(['commissioning', 'periodic'] satisfies Scope[])),
  meter: z.optional(MeterProfile),
  adjusters: z.optional(z.pipe(WrittenAdjusters, z.transform(currentAdjusters))),
});

/** How far the signer has read a log. */
export const ReadTo = z.omit(Head, { job: true });

/** POST /api/site/sign */
export const SignRecord = z.object({
  id: MessageId,
  job: JobId,
  ...Person.shape,
  role: Name,
  signature: Signature,
  head: ReadTo,
  /** Where accounts are needed: the name was typed, of somebody without one, who signs beside another. */
  beside: z.optional(z.literal(true)),
  /** The words that stand above the signature. */
  declaration: z.optional(z.literal(DECLARATION)),
  /** The findings of the site about this pair that the signer was shown. */
  ofSite: z.optional(z.array(z.enum(SITE_FINDING_IDS))),
});

/** POST /api/site/close-issue. `issue`: the entry that opened it. */
export const CloseIssue = z.object({ id: MessageId, job: JobId, issue: Seq, how: reason });

/** POST /api/site/hand-over */
export const WriteHandOver = z.object({ id: MessageId, job: JobId, fact: HandOverFact });

/** The request is in the log for good. `seq`: its first entry. */
export const Logged = z.object({ seq: Seq });
export type Logged = z.infer<typeof Logged>;

/** A pair on the site's board: its plan, and the status of its latest visit. */
export const PairRow = z.object({
  plan: PairPlan,
  /** Taken out of the site. */
  dropped: z.optional(z.object({ at: z.number(), reason: z.string() })),
  /** Oldest first. `status`: of that visit alone; missing while its log is being read. */
  visits: z.array(z.object({ job: JobId, at: z.number(), status: z.optional(PairStatus) })),
  /** Missing while the log of any of its visits is still being read: then the rest is incomplete too. */
  status: z.optional(PairStatus),
  /** Whose phones are connected now. */
  online: z.object({ panel: z.boolean(), emitter: z.boolean() }),
  /** What is next, in a few words. */
  next: z.string(),
  /** The final reading of the visit, in meter units: after the tests, or else at acceptance. */
  final: z.optional(z.string()),
  /** How many findings the latest visit has, and the site has on this pair. */
  findings: z.object({
    serious: z.int(),
    question: z.int(),
    note: z.int(),
  }),
  /** Where the latest visit's log ends: all of this comes from the log up to there. */
  head: z.optional(z.object({ count: z.int(), hash: Hash })),
  /** The signal that each visit left, where two or more did, oldest first, on the meter of the latest. */
  signals: z.optional(
    z.object({
      meter: MeterProfile,
      points: z.array(
        z.object({
          job: JobId,
          seq: Seq,
          at: z.number(),
          value: z.number(),
          gain: z.optional(z.union([z.number(), z.literal('full')])),
          /** The same for the same setting of the gain, named or not. */
          setting: z.string(),
          /** Light lost since the first, signal and gain together, dB. */
          lost: z.optional(z.number()),
        }),
      ),
    }),
  ),
  /** The valid signature of the latest visit. */
  signed: z.optional(z.object({ name: Name, role: Name, at: z.number() })),
});
export type PairRow = z.infer<typeof PairRow>;

/** What was found in the log of a visit, or in the site's own. */
export const Damage = z.object({
  /** Missing where it is the site's own log. */
  pair: z.optional(PairId),
  job: JobId,
  /** The first entry that is not as it was. */
  seq: Seq,
  text: z.string(),
});
export type Damage = z.infer<typeof Damage>;

/** GET /api/site. `head`: of the site's own log. */
export const SiteView = z.object({
  head: Head,
  site: Name,
  code: z.optional(Guidance),
  units: z.optional(Units),
  steps: z.optional(SiteSteps),
  role: SiteRole,
  /** Logs that fail their check, and what to do. To be shown before anything else. */
  damage: z.optional(z.object({ toDo: z.string(), found: z.array(Damage).check(z.minLength(1)) })),
  /** Missing where the server asks nobody for time stamps. */
  stamping: z.optional(Stamping),
  /** In the order they were first planned, including dropped pairs. */
  pairs: z.array(PairRow),
});
export type SiteView = z.infer<typeof SiteView>;

const figures = z.record(z.string(), z.number());
const severity = z.enum(SEVERITIES);

/** As `Finding` of src/model/finding.ts. */
export const JobFinding = z.object({
  id: z.enum(FINDING_IDS),
  severity,
  entries: z.array(Seq),
  figures,
  about: z.array(z.string()),
});

/** As `SiteFinding` of src/findings/across-visits.ts. */
export const FindingOfSite = z.object({
  id: z.enum(SITE_FINDING_IDS),
  severity,
  pair: PairId,
  entries: z.array(z.object({ job: JobId, seq: Seq })),
  figures,
  plans: z.optional(z.object({ from: PairPlan, to: PairPlan })),
});

/** GET /api/site/findings: of every visit to the present pairs of the site, and of the site. */
export const SiteFindings = z.object({
  perPair: z.array(z.object({ pair: PairId, job: JobId, findings: z.array(JobFinding) })),
  site: z.array(FindingOfSite),
});
export type SiteFindings = z.infer<typeof SiteFindings>;
