/** 20 ms at 16 kHz. */
const WINDOW = 320;
/** An edge below this share of the loudest window is cut off. */
const EDGE = 0.15;

/** The sound without its quiet edges, as after a late press of the talk button, or from a voice detector. */
export function tight(sound: Float32Array): Float32Array {
  let sum = 0;
  const loudness = sound.map((x, i) => {
    sum += Math.abs(x) - Math.abs(sound[i - WINDOW] ?? 0);
    return sum;
  });
  const least = EDGE * loudness.reduce((a, b) => Math.max(a, b), 0);
  const from = loudness.findIndex((x) => x >= least);
  const to = loudness.findLastIndex((x) => x >= least);
  return sound.slice(Math.max(0, from - WINDOW / 2), Math.max(to, from + 5 * WINDOW));
}
