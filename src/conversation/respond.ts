import { ENGINE_VERSION } from '../engine/version.ts';
import { isOnePhone } from '../model/alone.ts';
import type { Seat } from '../model/facts.ts';
import { LOG_VERSION } from '../model/written.ts';
import { CAMERA_NOTICES } from '../phrases/camera.ts';
import { cautionsOf } from '../phrases/cautions.ts';
import { sensorNotice } from '../phrases/indicator.ts';
import { EMITTER_BACK, OVERRIDDEN } from '../phrases/notices.ts';
import { setupWarnings, warningsAloud } from '../phrases/plan-warnings.ts';
import { NO_READING_TO_ACCEPT, NOT_PRACTICE, OVERRIDE_NOT_NEEDED } from '../phrases/refusals.ts';
import { UNHEARD_REPLY } from '../phrases/unheard.ts';
import { NOTHING_TO_COMPARE_SAID } from '../phrases/visits.ts';
import { isPeriodic } from '../visit/commission.ts';
import { acceptable } from '../visit/periodic.ts';
import { commissionOf, shownLast } from '../visit/search.ts';
import type { JobState } from '../visit/state.ts';
import { correctReading, takeBack } from './amend.ts';
import { Composer } from './composer.ts';
import { handOver } from './hand-over.ts';
import type { Input, Refused, Response } from './input.ts';
import { expire, instruct } from './instruct.ts';
import { closeIssue, reviewIssues } from './issue-review.ts';
import { asHeard } from './mishear.ts';
import { photo, removePhoto } from './photo.ts';
import { planChanged } from './plan-changed.ts';
import { sign } from './sign.ts';
import { keepSound, remindOfSound } from './sound.ts';
import { hearWords } from './words.ts';

/** Pure: the same state, input and time (ms, the log's clock) give the same response. */
export function respond(state: JobState, input: Input, now: number): Response {
  const job = new Composer(state, now);
  const refusal = take(job, input);
  if (refusal) return { kind: 'refused', ...refusal };
  reviewIssues(job);
  // Silence alone never restarts advice: after an expired instruction, somebody must speak first.
  const isSpoken = !UNSPOKEN.has(input.kind) && !isTurnedAway(input);
  const speaks = isSpoken || job.state.instruction !== undefined;
  const wakeAt = speaks ? instruct(job) : undefined;
  return { kind: 'facts', drafts: job.drafts, state: job.state, ...(wakeAt !== undefined && { wakeAt }) };
}

const UNSPOKEN: ReadonlySet<Input['kind']> = new Set([
  'tick',
  'plan-changed',
  'practise',
  'mounted',
  'watcher-remark',
  'camera',
  'sensor',
  'key-withdrawn',
  'brought',
  'sound',
  'forget-names',
]);

/** Somebody who is not of the crew: nothing has changed for it. */
const isTurnedAway = (input: Input): boolean => input.kind === 'admission' && input.answer === 'no';

function take(job: Composer, input: Input): Refused {
  switch (input.kind) {
    case 'open':
      job.put('panel', {
        type: 'opened',
        setup: input.setup,
        engine: ENGINE_VERSION,
        logVersion: LOG_VERSION,
      });
      return;
    case 'seated':
      return seat(job, input);
    case 'admission': {
      const { kind: _, mark, answer, ...seated } = input;
      job.put('panel', { type: 'admission', seat: seated.seat, device: seated.device, mark, answer });
      return answer === 'yes' ? seat(job, { kind: 'seated', ...seated }) : undefined;
    }
    case 'key-withdrawn':
      job.put(input.by, { type: 'key-withdrawn', role: input.role });
      return;
    case 'brought':
      job.put('server', { type: 'brought' });
      return;
    case 'person':
      return handOn(job, input);
    case 'link':
      job.put('server', { type: 'link', seat: input.seat, online: input.online });
      greet(job, input.seat);
      return;
    case 'words':
      return hearWords(job, asHeard(job, input));
    case 'practise':
      if (!job.state.setup?.practice) return { reason: 'bad-target', text: NOT_PRACTICE };
      job.put(input.seat, { type: 'practised', act: input.act });
      return;
    case 'unheard': {
      const { seat, why, sound } = input;
      const seq = job.put('server', { type: 'unheard', seat, why, ...(sound && { sound }) });
      job.ask(seq, UNHEARD_REPLY[why]);
      return;
    }
    case 'sound':
      return keepSound(job, input);
    case 'remark':
      job.put(input.seat, { type: 'remark', seat: input.seat, text: input.text });
      return;
    case 'watcher-remark':
      job.put('supervisor', { type: 'watcher-remark', by: input.by, text: input.text });
      return;
    case 'mounted':
      job.put(input.seat, { type: 'mounted', mounting: input.mounting });
      return;
    case 'camera':
      job.put(input.seat, { type: 'camera', seat: input.seat, state: input.state });
      job.notice('camera', CAMERA_NOTICES[input.state]);
      return;
    case 'sensor': {
      const { kind: type, ...about } = input;
      job.put(input.seat, { type, ...about });
      job.notice('sensor', sensorNotice(about));
      return;
    }
    case 'correct':
      return correctReading(job, input);
    case 'take-back':
      return takeBack(job, input.seat, input.target);
    case 'override':
      return override(job, input);
    case 'close-issue':
      return closeIssue(job, input);
    case 'plan-changed':
      planChanged(job, input.plan);
      return;
    case 'hand-over':
      return handOver(job, input);
    case 'photo':
      return photo(job, input);
    case 'remove-photo':
      return removePhoto(job, input);
    case 'forget-names':
      job.put('server', input.fact);
      return;
    case 'sign': {
      const { kind: _, beside = false, ...signature } = input;
      return sign(job, signature, beside);
    }
    case 'tick':
      expire(job);
      return;
  }
}

function seat(job: Composer, { kind: _, ...seated }: Extract<Input, { kind: 'seated' }>): undefined {
  const wasComplete = Boolean(job.state.seats.panel && job.state.seats.emitter);
  job.put('server', { type: 'seated', ...seated });
  // The one phone of a person alone is at both ends.
  if (seated.seat === 'panel' && isOnePhone(job.state.setup?.alone))
    job.put('server', { type: 'seated', ...seated, seat: 'emitter' });
  remindOfSound(job);
  greet(job, seated.seat);
  const isComplete = Boolean(job.state.seats.panel && job.state.seats.emitter);
  if (!isComplete || wasComplete) return;
  job.notice('cautions', cautionsOf(job.state.setup).join(' '));
  const warnings = job.state.setup ? setupWarnings(job.state.setup) : [];
  if (warnings.length > 0) job.notice('plan-warnings', warningsAloud(warnings));
  const { setup } = job.state;
  if (setup && isPeriodic({ setup }) && !setup.lastLeft)
    job.notice('nothing-to-compare', NOTHING_TO_COMPARE_SAID);
}

/** An order was held for the emitter: its phone is back, and somebody there has to say so. */
function greet(job: Composer, seat: Seat): void {
  if (seat === 'emitter' && job.state.held && job.state.seats.emitter?.online)
    job.notice('back', EMITTER_BACK);
}

function handOn(job: Composer, { seat, person }: Extract<Input, { kind: 'person' }>): undefined {
  const { device = '', phone } = job.state.seats[seat] ?? {};
  job.put(seat, {
    type: 'seated',
    seat,
    device,
    takeover: false,
    ...(person && { person }),
    ...(phone && { phone }),
    handedOn: true,
  });
}

function override(job: Composer, { seat, reason }: Extract<Input, { kind: 'override' }>): Refused {
  const reading = shownLast(job.state);
  const commission = commissionOf(job.state);
  if (!commission || !reading) return { reason: 'bad-target', text: NO_READING_TO_ACCEPT };
  const missing = acceptable(commission, job.now).missing.map(({ id }) => id);
  if (missing.length === 0) return { reason: 'bad-target', text: OVERRIDE_NOT_NEEDED };
  job.put(seat, { type: 'accept', reading, override: { reason, missing } });
  job.notice('overridden', OVERRIDDEN);
  return;
}
