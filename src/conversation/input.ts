import type { AdmissionAnswer } from '../model/admission.ts';
import type { CameraState } from '../model/camera.ts';
import type { Draft } from '../model/entry.ts';
import type { FactOf, Seat } from '../model/facts.ts';
import type { HandOverFact } from '../model/hand-over.ts';
import type { Seq } from '../model/ids.ts';
import type { TypedLanguage } from '../model/language.ts';
import type { Mounting } from '../model/mounting.ts';
import type { PairPlan } from '../model/pair-plan.ts';
import type { Person } from '../model/person.ts';
import type { HandAct } from '../model/practice.ts';
import type { Refusal } from '../model/refusal.ts';
import type { Profile, SensorSort, SensorState } from '../model/sensor.ts';
import type { JobSetup } from '../model/setup.ts';
import type { KeptSound } from '../model/sound.ts';
import type { JobState } from '../visit/state.ts';
import type { Words } from './decide.ts';

/** What can happen to a job from outside. */
export type Input =
  | { kind: 'open'; setup: JobSetup }
  | ({ kind: 'seated' } & Pick<FactOf<'seated'>, 'seat' | 'device' | 'takeover' | 'person' | 'phone'>)
  /** A key to this log was taken away. */
  | { kind: 'key-withdrawn'; by: 'panel' | 'supervisor'; role: FactOf<'key-withdrawn'>['role'] }
  /** A phone that kept this log alone has given it to the server. */
  | { kind: 'brought' }
  /** The panel answers a phone that asks for a seat. */
  | ({ kind: 'admission'; mark: string; answer: AdmissionAnswer } & Pick<
      FactOf<'seated'>,
      'seat' | 'device' | 'takeover' | 'person' | 'phone'
    >)
  /** Another person is at the phone of this seat, or somebody says now who it is. */
  | { kind: 'person'; seat: Seat; person?: Person | undefined }
  | { kind: 'link'; seat: Seat; online: boolean }
  /** `re`: the instruction on the speaker's screen. */
  /** `sound`: it is kept, and stored with the entry of these words, which is the first of the response. */
  | ({ kind: 'words'; seat: Seat; re?: Seq; sound?: KeptSound } & Words)
  | { kind: 'unheard'; seat: Seat; why: FactOf<'unheard'>['why']; sound?: KeptSound }
  /** The crew wants the sound of what is said kept for so many days; 0: no longer. */
  | { kind: 'sound'; seat: Seat; days: number }
  | { kind: 'remark'; seat: Seat; text: string }
  | { kind: 'watcher-remark'; by: string; text: string }
  | { kind: 'mounted'; seat: Seat; mounting: Mounting }
  | { kind: 'correct'; seat: Seat; target: Seq; text: string; language?: TypedLanguage }
  | { kind: 'camera'; seat: Seat; state: CameraState }
  | { kind: 'sensor'; seat: Seat; sort: SensorSort; state: SensorState; taught?: Profile }
  | { kind: 'take-back'; seat: Seat; target: Seq }
  | { kind: 'override'; seat: Seat; reason: string }
  | { kind: 'close-issue'; by: Seat | 'supervisor'; issue: Seq; how: string }
  /** The desk has saved a plan of this pair. */
  | { kind: 'plan-changed'; plan: PairPlan }
  /** Hands did this at the simulated pair of a practice job. */
  | { kind: 'practise'; seat: Seat; act: HandAct }
  /** Written on a form, once the alignment is accepted. */
  | { kind: 'hand-over'; by: Seat | 'supervisor'; fact: HandOverFact }
  /** Taken, with its picture; or its picture removed. */
  | { kind: 'photo'; by: Seat | 'supervisor'; fact: FactOf<'photo'> }
  | { kind: 'remove-photo'; by: Seat | 'supervisor' | 'server'; fact: FactOf<'photo-removed'> }
  /** By the server, of names that lie beside these entries. */
  | { kind: 'forget-names'; fact: FactOf<'names-forgotten'> }
  /** By a supervisor, of the record up to `head`. `beside`: only where a signature stands already. */
  | ({ kind: 'sign'; beside?: true | undefined } & Omit<FactOf<'signed'>, 'type'>)
  /** Time has passed. */
  | { kind: 'tick' };

/**
 * The answer: facts for the log, in order, the state once they are in it, and when to `tick` next; or a named refusal. The
 * state is the fold of the facts: who folds them once more works out all that was learnt on the way once more.
 */
export type Response =
  | { kind: 'facts'; drafts: Draft[]; state: JobState; wakeAt?: number }
  | { kind: 'refused'; reason: Refusal; text: string };

/** Why nothing was done, or undefined if something was. */
export type Refused = { reason: Refusal; text: string } | undefined;
