import type { HandOverFact } from '../model/hand-over.ts';
import {
  NO_SUCH_STEP,
  NOT_YET_HANDED_OVER,
  NOTHING_TO_STRIKE,
  NOTHING_WRITTEN,
} from '../phrases/refusals.ts';
import { canStrikeOut } from '../visit/hand-over.ts';
import type { Composer } from './composer.ts';
import type { Input, Refused } from './input.ts';

/** Puts down how the pair is handed over: about an accepted pair only, so that it is not about one still turned. */
export function handOver(job: Composer, { by, fact }: Extract<Input, { kind: 'hand-over' }>): Refused {
  if (!job.state.accepted) return { reason: 'bad-target', text: NOT_YET_HANDED_OVER };
  if (fact.type === 'step' && !job.state.setup?.steps?.some(({ cause }) => cause === fact.cause)) {
    return { reason: 'bad-target', text: NO_SUCH_STEP };
  }
  if (fact.type === 'struck-out' && !canStrikeOut(job.state.handOver, fact)) {
    return { reason: 'bad-target', text: NOTHING_TO_STRIKE };
  }
  if (isEmpty(fact)) return { reason: 'bad-message', text: NOTHING_WRITTEN };
  job.put(by, fact);
  return;
}

function isEmpty(fact: HandOverFact): boolean {
  if (fact.type === 'as-left') return Object.values(fact.values).every((value) => value === undefined);
  if (fact.type !== 'conditions') return false;
  return !fact.sun && !fact.weather && !fact.building?.length;
}
