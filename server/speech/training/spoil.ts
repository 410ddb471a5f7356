/** Sound as it comes from a site, made by code: other speed, echo, noise. Samples at 16 kHz. */

const RATE = 16_000;
/** 10 ms. */
const PIECE = 160;

type Rng = () => number;

export const between = (rng: Rng, low: number, high: number): number => low + (high - low) * rng();

const gauss = (rng: Rng): number => Math.sqrt(-2 * Math.log(rng() + 1e-9)) * Math.cos(2 * Math.PI * rng());

export function atSpeed(sound: Float32Array, speed: number): Float32Array {
  return Float32Array.from({ length: Math.floor(sound.length / speed) }, (_, i) => {
    const at = Math.floor(i * speed);
    const share = i * speed - at;
    return (sound[at] ?? 0) * (1 - share) + (sound[at + 1] ?? 0) * share;
  });
}

/** Without its quiet edges, and with the loudest 10 ms at an effective value of 1. */
export function trimmed(sound: Float32Array, rng: Rng): Float32Array {
  const levels = Array.from({ length: Math.floor(sound.length / PIECE) }, (_, i) =>
    Math.sqrt(sound.subarray(i * PIECE, (i + 1) * PIECE).reduce((sum, x) => sum + x * x, 0) / PIECE),
  );
  const top = Math.max(...levels) || 1;
  const quiet = [...levels].sort((a, b) => a - b)[Math.floor(levels.length / 10)] ?? 0;
  const aboveNoise = 2.2 * quiet < 0.3 * top ? 2.2 * quiet : 0;
  const least = Math.max(top * between(rng, 0.03, 0.1), aboveNoise);
  const first = levels.findIndex((x) => x >= least);
  const last = levels.findLastIndex((x) => x >= least);
  return sound.slice(Math.max(0, first - 1) * PIECE, (last + 2) * PIECE).map((x) => x / top);
}

function withEcho(sound: Float32Array, rng: Rng): Float32Array {
  const out = sound.slice();
  const length = RATE * between(rng, 0.05, 0.4);
  const strength = between(rng, 0.25, 0.75);
  for (let tap = 12 + Math.floor(20 * rng()); tap > 0; tap--) {
    const delay = 80 + Math.floor(rng() * length);
    const share = strength * Math.exp((-3 * delay) / length) * rng() * (rng() < 0.5 ? -1 : 1);
    for (let i = delay; i < out.length; i++)
      out[i] = (out[i] as number) + share * (sound[i - delay] as number);
  }
  return out;
}

/** Coloured noise, at times with a hum in it; effective value 1. */
export function noise(length: number, rng: Rng): Float32Array {
  const colour = rng() < 0.3 ? 0 : between(rng, 0.5, 0.99);
  const hum = rng() < 0.3 ? rng() : 0;
  const pitch = 50 + 1500 * rng() ** 2;
  let last = 0;
  const out = Float32Array.from({ length }, (_, i) => {
    last = colour * last + (1 - colour) * gauss(rng);
    return last + hum * (1 - colour) * Math.sin((2 * Math.PI * pitch * i) / RATE);
  });
  const size = Math.sqrt(out.reduce((sum, x) => sum + x * x, 0) / length) || 1;
  return out.map((x) => x / size);
}

/** Sound whose words have a level of about 1, with echo, and noise 5 to 40 dB under it; some of it stays as it is. */
export function spoilt(sound: Float32Array, rng: Rng): Float32Array {
  const heard = rng() < 0.35 ? withEcho(sound, rng) : sound;
  if (rng() >= 0.6) return heard;
  const loud = heard.filter((x) => Math.abs(x) > 0.05);
  const level = Math.sqrt(loud.reduce((sum, x) => sum + x * x, 0) / Math.max(1, loud.length));
  const gain = level * 10 ** (-between(rng, 5, 40) / 20);
  const added = noise(heard.length, rng);
  return heard.map((x, i) => x + gain * (added[i] as number));
}
