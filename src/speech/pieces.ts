/** One value every 10 ms, from 25 ms of sound around it. */
const STEP = 160;
const HALF = 200;
/** Sound this far below the loudest, dB, is not speech that counts; nor is what hardly stands out of the noise. */
const BELOW_TOP_DB = 28;
const ABOVE_NOISE_DB = 6;
/** How deep a dip between two words is at least, dB. */
const DIP_DB = 3;
const MOST_CUTS = 10;

/** A plain loop: every piece of every utterance is summed, and a call for each sample took longer than the sums. */
export function energy(sound: Float32Array): number {
  let sum = 0;
  for (let i = 0; i < sound.length; i++) sum += (sound[i] as number) * (sound[i] as number);
  return sum;
}

/** Loudness every 10 ms, dB. */
export function loudness(sound: Float32Array): Float64Array {
  const out = new Float64Array(Math.max(1, Math.floor(sound.length / STEP)));
  for (let i = 0; i < out.length; i++) {
    const part = sound.subarray(Math.max(0, i * STEP + STEP / 2 - HALF), i * STEP + STEP / 2 + HALF);
    out[i] = 10 * Math.log10(energy(part) / Math.max(1, part.length) + 1e-10);
  }
  return out;
}

/** What counts as speech, dB. */
export function speechLevel(levels: Float64Array): number {
  const sorted = [...levels].sort((a, b) => a - b);
  const noise = sorted[Math.floor(sorted.length / 10)] as number;
  const top = sorted.at(-1) as number;
  return Math.max(top - BELOW_TOP_DB, Math.min(noise + ABOVE_NOISE_DB, top - 10));
}

/**
 * Places, in samples, where a word may begin or end: where speech begins and ends, and the dips between. In order; at least
 * two.
 */
export function places(sound: Float32Array): number[] {
  const levels = loudness(sound);
  const least = speechLevel(levels);
  const begin = Math.max(
    0,
    levels.findIndex((x) => x >= least),
  );
  const end = levels.findLastIndex((x) => x >= least);
  const dips: { at: number; depth: number }[] = [];
  let left = levels[begin] as number;
  let lowest = begin;
  // A dip is the lowest place between two peaks; it is known once the level has risen out of it.
  for (let i = begin + 1; i <= end; i++) {
    const level = levels[i] as number;
    const low = levels[lowest] as number;
    if (level < low) lowest = i;
    else if (level >= low + DIP_DB && left >= low + DIP_DB) {
      let until = lowest;
      while (until < i && (levels[until] as number) < low + 1) until++;
      dips.push({ at: Math.round((lowest + until) / 2), depth: Math.min(level, left) - low });
      left = level;
      lowest = i;
    }
    if (level > left) {
      left = level;
      lowest = i;
    }
  }
  const kept = dips
    .sort((a, b) => b.depth - a.depth)
    .slice(0, MOST_CUTS)
    .map(({ at }) => at)
    .sort((a, b) => a - b);
  return [Math.max(0, begin - 2), ...kept, Math.min(levels.length, end + 3)].map((at) => at * STEP);
}

/** A word is at least and at most this long, samples: 0.1 s and 1.2 s. */
const SHORTEST = 1600;
const LONGEST = 19_200;
/** A pause this long is never inside one word, in 10 ms. Spares the network pieces that are two words. Ours, no source. */
const PAUSE = 20;

/** A piece of sound that may be a word: between two places, by number. */
export interface Arc {
  readonly from: number;
  readonly to: number;
}

/** The places of a sound, what lies between any two that may be a word, and how much speech there is: rows × columns, 10 ms. */
export function cuttings(sound: Float32Array): { places: number[]; arcs: Arc[]; speech: number[][] } {
  const at = places(sound);
  const levels = loudness(sound);
  const least = speechLevel(levels);
  const mayBeWord = (from: number, to: number): boolean =>
    to - from >= SHORTEST &&
    to - from <= LONGEST &&
    longestPause(levels.subarray(from / STEP, to / STEP), least) < PAUSE;
  const arcs = at.flatMap((from, i) =>
    at.flatMap((to, j) => (mayBeWord(from, to) ? [{ from: i, to: j }] : [])),
  );
  const speech = at.map((from) =>
    at.map((to) => levels.slice(from / STEP, to / STEP).filter((x) => x >= least).length),
  );
  return { places: at, arcs, speech };
}

/** How long the longest pause between two stretches of speech is, in 10 ms. */
function longestPause(levels: Float64Array, least: number): number {
  let longest = 0;
  let last = -1;
  for (const [i, level] of levels.entries()) {
    if (level < least) continue;
    if (last >= 0) longest = Math.max(longest, i - last - 1);
    last = i;
  }
  return longest;
}

/** A pause this long parts two words of a reading, and what is shorter than the other is a click; in 10 ms. Ours, no source. */
const READING_PAUSE = 25;
const CLICK = 8;
/** Kept before and after each, in 10 ms. */
const AROUND = 10;

/** Where somebody speaks, from pause to pause, in samples. */
export function stretches(sound: Float32Array): { from: number; to: number }[] {
  const levels = loudness(sound);
  const least = speechLevel(levels);
  const found: { from: number; to: number }[] = [];
  for (const [i, level] of levels.entries()) {
    if (level < least) continue;
    const last = found.at(-1);
    if (last && i - last.to < READING_PAUSE) last.to = i + 1;
    else found.push({ from: i, to: i + 1 });
  }
  return found
    .filter(({ from, to }) => to - from >= CLICK)
    .map(({ from, to }) => ({
      from: Math.max(0, from - AROUND) * STEP,
      to: Math.min(sound.length, (to + AROUND) * STEP),
    }));
}
