import type { Intent } from '../grammar/intent.ts';
import type { Seq } from '../model/ids.ts';
import type { JobState } from '../visit/state.ts';
import { creditedInstruction } from './credit.ts';

/** These answer an item of a checklist: the pair is out of service, or proven, or back in service. */
const ANSWERS_ITEM: ReadonlySet<Intent['kind']> = new Set(['yes', 'no', 'done', 'told', 'path', 'panel']);

/**
 * Whether the words would end something that stands in the record as proven or settled: the acceptance, a proving test,
 * an item of a checklist. "Stop" is not among them: it must work at once, and "start" takes it back.
 */
export function wouldEnd(state: JobState, intents: readonly Intent[], re: Seq | undefined): boolean {
  const action = creditedInstruction(state, re)?.advice.action;
  return intents.some(({ kind }) => {
    if (kind === 'accept') return true;
    if (action?.kind === 'confirm-item') return ANSWERS_ITEM.has(kind);
    return action?.kind === 'watch-panel' && kind === 'panel';
  });
}
