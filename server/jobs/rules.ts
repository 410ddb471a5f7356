import type { Input, Refused, Response } from '../../src/conversation/input.ts';
import { respond } from '../../src/conversation/respond.ts';
import type { JobId } from '../../src/model/ids.ts';
import type { JobState } from '../../src/visit/state.ts';

/** What the rules answer. Without the state after the drafts, it is the fold of them. */
export type Decision =
  | ({ kind: 'refused' } & NonNullable<Refused>)
  | (Omit<Extract<Response, { kind: 'facts' }>, 'state'> & { readonly state?: JobState });

/** Who works out what an input leads to. What it is does not depend on who. */
export interface Rules {
  /** `state`: of the job, after all that is stored. Rejects with `RulesFailed`, or where it may be asked again. */
  respond(job: JobId, state: JobState, input: Input, now: number): Promise<Decision>;
  /** The drafts of the last decision on this job are stored, and this is its state now. */
  stored(job: JobId, state: JobState): void;
  /** The job is put away. */
  forget(job: JobId): void;
  close(): Promise<void>;
}

/** The rules threw: asked again, they would throw again. */
export class RulesFailed extends Error {
  constructor(cause: unknown) {
    super('the rules failed', { cause });
  }
}

/** In the thread of the sockets: the least work, but everybody waits for a hard decision. */
export const RULES_HERE: Rules = {
  async respond(_, state, input, now) {
    try {
      return respond(state, input, now);
    } catch (error) {
      throw new RulesFailed(error);
    }
  },
  stored() {},
  forget() {},
  async close() {},
};
