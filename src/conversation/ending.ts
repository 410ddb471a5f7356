import type { Intent } from '../grammar/intent.ts';
import type { Seq } from '../model/ids.ts';
import type { JobState } from '../visit/state.ts';
import { creditedInstruction } from './credit.ts';

type Kinds = ReadonlySet<Intent['kind']>;

/** The acceptance, who was told, what the panel shows in a test: whatever was asked, it stands in the record as settled. */
const SETTLES: Kinds = new Set(['accept', 'told', 'panel']);
/** These answer an item of a checklist: the pair is out of service, or proven, or back in service. */
const ANSWERS_ITEM: Kinds = new Set(['yes', 'no', 'done', 'path']);
/** These take back a "stop" or a "wait". */
const GOES_ON: Kinds = new Set(['resume', 'start']);

/**
 * Whether the words would end something: what stands in the record as proven or settled, or a "stop" or "wait" under which
 * somebody on a ladder feels safe. "Stop" itself is not among them: it must work at once, and "start" takes it back.
 */
export function wouldEnd(state: JobState, intents: readonly Intent[], re: Seq | undefined): boolean {
  const isItem = creditedInstruction(state, re)?.advice.action.kind === 'confirm-item';
  const waits = state.stopped || state.paused;
  return intents.some(
    ({ kind }) =>
      SETTLES.has(kind) ||
      (isItem && ANSWERS_ITEM.has(kind)) ||
      (waits && GOES_ON.has(kind)) ||
      // An order that waits for the emitter.
      (state.held && kind === 'yes'),
  );
}
