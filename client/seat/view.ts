import type { Entry } from '../../src/model/entry.ts';
import type { Seq } from '../../src/model/ids.ts';
import type { Placed } from '../../src/model/placed.ts';
import { EMPTY, fold, type JobState } from '../../src/visit/state.ts';
import { type Link, serverNow } from '../link/link.ts';

/** Folds entries as they come, each one once. */
export class JobFold {
  state: JobState = EMPTY;

  upTo(entries: readonly Entry[]): JobState {
    for (const entry of entries.slice(this.state.count)) this.state = fold(this.state, entry);
    return this.state;
  }
}

/** What is on the screen of a person who may be on a ladder. */
export type OrderOnScreen =
  /** It is valid now: shown large, to be carried out. */
  | { kind: 'current'; instruction: Placed<'instruction'> }
  /** It was the last instruction. Whether it is still valid is not known. */
  | { kind: 'unsure'; instruction: Placed<'instruction'> | undefined }
  /** There is no instruction now. */
  | { kind: 'none' };

/** An instruction is current only on a live link and before its end, by the server's clock. */
export function order(link: Link, job: JobState, now: number): OrderOnScreen {
  const { instruction } = job;
  if (link.phase !== 'live') return { kind: 'unsure', instruction };
  if (!instruction || instruction.expiresAt <= serverNow(link, now)) return { kind: 'none' };
  return { kind: 'current', instruction };
}

/** The instruction that "done" would answer now. */
export const onScreen = (order: OrderOnScreen): Seq | undefined =>
  order.kind === 'none' ? undefined : order.instruction?.seq;
