import * as z from 'zod/mini';

/** What a server asks of a speech service: JSON both ways. */
export const HEAR_PATH = '/hear';
/** 200 once the engine is loaded, 503 until then, 500 where it cannot be. */
export const READY_PATH = '/ready';

/** Mono samples, 16 kHz, as 32-bit floats in little-endian order. */
export const ToHear = z.object({
  sound: z.base64(),
  expect: z.optional(z.object({ low: z.number(), high: z.number(), asked: z.optional(z.array(z.string())) })),
});

export const HeardText = z.object({
  text: z.string(),
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
