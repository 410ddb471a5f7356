/**
 * Noise of a site, not made by the code for the training noise (`server/speech/training/noise.py`).
 * Each kind gives `length` samples at 16 kHz of unit power.
 */
const RATE = 16_000;

type Rng = () => number;
type Kind = (length: number, rng: Rng) => Float32Array;

const unit = (samples: Float32Array): Float32Array => {
  const power = Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);
  return samples.map((x) => x / (power || 1));
};

const gauss = (rng: Rng): number => Math.sqrt(-2 * Math.log(1 - rng())) * Math.cos(2 * Math.PI * rng());

const white: Kind = (length, rng) => unit(Float32Array.from({ length }, () => gauss(rng)));

/** Air and blades: noise through two one-pole low-passes, and the blade rate with its harmonics. */
const fan: Kind = (length, rng) => {
  const blades = 60 + 120 * rng();
  const pole = Math.exp((-2 * Math.PI * (300 + 900 * rng())) / RATE);
  let a = 0;
  let b = 0;
  const air = unit(
    Float32Array.from({ length }, () => {
      a = pole * a + gauss(rng);
      b = pole * b + a;
      return b;
    }),
  );
  return unit(
    air.map((x, i) => {
      const phase = (2 * Math.PI * blades * i) / RATE;
      return x + 0.4 * (Math.sin(phase) + 0.5 * Math.sin(2 * phase) + 0.3 * Math.sin(3 * phase));
    }),
  );
};

/** An alarm sounder: two tones in turn, or one that sweeps, with harmonics. */
const sounder: Kind = (length, rng) => {
  const low = rng() < 0.6 ? 600 + 350 * rng() : 2400;
  const high = low * 1.22;
  const rate = 1 + 5 * rng();
  const sweeps = rng() < 0.5;
  let phase = 0;
  return unit(
    Float32Array.from({ length }, (_, i) => {
      const turn = ((i / RATE) * rate) % 1;
      const pitch = sweeps ? low + (high - low) * turn : turn < 0.5 ? low : high;
      phase += (2 * Math.PI * pitch) / RATE;
      return Math.sin(phase) + Math.sin(3 * phase) / 3 + Math.sin(5 * phase) / 5;
    }),
  );
};

/** An engine (a pulse train with jitter through a resonance) and a reversing beeper. */
const forklift: Kind = (length, rng) => {
  const firing = 25 + 40 * rng();
  const pitch = 1000 + 1500 * rng();
  let phase = 0;
  let a = 0;
  const engine = unit(
    Float32Array.from({ length }, () => {
      phase += (firing * (1 + 0.1 * gauss(rng))) / RATE;
      const fires = phase >= 1;
      if (fires) phase -= 1;
      a = 0.97 * a + (fires ? 8 : 0) + 0.3 * gauss(rng);
      return a;
    }),
  );
  return unit(
    engine.map((x, i) => {
      const on = (i / RATE) % 1 < 0.5;
      return x + (on ? 0.8 * Math.sin((2 * Math.PI * pitch * i) / RATE) : 0);
    }),
  );
};

export const KINDS: Readonly<Record<string, Kind>> = { white, fan, sounder, forklift };

/** The sound with noise, `snr` dB below its own mean power, and half a second of noise before and after. */
export function noisy(sound: Float32Array, kind: Kind, snr: number, rng: Rng): Float32Array {
  const edge = RATE / 2;
  const noise = kind(sound.length + 2 * edge, rng);
  const power = Math.sqrt(sound.reduce((sum, x) => sum + x * x, 0) / sound.length);
  const gain = power * 10 ** (-snr / 20);
  return noise.map((x, i) => gain * x + (sound[i - edge] ?? 0));
}
