import type { Utterance } from './recordings.ts';

/** Seconds between two digits, and how much quieter than the loudest one may be, dB. */
const GAPS_S = [0, 0.1, 0.2, 0.3] as const;
const LEVELS_DB = 9;
const RATE = 16_000;

/** Strings of two and three digits, cut together from the single digits of one speaker. */
export function strings(digits: readonly Utterance[], count: number, rng: () => number): Utterance[] {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(rng() * from.length)] as T;
  return Array.from({ length: count }, (_, i): Utterance => {
    const { speaker } = pick(digits);
    const own = digits.filter((one) => one.speaker === speaker);
    const parts = Array.from({ length: 2 + (i % 2) }, () => ({
      ...pick(own),
      level: 10 ** ((-LEVELS_DB * rng()) / 20),
    }));
    const gap = Math.round(pick(GAPS_S) * RATE);
    return {
      set: 'strings',
      speaker,
      text: parts.map(({ text }) => text).join(' '),
      recordings: parts.flatMap(({ recordings = [] }) => recordings),
      async sound() {
        const sounds = await Promise.all(
          parts.map(async ({ sound, level }) => (await sound()).map((sample) => sample * level)),
        );
        const joined = new Float32Array(sounds.reduce((sum, { length }) => sum + length + gap, -gap));
        let at = 0;
        for (const one of sounds) {
          joined.set(one, at);
          at += one.length + gap;
        }
        return joined;
      },
    };
  });
}
