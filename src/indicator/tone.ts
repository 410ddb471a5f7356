/** A tone in a piece of sound: how loud, how high, and how far it stands out of the rest. */

export interface Tone {
  /** Hz. */
  readonly frequency: number;
  /** dB of a full-scale sine. */
  readonly db: number;
  /** Of all the power in the sound, from 0 to 1. */
  readonly share: number;
}

/**
 * The amplitude of one frequency in a piece of sound, 1 for a full-scale sine: Goertzel's recurrence (G. Goertzel, "An Algorithm for the
 * Evaluation of Finite Trigonometric Series", Amer. Math. Monthly 65, 1958) over samples that a Hann window has made fade in
 * and out, so that a loud tone does not leak into frequencies beside it.
 */
export function amplitudeAt(samples: ArrayLike<number>, frequency: number, rate: number): number {
  const n = samples.length;
  const weights = hannOf(n);
  const omega = (2 * Math.PI * frequency) / rate;
  const turn = 2 * Math.cos(omega);
  let [last, before] = [0, 0];
  for (let i = 0; i < n; i++) {
    const next = (weights.of[i] ?? 0) * (samples[i] ?? 0) + turn * last - before;
    before = last;
    last = next;
  }
  const power = last * last + before * before - turn * last * before;
  return weights.sum > 0 ? (2 * Math.sqrt(Math.max(0, power))) / weights.sum : 0;
}

interface Weights {
  readonly of: Float64Array;
  readonly sum: number;
}
/** Hundreds of frequencies are asked of one piece of sound, and all pieces are of one length. */
const known = new Map<number, Weights>();

function hannOf(n: number): Weights {
  const before = known.get(n);
  if (before) return before;
  const of = Float64Array.from({ length: n }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / n));
  const weights = { of, sum: of.reduce((a, b) => a + b, 0) };
  known.clear();
  known.set(n, weights);
  return weights;
}

/** What sounds at panels and detectors is higher than a hall's rumble and lower than this. Hz; common practice, no source. */
const LOWEST = 250;
const HIGHEST = 4_000;
/** A Hann window of n samples tells apart what lies two of its n-th parts of the rate apart: half of that is never missed. */
const PER_BIN = 1;
/** A tone that holds less of the power than this is none: speech and machines spread theirs. Our own figure, no source. */
const STANDS_OUT = 0.3;
/** Quieter than this is nothing, however pure. dB of full scale; our own figure, no source. */
const QUIETEST_DB = -70;

export interface Sound {
  /** The strongest tone; undefined where none stands out. */
  readonly tone: Tone | undefined;
  /** How loud all else is, dB of a full-scale sine. */
  readonly restDb: number;
}

export const toneIn = (samples: ArrayLike<number>, rate: number): Tone | undefined =>
  soundIn(samples, rate).tone;

export function soundIn(samples: ArrayLike<number>, rate: number): Sound {
  const step = (PER_BIN * rate) / samples.length;
  let [frequency, most] = [0, 0];
  for (let f = LOWEST; f <= Math.min(HIGHEST, rate / 2.2); f += step) {
    const amplitude = amplitudeAt(samples, f, rate);
    if (amplitude > most) [frequency, most] = [f, amplitude];
  }
  // Between the bins: towards the louder side, half as far each time.
  for (let near = step / 2; near > step / 256; near /= 2) {
    for (const f of [frequency - near, frequency + near]) {
      const amplitude = amplitudeAt(samples, f, rate);
      if (amplitude > most) [frequency, most] = [f, amplitude];
    }
  }
  const db = 20 * Math.log10(Math.max(most, 1e-9));
  const power = Math.max(powerOf(samples), 1e-18);
  const share = Math.min(1, most ** 2 / 2 / power);
  const tone = db >= QUIETEST_DB && share >= STANDS_OUT ? { frequency, db, share } : undefined;
  return { tone, restDb: 10 * Math.log10(Math.max(2 * power * (tone ? 1 - share : 1), 1e-18)) };
}

/** Mean square under the same window. */
function powerOf(samples: ArrayLike<number>): number {
  const weights = hannOf(samples.length);
  let sum = 0;
  for (let i = 0; i < samples.length; i++) sum += (weights.of[i] ?? 0) * (samples[i] ?? 0) ** 2;
  return weights.sum > 0 ? sum / weights.sum : 0;
}
