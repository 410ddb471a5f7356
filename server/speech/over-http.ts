import * as z from 'zod/mini';
import { TypedLanguage } from '../../src/model/language.ts';
import { Voice } from '../../src/model/voice.ts';

/** What a server asks of a speech service: JSON both ways. */
export const HEAR_PATH = '/hear';
/** Ten digits that somebody read. */
export const LEARN_PATH = '/learn';
/** 200 once the engine is loaded, 503 until then, 500 where it cannot be. */
export const READY_PATH = '/ready';

/** Mono samples, 16 kHz, as 32-bit floats in little-endian order. */
export const ToHear = z.object({
  sound: z.base64(),
  expect: z.optional(
    z.object({
      low: z.number(),
      high: z.number(),
      steps: z.optional(z.object({ from: z.number(), by: z.number().check(z.positive()) })),
      asked: z.optional(z.array(z.string())),
    }),
  ),
  voice: z.optional(Voice),
});
export const ToLearn = z.pick(ToHear, { sound: true });
/** Without a voice: they were not heard as ten digits. */
export const Learnt = z.object({ voice: z.optional(Voice) });

export const HeardText = z.object({
  text: z.string(),
  language: z.optional(TypedLanguage),
  confidence: z.number(),
  alternatives: z.array(z.object({ text: z.string(), confidence: z.number() })),
});

/** Why nothing was heard. 503: the engine is not there; 504: it took too long. */
export const NotHeard = z.object({ error: z.string() });

export const toBase64 = (samples: Float32Array): string =>
  Buffer.from(samples.buffer, samples.byteOffset, samples.byteLength).toString('base64');

/** An odd rest is left out. */
export function fromBase64(text: string): Float32Array {
  const bytes = Buffer.from(text, 'base64');
  const samples = new Float32Array(bytes.length >> 2);
  for (let i = 0; i < samples.length; i++) samples[i] = bytes.readFloatLE(4 * i);
  return samples;
}
