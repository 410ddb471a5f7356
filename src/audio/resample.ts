/**
 * Streaming change of sample rate by a polyphase windowed sinc. Phones capture at their own rate (Safari
 * ignores a requested one), speech travels at 16 kHz.
 *
 * Kaiser's design formulas (Oppenheim & Schafer, Discrete-Time Signal Processing, chapter on FIR design by
 * windowing; constants from memory): for a stop band of `A` dB, beta = 0.1102 (A - 8.7), and a window of N
 * samples has a transition of (A - 8) / (2.285 N) radians a sample.
 */
const STOP_BAND_DB = 80;
/** Zero crossings of the sinc on each side; more of them make the transition band narrower. */
const ZERO_CROSSINGS = 32;

const BETA = 0.1102 * (STOP_BAND_DB - 8.7);
/** The transition band as a share of the lower Nyquist frequency; it ends at Nyquist, so nothing aliases. */
const TRANSITION = (STOP_BAND_DB - 8) / (2.285 * 2 * Math.PI * ZERO_CROSSINGS);
const CUTOFF = 1 - TRANSITION / 2;

/** The highest frequency that passes at full strength, as a share of the lower Nyquist frequency. */
export const PASS_BAND = 1 - TRANSITION;

export interface Resampler {
  /** Takes any number of samples; gives the samples at the new rate that are now complete. */
  push(input: Float32Array): Float32Array;
  /** Gives what is still inside, as if silence followed. Ends the stream. */
  flush(): Float32Array;
}

/** Rates in whole samples a second. Sample n of the output lies at time n/to of the input. */
export function resampler(from: number, to: number): Resampler {
  if (!Number.isInteger(from) || !Number.isInteger(to) || from <= 0 || to <= 0) {
    throw new RangeError(`sample rates must be whole numbers above 0, not ${from} and ${to}`);
  }
  if (from === to) return { push: (input) => input.slice(), flush: () => new Float32Array(0) };

  const divisor = gcd(from, to);
  const up = to / divisor;
  const down = from / divisor;
  const half = Math.ceil(ZERO_CROSSINGS * Math.max(1, from / to));
  const phases = design(up, half, Math.min(1, to / from));

  /** Input samples that later output still needs; the stream begins after `half` samples of silence. */
  let held = new Float32Array(half);
  /** Place of the next output's centre in `held`, and its phase in parts of `up`. */
  let centre = half;
  let phase = 0;

  const push = (input: Float32Array): Float32Array => {
    const samples = new Float32Array(held.length + input.length);
    samples.set(held);
    samples.set(input, held.length);
    const output: number[] = [];
    while (centre + half < samples.length) {
      const taps = phases[phase] as Float32Array;
      const first = centre - half + 1;
      let sum = 0;
      for (let i = 0; i < taps.length; i++) sum += (taps[i] as number) * (samples[first + i] as number);
      output.push(sum);
      phase += down;
      centre += Math.floor(phase / up);
      phase %= up;
    }
    const drop = Math.max(0, Math.min(samples.length, centre - half));
    held = samples.slice(drop);
    centre -= drop;
    return Float32Array.from(output);
  };

  return { push, flush: () => push(new Float32Array(half)) };
}

/** For each phase the weights of the `2 * half` samples around an output's centre. */
function design(up: number, half: number, scale: number): Float32Array[] {
  const bandwidth = scale * CUTOFF;
  return Array.from({ length: up }, (_, phase) => {
    const taps = Float32Array.from({ length: 2 * half }, (_, i) => {
      const t = i - half + 1 - phase / up;
      return bandwidth * sinc(bandwidth * t) * kaiser(t / half);
    });
    // Each phase must pass a constant unchanged, or the rate of the phases is heard as a tone.
    const sum = taps.reduce((a, b) => a + b, 0);
    return taps.map((tap) => tap / sum);
  });
}

/** Samples from -1 to 1 as 16-bit integers; what lies outside is clipped. */
export const toPcm16 = (samples: Float32Array): Int16Array =>
  Int16Array.from(samples, (s) => Math.round(Math.max(-1, Math.min(1, s)) * 32767));

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));

const kaiser = (x: number): number =>
  Math.abs(x) > 1 ? 0 : bessel0(BETA * Math.sqrt(1 - x * x)) / bessel0(BETA);

/** Modified Bessel function of the first kind, order zero, by its power series. */
function bessel0(x: number): number {
  let sum = 1;
  let term = 1;
  for (let k = 1; term > sum * 1e-12; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}
