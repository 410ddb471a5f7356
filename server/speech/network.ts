import { AutoModelForCTC, AutoProcessor } from '@xenova/transformers';
import type { Logits } from '../../src/speech/logits.ts';

/**
 * A network of connectionist temporal classification, by the name under which the library finds its folder. It takes
 * mono sound at 16 kHz.
 */
export async function loadNetwork(
  name: string,
  quantized: boolean,
): Promise<(samples: Float32Array) => Promise<Logits>> {
  const processor = await AutoProcessor.from_pretrained(name);
  const model = await AutoModelForCTC.from_pretrained(name, { quantized });
  return async (samples) => {
    const { input_values } = await processor(samples);
    const { logits } = await model({ input_values });
    const [, frames, tokens] = logits.dims as [number, number, number];
    return { data: logits.data as Float32Array, frames, tokens };
  };
}
