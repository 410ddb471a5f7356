import { parentPort } from 'node:worker_threads';
import { respond } from '../../src/conversation/respond.ts';
import type { JobId } from '../../src/model/ids.ts';
import { unflat } from '../../src/visit/flat-state.ts';
import type { JobState } from '../../src/visit/state.ts';
import type { Decision } from './rules.ts';
import type { Asked, FromRules, ToRules } from './rules-messages.ts';

interface Known {
  state: JobState;
  /** After the last decision, whether or not it was stored. */
  decided?: JobState | undefined;
}

/** The rules of some jobs in a thread of their own. It remembers the jobs, so that only what is new must come. */
function serve(): void {
  const port = parentPort;
  if (!port) throw new Error('this program is a thread of the server');
  const jobs = new Map<JobId, Known>();

  const decide = ({ job, input, now, from }: Asked): Decision => {
    const before = jobs.get(job);
    const state =
      typeof from === 'object' ? unflat(from) : from === 'decided' ? before?.decided : before?.state;
    if (!state) throw new Error(`the state of the job ${job} is not known here`);
    const known: Known = { state };
    jobs.set(job, known);
    const response = respond(state, input, now);
    if (response.kind === 'refused') return response;
    const { state: decided, ...decision } = response;
    known.decided = decided;
    return decision;
  };
  port.on('message', ({ asks, forget }: ToRules) => {
    for (const job of forget) jobs.delete(job);
    for (const asked of asks) {
      const { id } = asked;
      let answer: FromRules;
      try {
        answer = { id, decision: decide(asked) };
      } catch (error) {
        answer = { id, failed: error instanceof Error ? (error.stack ?? error.message) : String(error) };
      }
      port.postMessage(answer);
    }
  });
}

serve();
