/** How loud a block of samples was. */
export interface Level {
  /** Root mean square in decibels below full scale; -100 for silence. */
  db: number;
  /** Share of samples at full scale. */
  clipped: number;
}

const FULL_SCALE = 0.985;

export function levelOf(samples: Float32Array): Level {
  let sum = 0;
  let clipped = 0;
  for (const s of samples) {
    sum += s * s;
    if (Math.abs(s) >= FULL_SCALE) clipped++;
  }
  const n = samples.length || 1;
  return { db: Math.max(-100, 10 * Math.log10(sum / n + 1e-10)), clipped: clipped / n };
}

/** The place of a level on a scale from -60 to 0 dB, 0 to 1. */
export const meterShare = (db: number): number => Math.min(1, Math.max(0, (db + 60) / 60));

/** If more than this share of a block is at full scale, the sound is distorted. */
export const TOO_LOUD = 0.005;
