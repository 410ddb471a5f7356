import type { Feature } from '../model/sensor.ts';
import type { Shown, Spread } from './profile.ts';
import { pulseRate } from './pulses.ts';

/** What the microphone or the camera gave at one moment, ms. */
export interface Sample {
  readonly at: number;
  /** Of the tone or the lamp; undefined where there is none. */
  readonly db: number | undefined;
  /** Semitones above 1 Hz. */
  readonly pitch?: number;
  /** Degrees. */
  readonly hue?: number;
}

/** Semitones: twelve of them double the frequency (equal temperament). */
export const semitones = (frequency: number): number => 12 * Math.log2(frequency);

/** Where there is no tone, it is as quiet as this for counting how often one begins. dB. */
const SILENCE_DB = -80;
/** It is not there if it was there in fewer of the moments than this share. Our own figure, no source. */
const THERE = 0.1;
/** How well a rate of pulses is known from a few of them; a second's part. */
const RATE_SD = 0.05;

/** All that a stretch of moments shows. While it goes on and off, only what it is while it is on counts. */
export function shownIn(samples: readonly Sample[]): Shown {
  const there = samples.filter(({ db }) => db !== undefined);
  if (samples.length === 0 || there.length < THERE * samples.length) return {};
  const rate = pulseRate(samples.map(({ at, db }) => ({ at, db: db ?? SILENCE_DB })));
  const levels = there.flatMap(({ db }) => db ?? []);
  const middle = (Math.max(...levels) + Math.min(...levels)) / 2;
  const on = rate === 0 ? there : there.filter(({ db }) => db !== undefined && db >= middle);
  const of = (feature: Feature, spread: Spread | undefined): Shown => (spread ? { [feature]: spread } : {});
  return {
    ...of('level', spreadOf(on.flatMap(({ db }) => db ?? []))),
    ...of('pitch', spreadOf(on.flatMap(({ pitch }) => pitch ?? []))),
    ...of('hue', hueOf(on.flatMap(({ hue }) => hue ?? []))),
    ...(rate !== undefined && { rate: { value: rate, sd: RATE_SD } }),
  };
}

function spreadOf(values: readonly number[]): Spread | undefined {
  if (values.length === 0) return undefined;
  const value = values.reduce((a, b) => a + b) / values.length;
  const square = values.reduce((sum, each) => sum + (each - value) ** 2, 0) / values.length;
  return { value, sd: Math.sqrt(square) };
}

/** The mean direction, as directional statistics has it: the direction of the sum of unit vectors. */
function hueOf(hues: readonly number[]): Spread | undefined {
  const [first] = hues;
  if (first === undefined) return undefined;
  const radians = hues.map((hue) => (hue * Math.PI) / 180);
  const [x, y] = [Math.cos, Math.sin].map((f) => radians.reduce((sum, each) => sum + f(each), 0)) as [
    number,
    number,
  ];
  const value = ((Math.atan2(y, x) * 180) / Math.PI + 360) % 360;
  const away = hues.map((hue) => ((((hue - value + 180) % 360) + 360) % 360) - 180);
  return { value, sd: spreadOf(away)?.sd ?? 0 };
}
