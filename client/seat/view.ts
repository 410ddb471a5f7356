import type { Entry } from '../../src/model/entry.ts';
import type { Seq } from '../../src/model/ids.ts';
import type { Placed } from '../../src/model/placed.ts';
import { EMPTY, fold, type JobState } from '../../src/visit/state.ts';
import { type Link, serverNow } from '../link/link.ts';

/** Folds entries as they come, each once. */
export class JobFold {
  state: JobState = EMPTY;

  upTo(entries: readonly Entry[]): JobState {
    for (const entry of entries.slice(this.state.count)) this.state = fold(this.state, entry);
    return this.state;
  }
}

/** What stands on the screen of someone who may be on a ladder. */
export type OrderOnScreen =
  /** It holds now: to be shown large, and acted on. */
  | { kind: 'current'; instruction: Placed<'instruction'> }
  /** It was the last thing asked; whether it still holds is not known. */
  | { kind: 'unsure'; instruction: Placed<'instruction'> | undefined }
  /** Nothing is asked now. */
  | { kind: 'none' };

/** An instruction is current only on a live link and before its end, by the server's clock. */
export function order(link: Link, job: JobState, now: number): OrderOnScreen {
  const { instruction } = job;
  if (link.phase !== 'live') return { kind: 'unsure', instruction };
  if (!instruction || instruction.expiresAt <= serverNow(link, now)) return { kind: 'none' };
  return { kind: 'current', instruction };
}

/** What a "done" pressed now would be said of. */
export const onScreen = (order: OrderOnScreen): Seq | undefined =>
  order.kind === 'none' ? undefined : order.instruction?.seq;
