import { loudness, speechLevel } from './pieces.ts';

/** What the hearer of single words hears at once, samples at 16 kHz: 1.342 s, for eight vectors 80 ms apart. */
export const WINDOW = 21_472;
/** The loud part's effective value: what the front end was made for, as a share of 16 bits. */
const LEVEL = 0.06;
const STEP = 160;
const FADE = 80;

/** Windows one after the other, as a network takes them. */
export function inOneRow(windows: readonly Float32Array[]): Float32Array {
  const row = new Float32Array(windows.length * WINDOW);
  for (const [i, window] of windows.entries()) row.set(window, i * WINDOW);
  return row;
}

/** One word, from the sound between two places, in the middle of a window and at one level. */
export function wordWindow(sound: Float32Array, from: number, to: number): Float32Array {
  const cut = sound.slice(Math.max(0, from), Math.max(to, from + STEP));
  const levels = loudness(cut);
  const top = levels.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const least = Math.min(speechLevel(levels), top - 20);
  const first = Math.max(0, levels.findIndex((x) => x >= least) - 2) * STEP;
  const last = Math.min(cut.length, (levels.findLastIndex((x) => x >= least) + 3) * STEP);
  const word = cut.subarray(first, Math.max(last, first + 1));
  for (let i = 0; i < Math.min(FADE, word.length); i++) {
    word[i] = ((word[i] as number) * i) / FADE;
    word[word.length - 1 - i] = ((word[word.length - 1 - i] as number) * i) / FADE;
  }
  const loud = levels.filter((x) => x >= top - 10);
  const power = loud.reduce((sum, x) => sum + 10 ** (x / 10), 0) / loud.length;
  const gain = LEVEL / Math.sqrt(power + 1e-9);
  const window = new Float32Array(WINDOW);
  const spare = WINDOW - word.length;
  const at = Math.max(0, Math.floor(spare / 2));
  const skipped = Math.max(0, Math.ceil(-spare / 2));
  for (let i = 0; i < Math.min(word.length, WINDOW); i++)
    window[at + i] = (word[skipped + i] as number) * gain;
  return window;
}
