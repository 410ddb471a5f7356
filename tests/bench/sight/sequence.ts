import type { Pose } from '../../../client/sight/training/camera.ts';
import { mixed, poseOf, shoot } from '../../../client/sight/training/camera.ts';
import { type Look as Display, type Drawn, drawDisplay } from '../../../client/sight/training/displays.ts';
import { shownNumber } from '../../../src/sight/characters.ts';
import { type Frame, patchOf, SMALLEST_BOX } from '../../../src/sight/patch.ts';
import { afterLook, doubtAbout, type Look, watched, watchFrom } from '../../../src/sight/watch.ts';
import { between, pick, type Rng } from '../../../src/simulator/rng.ts';
import type { Reader } from './readers.ts';

/** Two looks a second. */
const EVERY_MS = 500;
/** The display shows the first number so long, then one frame between both, then the second. */
const FIRST = 4;
const SECOND = 6;
const STILL = { by: 0, likeness: 1 };

export interface Outcome {
  /** Looks at a number that stood still; those likeliest and right; those that were read, and read wrongly. */
  frames: number;
  exact: number;
  read: number;
  misread: number;
  /** The first number was read in all of the first frames, as the page asks before it offers to begin. If not, the phone is moved. */
  began: boolean;
  /** What was taken at the end, against what was shown. */
  taken: 'right' | 'wrong' | 'nothing';
  /** Of each of these frames with its point in the right place, how much was believed, and whether it was right. */
  beliefs: { belief: number; right: boolean }[];
  /** Milliseconds for each frame: the box cut out, and read. */
  ms: number[];
  /** What was shown, and taken for what. */
  wrong?: string;
}

function numbers(rng: Rng): [string, string] {
  const decimals = pick(rng, [0, 0, 1, 2]);
  const digits = pick(rng, [1, 2, 2, 3, 3, 4].filter((n) => n > decimals) as [number, ...number[]]);
  const draw = () => {
    const text = Array.from({ length: digits }, () => Math.floor(rng() * 10)).join('');
    const plain = decimals ? `${text.slice(0, -decimals)}.${text.slice(-decimals)}` : text;
    const shown = plain.replace(/^0+(?=\d)/, (zeros) => ' '.repeat(zeros.length));
    return shown;
  };
  return [draw(), draw()];
}

/** One display that stands before one phone: the first number, a change, the second number. */
export async function sequence(
  rng: Rng,
  display: Display,
  spoil: (rng: Rng, pose: Pose) => Pose,
  reader: Reader,
): Promise<Outcome> {
  const [first, second] = numbers(rng);
  const drawn = drawDisplay(display, first);
  const then = drawDisplay(display, second);
  let pose = poseOf(rng, drawn);
  while (pose.box.height < SMALLEST_BOX) pose = poseOf(rng, drawn);
  pose = spoil(rng, pose);
  const meter = { min: 0, max: 1e5, tolerance: 0, settleMs: 2_000 };
  const outcome: Outcome = {
    frames: 0,
    exact: 0,
    read: 0,
    misread: 0,
    began: true,
    taken: 'nothing',
    beliefs: [],
    ms: [],
  };
  const decimals = shownNumber(first.trim())?.decimals ?? 0;
  let watch = watchFrom({ decimals });
  const sameSize = then.frame.width === drawn.frame.width;
  for (let i = 0; i <= FIRST + SECOND; i++) {
    const shown = i < FIRST ? first : second;
    const between2: Drawn =
      i === FIRST && sameSize
        ? { ...drawn, frame: mixed(drawn.frame, then.frame, between(rng, 0, 1)) }
        : i < FIRST
          ? drawn
          : then;
    const frame: Frame = await shoot(rng, between2, pose);
    const start = performance.now();
    const sight = await reader.read(frame, pose.box);
    outcome.ms.push(performance.now() - start);
    const patch = patchOf(frame, pose.box);
    const look: Look = {
      at: i * EVERY_MS,
      sight,
      drift: STILL,
      mean: patch.mean,
      deviation: patch.deviation,
    };
    const doubt = doubtAbout(look, { decimals }, meter);
    const right = sight.text === shown.trim();
    if (i < FIRST) outcome.began &&= doubt === undefined && right;
    if (i !== FIRST) {
      outcome.frames++;
      if (right) outcome.exact++;
      if (shownNumber(sight.text)?.decimals === decimals)
        outcome.beliefs.push({ belief: sight.belief, right });
      if (!doubt) outcome.read++;
      if (!doubt && !right) outcome.misread++;
    }
    watch = afterLook(watch, look, meter);
    const now = watched(watch, meter);
    if (now.kind !== 'settled') continue;
    // While it changes, either number is right.
    const isRight = now.value === Number(shown) || (i === FIRST && now.value === Number(first));
    if (!isRight) outcome.wrong ??= `${shown.trim()} taken for ${now.text}`;
    outcome.taken = isRight && outcome.taken !== 'wrong' ? 'right' : 'wrong';
  }
  return outcome;
}
