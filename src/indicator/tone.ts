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
  const omega = (2 * Math.PI * frequency) / rate;
  const turn = 2 * Math.cos(omega);
  let [last, before, weights] = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    const weight = hann(i, n);
    weights += weight;
    [before, last] = [last, weight * (samples[i] ?? 0) + turn * last - before];
  }
  const power = last * last + before * before - turn * last * before;
  return weights > 0 ? (2 * Math.sqrt(Math.max(0, power))) / weights : 0;
}

const hann = (i: number, n: number): number => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / n);

/** What sounds at panels and detectors is higher than a hall's rumble and lower than this. Hz; common practice, no source. */
const LOWEST = 250;
const HIGHEST = 4_000;
/** A Hann window of n samples tells apart what lies two of its n-th parts of the rate apart: half of that is never missed. */
const PER_BIN = 1;
/** A tone that holds less of the power than this is none: speech and machines spread theirs. Our own figure, no source. */
const STANDS_OUT = 0.3;
/** Quieter than this is nothing, however pure. dB of full scale; our own figure, no source. */
const QUIETEST_DB = -70;

/** The strongest tone; undefined where none stands out. */
export function toneIn(samples: ArrayLike<number>, rate: number): Tone | undefined {
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
  const share = most ** 2 / 2 / Math.max(powerOf(samples), 1e-18);
  return db >= QUIETEST_DB && share >= STANDS_OUT ? { frequency, db, share: Math.min(1, share) } : undefined;
}

/** Mean square under the same window. */
function powerOf(samples: ArrayLike<number>): number {
  let [sum, weights] = [0, 0];
  for (let i = 0; i < samples.length; i++) {
    const weight = hann(i, samples.length);
    sum += weight * (samples[i] ?? 0) ** 2;
    weights += weight;
  }
  return weights > 0 ? sum / weights : 0;
}
