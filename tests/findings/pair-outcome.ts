import type { PairOutcome } from '../../src/findings/outcome.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { PairId } from '../../src/model/pair-plan.ts';
import { type Story, storyOf } from '../../src/visit/visit.ts';

/** A pair's outcome with the whole story of every visit. */
export interface PairStory extends PairOutcome {
  readonly visits: readonly (Story & { readonly job: JobId })[];
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
