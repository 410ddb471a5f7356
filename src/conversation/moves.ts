import type { Intent } from '../grammar/intent.ts';
import type { Seq } from '../model/ids.ts';
import { isOnItsSide } from '../model/mounting.ts';
import type { Axis, Eighths, TurnSoFar } from '../model/turns.ts';
import { howFar, WHICH_ADJUSTER, whichWay } from '../phrases/questions.ts';
import { countedOf, type JobState } from '../visit/state.ts';
import { creditedInstruction } from './credit.ts';
import type { Speaker } from './speaker.ts';

type Moved = Extract<Intent, { kind: 'moved' }>;

export type MoveOrQuestion =
  | { kind: 'move'; move: { axis: Axis; eighths: Eighths; instruction?: Seq } }
  | { kind: 'ask'; text: string; turn: TurnSoFar };

/** Words for an adjuster that say where it moves the beam, not what is written on it. */
const BY_LINE = /\b(pan|tilt|side to side)\b/i;

/**
 * The words may mean either adjuster. On a unit that hangs on its side the one called horizontal moves the beam up and
 * down: there "side to side" names neither.
 */
const isEither = ({ mounting }: Pick<JobState, 'mounting'>, text: string): boolean =>
  mounting !== undefined && isOnItsSide(mounting) && BY_LINE.test(text);

/**
 * Which turn a report like "back a quarter" means. What was not said is taken from the turn that was asked for, which the
 * crew has just heard; without one, the crew is asked. The answer is about the turn that was told in part, which may be
 * another one than that of the order: the order then adds nothing.
 */
export function moveOf(state: JobState, said: Moved, { re, text, turn }: Speaker): MoveOrQuestion {
  const instruction = creditedInstruction(state, re);
  const action = instruction?.advice.action;
  const asked = action?.kind === 'turn' ? action : undefined;
  const moved = isAnswer(said, turn) ? { ...turn, ...said } : said;
  if (isEither(state, text))
    return { kind: 'ask', text: WHICH_ADJUSTER, turn: soFar({ eighths: said.eighths, way: said.way }) };
  const axis = moved.axis ?? (turn ? undefined : asked?.axis);
  if (!axis) return { kind: 'ask', text: WHICH_ADJUSTER, turn: soFar(moved) };
  const sameAxis = asked?.axis === axis ? asked : undefined;
  const order = turn ? undefined : sameAxis;
  if (order && isContrary(said, order.eighths))
    return { kind: 'ask', text: WHICH_ADJUSTER, turn: soFar(said) };
  const eighths = moved.eighths ?? (order && Math.abs(order.eighths));
  if (!eighths) return { kind: 'ask', text: howFar(axis), turn: soFar({ ...moved, axis }) };
  const sense = senseOf(state, moved, axis, order?.eighths);
  if (!sense) return { kind: 'ask', text: whichWay(axis), turn: soFar({ axis, eighths }) };
  const move = { axis, eighths: sense * eighths };
  return { kind: 'move', move: sameAxis && instruction ? { ...move, instruction: instruction.seq } : move };
}

/** "Anticlockwise" alone, after an order to turn clockwise: it may be of the other adjuster, or of no turn at all. */
const isContrary = ({ axis, eighths, way }: Moved, asked: Eighths): boolean =>
  axis === undefined && eighths === undefined && way === (asked > 0 ? 'anticlockwise' : 'clockwise');

/** Not a report of the other adjuster, which the question was not about. */
const isAnswer = ({ axis }: Moved, turn: TurnSoFar | undefined): boolean =>
  turn !== undefined && (axis === undefined || turn.axis === undefined || axis === turn.axis);

/** What need not be said again. "Back" and "left" are no answer to which way. */
const soFar = ({ axis, eighths, way }: Omit<Moved, 'kind'>): TurnSoFar => ({
  ...(axis && { axis }),
  ...(eighths && { eighths }),
  ...((way === 'clockwise' || way === 'anticlockwise') && { way }),
});

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
