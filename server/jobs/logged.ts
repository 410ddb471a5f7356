import type { Logged } from '../../src/protocol/site.ts';
import type { Answer } from '../http/http.ts';
import type { Outcome } from './room.ts';

/** What a job answers to a request that uses up no code. */
export function logged(outcome: Outcome): Answer<Logged> {
  switch (outcome.kind) {
    case 'taken':
      return { kind: 'ok', value: { seq: outcome.seq } };
    case 'refused':
      return outcome;
    case 'spent':
      throw new Error('no code was used');
  }
}
