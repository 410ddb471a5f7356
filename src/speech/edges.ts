import { energy } from './pieces.ts';

/** Added before and after the sound, so that a word cut tight has room; samples. */
const EDGE = 4000;
/** The quietest part is searched in pieces this long, 25 ms. In a word cut tight, longer pieces are all voice. */
const PIECE = 400;

/**
 * The sound with more of its own quietest part before and after it. With plain silence every noise would
 * begin and end suddenly, which sounds like a word.
 */
export function withEdges(samples: Float32Array): Float32Array {
  const quiet = quietest(samples);
  const padded = new Float32Array(samples.length + 2 * EDGE);
  padded.set(samples, EDGE);
  for (let i = 0; i < EDGE; i++) {
    // Forwards and backwards, so that no jump between two copies is heard.
    const turn = i % (2 * quiet.length);
    const sample = quiet[turn < quiet.length ? turn : 2 * quiet.length - 1 - turn] ?? 0;
    padded[EDGE - 1 - i] = sample;
    padded[EDGE + samples.length + i] = sample;
  }
  return padded;
}

function quietest(samples: Float32Array): Float32Array {
  let from = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at + PIECE <= samples.length; at += PIECE / 4) {
    const here = energy(samples.subarray(at, at + PIECE));
    if (here >= least) continue;
    least = here;
    from = at;
  }
  return samples.subarray(from, from + PIECE);
}
