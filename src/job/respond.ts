import type { Seq } from '../advice.ts';
import { type Missing, missingForAccept } from '../engine/accept.ts';
import { ENGINE_VERSION } from '../engine/version.ts';
import type { FactOf, JobSetup, Seat } from '../facts.ts';
import type { Draft } from '../log/entry.ts';
import { CAUTIONS } from '../phrases/cautions.ts';
import type { Refusal } from '../protocol.ts';
import { correctReading, takeBack } from './amend.ts';
import { Composer } from './composer.ts';
import type { Words } from './hearing.ts';
import { expire, instruct } from './instruct.ts';
import { closeIssue, reviewIssues } from './issues.ts';
import { sign } from './sign.ts';
import type { JobState } from './state.ts';
import { hearWords } from './words.ts';

/** What can happen to a job from outside. */
export type Input =
  | { kind: 'open'; setup: JobSetup }
  | { kind: 'seated'; seat: Seat; device: string; takeover: boolean }
  | { kind: 'link'; seat: Seat; online: boolean }
  /** `re`: the instruction on the speaker's screen. */
  | ({ kind: 'words'; seat: Seat; re?: Seq } & Words)
  | { kind: 'unheard'; seat: Seat; why: FactOf<'unheard'>['why'] }
  | { kind: 'remark'; seat: Seat; text: string }
  | { kind: 'correct'; seat: Seat; target: Seq; text: string }
  | { kind: 'take-back'; seat: Seat; target: Seq }
  | { kind: 'override'; seat: Seat; reason: string }
  | { kind: 'close-issue'; by: Seat | 'supervisor'; issue: Seq; how: string }
  /** By a supervisor, of the record up to `head`. */
  | ({ kind: 'sign' } & Omit<FactOf<'signed'>, 'type'>)
  /** Time has passed. */
  | { kind: 'tick' };

/** What it leads to: facts for the log, in order, and when to `tick` next; or a named refusal. */
export type Response =
  | { kind: 'facts'; drafts: Draft[]; wakeAt?: number }
  | { kind: 'refused'; reason: Refusal; text: string };

/** Pure: the same state, input and time (ms, the log's clock) give the same response. */
export function respond(state: JobState, input: Input, now: number): Response {
  const job = new Composer(state, now);
  const refusal = take(job, input);
  if (refusal) return { kind: 'refused', ...refusal };
  reviewIssues(job);
  // Silence alone never starts advice again: an instruction that lapsed waits for somebody to speak.
  const speaks = input.kind !== 'tick' || job.state.instruction !== undefined;
  const wakeAt = speaks ? instruct(job) : undefined;
  return { kind: 'facts', drafts: job.drafts, ...(wakeAt !== undefined && { wakeAt }) };
}

export type Refused = { reason: Refusal; text: string } | undefined;

function take(job: Composer, input: Input): Refused {
  switch (input.kind) {
    case 'open':
      job.put('panel', { type: 'opened', setup: input.setup, engine: ENGINE_VERSION, logVersion: 1 });
      return;
    case 'seated':
      return seat(job, input);
    case 'link':
      job.put('server', { type: 'link', seat: input.seat, online: input.online });
      return;
    case 'words':
      return hearWords(job, input);
    case 'unheard': {
      const seq = job.put('server', { type: 'unheard', seat: input.seat, why: input.why });
      job.put('engine', { type: 'query', of: seq, text: UNHEARD[input.why] });
      return;
    }
    case 'remark':
      job.put(input.seat, { type: 'remark', seat: input.seat, text: input.text });
      return;
    case 'correct':
      return correctReading(job, input);
    case 'take-back':
      return takeBack(job, input.seat, input.target);
    case 'override':
      return override(job, input);
    case 'close-issue':
      return closeIssue(job, input);
    case 'sign': {
      const { kind: _, ...signature } = input;
      return sign(job, signature);
    }
    case 'tick':
      expire(job);
      return;
  }
}

const UNHEARD: Record<FactOf<'unheard'>['why'], string> = {
  silence: 'I heard nothing. Hold the button while you speak.',
  unavailable: 'Speech is not available. Please type it.',
  timeout: 'Speech took too long. Please say it again, or type it.',
  failed: 'Speech failed. Please say it again, or type it.',
  'cut-short': 'That was cut short. Please say it again.',
};

function seat(job: Composer, { seat, device, takeover }: Extract<Input, { kind: 'seated' }>): undefined {
  const wasComplete = Boolean(job.state.seats.panel && job.state.seats.emitter);
  job.put('server', { type: 'seated', seat, device, takeover });
  const isComplete = Boolean(job.state.seats.panel && job.state.seats.emitter);
  if (isComplete && !wasComplete) job.notice('cautions', CAUTIONS.join(' '));
}

function override(job: Composer, { seat, reason }: Extract<Input, { kind: 'override' }>): Refused {
  const { search, reading } = job.state;
  if (!search || !reading) return { reason: 'bad-target', text: 'There is no reading to accept yet.' };
  const missing = missingForAccept(search, job.now).map((item: Missing) => item.id);
  if (missing.length === 0) {
    return { reason: 'bad-target', text: 'Nothing is missing. Say "accept": no override is needed.' };
  }
  job.put(seat, { type: 'accept', reading: reading.reading, override: { reason, missing } });
  job.notice('overridden', 'Accepted by override. The reason stays in the record.');
  return;
}
