import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { FLOAT, floats, graph, INTS, node, tensor } from './graph.ts';

const LETTERS = [..."abcdefghijklmnopqrstuvwxyz'"];
const BLANK = 0;
const SPACE = 1;

/**
 * Writes a model of letters in the layout of `@xenova/transformers` that knows only one text: it writes it at any sound. It tests what becomes
 * of a folder in another language, and says nothing about how well a real model hears. `more`: letters beside a to z.
 */
export function writeLetters(folder: string, text: string, language?: string, more = ''): void {
  const letters = [...LETTERS, ...more];
  mkdirSync(join(folder, 'onnx'), { recursive: true });
  const write = (file: string, content: unknown) =>
    writeFileSync(join(folder, file), JSON.stringify(content));
  write('config.json', {
    model_type: 'wav2vec2',
    architectures: ['Wav2Vec2ForCTC'],
    ...(language && { language }),
  });
  write('preprocessor_config.json', {
    feature_extractor_type: 'Wav2Vec2FeatureExtractor',
    do_normalize: true,
    sampling_rate: 16_000,
  });
  const tokens = ['<pad>', '|', ...letters];
  write('tokenizer.json', { model: { vocab: Object.fromEntries(tokens.map((token, i) => [token, i])) } });
  write('tokenizer_config.json', {});
  const said = [...text].flatMap((letter) => [letter === ' ' ? SPACE : tokens.indexOf(letter), BLANK]);
  const table = said.flatMap((token) => tokens.map((_, i) => (i === token ? 12 : 0)));
  writeFileSync(
    join(folder, 'onnx', 'model_quantized.onnx'),
    graph({
      inputs: [tensor('input_values', FLOAT, [1, 'samples'])],
      outputs: [tensor('logits', FLOAT, [1, said.length, tokens.length])],
      constants: [floats('table', [1, said.length, tokens.length], table), floats('nothing', [1], [0])],
      nodes: [
        node('ReduceMean', ['input_values'], 'mean', [{ name: 'axes', type: INTS, ints: [1] }]),
        node('Mul', ['mean', 'nothing'], 'zero'),
        node('Add', ['table', 'zero'], 'logits'),
      ],
    }),
  );
}
