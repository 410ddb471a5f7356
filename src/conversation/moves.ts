import type { Intent } from '../grammar/intent.ts';
import type { Seq } from '../model/ids.ts';
import { isOnItsSide } from '../model/mounting.ts';
import type { Axis, Eighths } from '../model/turns.ts';
import { howFar, WHICH_ADJUSTER, whichWay } from '../phrases/questions.ts';
import { countedOf, type JobState } from '../visit/state.ts';
import { creditedInstruction } from './credit.ts';

type Moved = Extract<Intent, { kind: 'moved' }>;

export type MoveOrQuestion =
  | { kind: 'move'; move: { axis: Axis; eighths: Eighths; instruction?: Seq } }
  | { kind: 'ask'; text: string };

/** Words for an adjuster that say where it moves the beam, not what is written on it. */
const BY_LINE = /\b(pan|tilt|side to side)\b/i;

/**
 * The words may mean either adjuster. On a unit that hangs on its side the one called horizontal moves the beam up and
 * down: there "side to side" names neither.
 */
export const isEither = ({ mounting }: Pick<JobState, 'mounting'>, text: string): boolean =>
  mounting !== undefined && isOnItsSide(mounting) && BY_LINE.test(text);

/**
 * Which turn a report like "back a quarter" means. What was not said is taken from the turn that was asked
 * for, which the crew has just heard; without one, the crew is asked.
 */
export function moveOf(state: JobState, moved: Moved, re: Seq | undefined): MoveOrQuestion {
  const instruction = creditedInstruction(state, re);
  const action = instruction?.advice.action;
  const asked = action?.kind === 'turn' ? action : undefined;
  const axis = moved.axis ?? asked?.axis;
  if (!axis) return { kind: 'ask', text: WHICH_ADJUSTER };
  const sameAxis = asked?.axis === axis ? asked : undefined;
  const size = moved.eighths ?? (sameAxis && Math.abs(sameAxis.eighths));
  if (!size) return { kind: 'ask', text: howFar(axis) };
  const sense = senseOf(state, moved, axis, sameAxis?.eighths);
  if (!sense) return { kind: 'ask', text: whichWay(axis) };
  const move = { axis, eighths: sense * size };
  return { kind: 'move', move: sameAxis && instruction ? { ...move, instruction: instruction.seq } : move };
}

/** +1 clockwise, -1 anticlockwise, or undefined if the words do not say. */
function senseOf(
  state: JobState,
  { way }: Moved,
  axis: Axis,
  asked: Eighths | undefined,
): number | undefined {
  const last = countedOf(state).findLast((fact) => fact.type === 'move' && fact.axis === axis);
  const lastSense = last?.type === 'move' ? Math.sign(last.eighths) : undefined;
  switch (way) {
    case 'clockwise':
      return 1;
    case 'anticlockwise':
      return -1;
    case 'back':
      return lastSense && -lastSense;
    case 'on':
      return lastSense;
    case undefined:
      return asked && Math.sign(asked);
    default:
      // Left, right, up and down say where the beam went, not which way the screw turned.
      return undefined;
  }
}
