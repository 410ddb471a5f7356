import { logSoftmax } from '../../../src/speech/logits.ts';
import { cuttings } from '../../../src/speech/pieces.ts';
import { type SingleWordModel, spokenAs } from '../../../src/speech/single-words.ts';
import { wordWindow } from '../../../src/speech/window.ts';

/** What speech between two words costs, natural log for each 10 ms, as in src/speech/single-words.ts. */
const UNEXPLAINED = 0.4;

/** The best way to here: its score, and the pieces that it took. */
export interface Way {
  score: number;
  pieces: { from: number; to: number; score: number }[];
}

/** Where each word of a known text was said, in samples. Undefined where no way covers the sound. */
export async function wayThrough(
  model: SingleWordModel,
  sound: Float32Array,
  words: readonly string[],
): Promise<Way | undefined> {
  const { places, arcs, speech } = cuttings(sound);
  if (arcs.length === 0) return undefined;
  const tokenOf = new Map(model.words.map((word, i) => [word, i + 1]));
  const at = (place: number): number => places[place] as number;
  const logProbs = logSoftmax(
    await model.logits(arcs.map(({ from, to }) => wordWindow(sound, at(from), at(to)))),
  );
  const gap = (from: number, to: number): number => -UNEXPLAINED * (speech[from]?.[to] as number);
  let before: (Way | undefined)[] = places.map((_, to) => ({ score: gap(0, to), pieces: [] }));
  for (const word of words) {
    const token = tokenOf.get(spokenAs(word)) as number;
    const after: (Way | undefined)[] = places.map(() => undefined);
    const offer = (to: number, way: Way): void => {
      if (way.score > (after[to]?.score ?? Number.NEGATIVE_INFINITY)) after[to] = way;
    };
    for (const [i, { from, to }] of arcs.entries()) {
      const way = before[from];
      const score = logProbs[i * (tokenOf.size + 1) + token] as number;
      if (!way) continue;
      const pieces = [...way.pieces, { from: at(from), to: at(to), score }];
      for (let next = to; next < places.length; next++)
        offer(next, { score: way.score + score + gap(to, next), pieces });
    }
    before = after;
  }
  return before.at(-1);
}
