import type { JobId, Seq } from './ids.ts';
import type { PairId, PairPlan } from './pair-plan.ts';

/** How serious it is: it may undo the alignment, it needs an answer, or it is only good to know. */
export const SEVERITIES = ['serious', 'question', 'note'] as const;
export type Severity = (typeof SEVERITIES)[number];

/** The most serious first; equals stay in their order. */
export const bySeverity = <T extends { readonly severity: Severity }>(found: readonly T[]): T[] =>
  SEVERITIES.flatMap((severity) => found.filter((each) => each.severity === severity));

/** Nothing was read, turned or decided for longer than this. Common practice, no source. Milliseconds. */
export const LONG_GAP_MS = 10 * 60_000;

export const FINDING_IDS = [
  'not-accepted',
  'touched-after-accept',
  'gain-after-peak',
  'not-bracketed',
  'adjuster-hindered',
  'override',
  'settle-time',
  'drift',
  'clear-path-dip',
  'unproven',
  'test-failed',
  'test-unread',
  'threshold-unknown',
  'plan-warning',
  'like-lost-beam',
  'open-issue',
  'outputs-isolated',
  'left-otherwise',
  'left-signal',
  'step-failed',
  'step-not-done',
  'restored-unready',
  'told-nobody',
  'changed-since-signed',
  'long-gap',
  'clock-back',
  'corrections',
  'photo-removed',
  'takeover',
  'unnamed',
  'same-in-both',
  'alone',
  'kept-by-phone',
] as const;
export type FindingId = (typeof FINDING_IDS)[number];

export const SITE_FINDING_IDS = [
  'weak-neighbour',
  'weaker-since',
  'signal-limit',
  'signal-falling',
  'undone',
  'plan-changed',
] as const;
export type SiteFindingId = (typeof SITE_FINDING_IDS)[number];

/** What a careful supervisor would ask about a job. Its words are in `src/phrases/findings.ts`. */
export interface Finding {
  readonly id: FindingId;
  readonly severity: Severity;
  /** The entries it rests on, oldest first. */
  readonly entries: readonly Seq[];
  /** Figures by name; times in seconds, readings in meter units. */
  readonly figures: Readonly<Record<string, number>>;
  /** Which of several it is about: an adjuster, a test, what was missing. */
  readonly about: readonly string[];
}

/** A finding that only shows when the records of a site are compared. */
export interface SiteFinding {
  readonly id: SiteFindingId;
  readonly severity: Severity;
  readonly pair: PairId;
  /** The entries it rests on, each in the log of its job. */
  readonly entries: readonly { readonly job: JobId; readonly seq: Seq }[];
  readonly figures: Readonly<Record<string, number>>;
  /** The plan that the visit was made with, and the plan now, where they differ. */
  readonly plans?: { readonly from: PairPlan; readonly to: PairPlan } | undefined;
}

/** Under a plan that was changed since, nothing is proven. */
export const isPlanChanged = (found: readonly SiteFinding[]): boolean =>
  found.some(({ id }) => id === 'plan-changed');
