import type { Seq } from '../advice.ts';
import type { Acceptance } from '../engine/search.ts';
import type { JobSetup } from '../facts.ts';
import type { Entry } from '../log/entry.ts';
import type { JobId } from '../log/ids.ts';
import type { PairId } from '../site/pair-plan.ts';
import type { Severity, SiteFindingId } from './finding.ts';
import { type Story, storyOf } from './story.ts';
import { undone } from './undone.ts';
import { weakNeighbour } from './weak-neighbour.ts';

/** What a visit came to, as far as other visits are held against it. Every `Story` tells it. */
export interface VisitOutcome {
  readonly job: JobId;
  readonly accepted: Pick<Acceptance, 'seq' | 'reading'> | undefined;
  /** Of what the crew reported, only the touches count here. */
  readonly commission: {
    readonly setup: Pick<JobSetup, 'meter'>;
    readonly counted: readonly { readonly type: string; readonly seq: Seq }[];
  };
}

/** A pair of the site with the outcome of every visit, oldest first. */
export interface PairOutcome {
  readonly pair: PairId;
  readonly pathLength: number | undefined;
  readonly visits: readonly VisitOutcome[];
}

/** The same with the whole story of every visit. */
export interface PairStory extends PairOutcome {
  readonly visits: readonly (Story & { readonly job: JobId })[];
}

/** What only shows when the records of a site are held against each other. */
export interface SiteFinding {
  readonly id: SiteFindingId;
  readonly severity: Severity;
  readonly pair: PairId;
  /** The entries it rests on, each in the log of its job. */
  readonly entries: readonly { readonly job: JobId; readonly seq: Seq }[];
  readonly figures: Readonly<Record<string, number>>;
}

/** The visits to one pair, each with its log; logs that open no job are left out. */
export function pairStory(
  pair: PairId,
  pathLength: number | undefined,
  logs: readonly { readonly job: JobId; readonly entries: readonly Entry[] }[],
): PairStory {
  const visits = logs.flatMap(({ job, entries }) => {
    const story = storyOf(entries);
    return story ? [{ ...story, job }] : [];
  });
  return { pair, pathLength: pathLength ?? visits.at(-1)?.commission.setup.pathLength, visits };
}

export const reviewSite = (pairs: readonly PairOutcome[]): SiteFinding[] => [
  ...weakNeighbour(pairs),
  ...undone(pairs),
];
