import { isSame } from '../formats/same.ts';
import type { UsedCover } from '../model/checklists.ts';
import type { SearchFact } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import type { Placed } from '../model/placed.ts';
import type { JobState } from '../visit/state.ts';

type Instruction = Placed<'instruction'>;

/**
 * The instruction that a "done" belongs to. A phone with a bad link may answer a turn that was superseded:
 * the screw was still turned, so that turn is recorded, but never twice.
 */
export function creditedInstruction(state: JobState, re: Seq | undefined): Instruction | undefined {
  const current = state.instruction;
  const open = current && state.answeredBy === undefined ? current : undefined;
  if (re === undefined || re === current?.seq) return open;
  const earlier = state.turnsAsked.find((turn) => turn.seq === re);
  if (!earlier || state.turnsMade.includes(earlier.seq)) return undefined;
  const sameTurn = open !== undefined && isSame(open.advice.action, earlier.advice.action);
  return sameTurn ? open : earlier;
}

/** What is recorded when an instruction was carried out; undefined for one that asks for no action. */
export function deedOf({ seq, advice: { action } }: Instruction, from: Seq): SearchFact | undefined {
  switch (action.kind) {
    case 'turn':
      return { type: 'move', axis: action.axis, eighths: action.eighths, instruction: seq, from };
    case 'gain':
      return { type: 'gain', change: GAIN_DONE[action.change], from };
    case 'block':
      return { type: 'path', state: 'blocked', from };
    case 'unblock':
      return { type: 'path', state: 'clear', from };
    case 're-aim':
      return { type: 're-aimed', from };
    case 'check':
      return { type: 'checked', instruction: seq, from };
    case 'cover':
      return action.how === 'full'
        ? { type: 'path', state: 'blocked', from }
        : { type: 'path', state: 'partial', cover: usedCover(action), from };
    case 'uncover':
      return { type: 'path', state: 'clear', from };
    default:
      return undefined;
  }
}

/** What an instruction to cover a part asks for, without its kind. */
export const usedCover = ({ how, filter }: UsedCover): UsedCover => ({
  how,
  ...(filter !== undefined && { filter }),
});

const GAIN_DONE = { lower: 'lowered', raise: 'raised', full: 'full' } as const;
