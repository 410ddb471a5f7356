import type { Intent } from '../../src/grammar/intent.ts';
import { parse } from '../../src/grammar/parse.ts';
import type { Context } from '../../src/grammar/rule.ts';

/** A meter with four digits, so that it can show every number of these tests. */
export const FOUR_FIGURES: Context = { meter: { min: -9999, max: 9999, unit: 'counts' } };
export const BYTE: Context = { meter: { min: 0, max: 255, unit: 'counts' } };

/** The number that a text gives as its only reading, or what it gave instead. */
export const numberIn = (text: string, context: Context = FOUR_FIGURES): unknown => {
  const heard = parse(text, context);
  const [intent, ...more] = heard.kind === 'understood' ? heard.intents : [];
  if (intent?.kind !== 'reading' || intent.reading.kind !== 'value' || more.length > 0) return heard;
  return intent.reading.value;
};

/** The numbers that are asked about, or what the text gave instead. */
export const numbersAskedIn = (text: string, context: Context = {}): unknown => {
  const heard = parse(text, context);
  if (heard.kind !== 'ambiguous') return heard;
  return heard.options.map(([intent]) =>
    intent?.kind === 'reading' && intent.reading.kind === 'value' ? intent.reading.value : intent,
  );
};

export const intentsIn = (text: string, context: Context = {}): Intent[] | string => {
  const heard = parse(text, context);
  return heard.kind === 'understood' ? heard.intents : JSON.stringify(heard);
};

export const value = (number: number): Intent => ({
  kind: 'reading',
  reading: { kind: 'value', value: number },
});

/** A seeded source of numbers from 0 to 1 (mulberry32). */
export const seeded = (seed: number) => (): number => {
  seed = (seed + 0x6d2b79f5) | 0;
  let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
};
