import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { BOOL, FLOAT, floats, graph, INT64, INTS, node, tensor } from './graph.ts';

/**
 * Writes a model in Whisper's layout that knows only one thing: at silence it writes nothing, at any sound one text,
 * word after word from a table. No trained weights are available here. So this tests the layout, the calls and the use
 * of the answer, and says nothing about how well a real model hears.
 *
 * `follows`: for each word, the next words with their probabilities, from `START` to `END`.
 */
export const START = '<|notimestamps|>';
export const END = '<|endoftext|>';

const SPECIAL = [END, '<|startoftranscript|>', '<|en|>', '<|transcribe|>', START];
/** The size of the features: mel bands, and frames in the 30 s that Whisper always hears. */
const MELS = 80;
const FRAMES = 3000;
/** The value of the features at silence, as the library makes them: (log10(1e-10) + 4) / 4. */
const SILENT = -1.5;
const WIDTH = 4;

type Follows = Readonly<Record<string, Readonly<Record<string, number>>>>;

export function writeWhisper(folder: string, follows: Follows): void {
  const words = [...new Set(Object.entries(follows).flatMap(([word, next]) => [word, ...Object.keys(next)]))];
  // The library takes any token after the special ones for a time.
  const tokens = [...words.filter((word) => !SPECIAL.includes(word)), ...SPECIAL];
  const id = (token: string): number => tokens.indexOf(token);
  mkdirSync(join(folder, 'onnx'), { recursive: true });
  const write = (file: string, content: unknown) =>
    writeFileSync(join(folder, file), JSON.stringify(content));
  const model = {
    is_encoder_decoder: true,
    decoder_start_token_id: id('<|startoftranscript|>'),
    eos_token_id: id(END),
    pad_token_id: id(END),
    vocab_size: tokens.length,
  };
  write('config.json', {
    ...model,
    model_type: 'whisper',
    architectures: ['WhisperForConditionalGeneration'],
    d_model: WIDTH,
    encoder_layers: 1,
    decoder_layers: 1,
    encoder_attention_heads: 1,
    decoder_attention_heads: 1,
    max_source_positions: FRAMES / 2,
  });
  write('generation_config.json', { ...model, is_multilingual: true, max_length: 448 });
  write('preprocessor_config.json', {
    feature_extractor_type: 'WhisperFeatureExtractor',
    processor_class: 'WhisperProcessor',
    feature_size: MELS,
    sampling_rate: 16_000,
    n_fft: 400,
    hop_length: 160,
    chunk_length: 30,
    n_samples: 480_000,
    nb_max_frames: FRAMES,
  });
  // "Ġ" is how a byte-level vocabulary writes the space before a word.
  const spelled = tokens.map((token) => (SPECIAL.includes(token) ? token : `Ġ${token}`));
  write('tokenizer_config.json', { tokenizer_class: 'WhisperTokenizer', eos_token: END });
  write('tokenizer.json', {
    version: '1.0',
    added_tokens: SPECIAL.map((content) => ({ id: id(content), content, special: true })),
    normalizer: null,
    pre_tokenizer: { type: 'ByteLevel', add_prefix_space: false },
    post_processor: null,
    decoder: { type: 'ByteLevel' },
    model: { type: 'BPE', vocab: Object.fromEntries(spelled.map((token, i) => [token, i])), merges: [] },
  });
  writeFileSync(join(folder, 'onnx', 'encoder_model_quantized.onnx'), encoder());
  writeFileSync(join(folder, 'onnx', 'decoder_model_merged_quantized.onnx'), decoder(tokens, follows));
}

/** The mean of the features, less their value at silence. */
const encoder = (): Uint8Array =>
  graph({
    inputs: [tensor('input_features', FLOAT, [1, MELS, FRAMES])],
    outputs: [tensor('last_hidden_state', FLOAT, [1, 1, WIDTH])],
    constants: [floats('silent', [1], [SILENT]), floats('wide', [1, 1, WIDTH], new Array(WIDTH).fill(1))],
    nodes: [
      node('ReduceMean', ['input_features'], 'mean', [{ name: 'axes', type: INTS, ints: [1, 2] }]),
      node('Sub', ['mean', 'silent'], 'above'),
      node('Mul', ['above', 'wide'], 'last_hidden_state'),
    ],
  });

/** The row of the last word in the table. At silence the end gets so much that nothing else is likely. */
function decoder(tokens: readonly string[], follows: Follows): Uint8Array {
  const UNLIKELY = -30;
  const ENDS = 60;
  const rows = tokens.flatMap((token) =>
    tokens.map((next) => Math.log(follows[token]?.[next] ?? Math.exp(UNLIKELY))),
  );
  const ending = tokens.map((token) => (token === END ? ENDS : 0));
  const caches = ['decoder', 'encoder'].flatMap((part) =>
    ['key', 'value'].map((kind) => `0.${part}.${kind}`),
  );
  return graph({
    inputs: [
      tensor('input_ids', INT64, [1, 'ids']),
      tensor('encoder_hidden_states', FLOAT, [1, 1, WIDTH]),
      tensor('use_cache_branch', BOOL, [1]),
      ...caches.map((name) => tensor(`past_key_values.${name}`, FLOAT, [1, 1, 'past', WIDTH])),
    ],
    outputs: [
      tensor('logits', FLOAT, [1, 'ids', tokens.length]),
      ...caches.map((name) => tensor(`present.${name}`, FLOAT, [1, 1, 'past', WIDTH])),
    ],
    constants: [
      floats('table', [tokens.length, tokens.length], rows),
      floats('ending', [tokens.length], ending),
      floats('sharpness', [1], [-20]),
    ],
    nodes: [
      node('Gather', ['table', 'input_ids'], 'next'),
      node('ReduceMean', ['encoder_hidden_states'], 'above', [{ name: 'axes', type: INTS, ints: [2] }]),
      node('Mul', ['above', 'sharpness'], 'steep'),
      node('Exp', ['steep'], 'silence'),
      node('Mul', ['silence', 'ending'], 'end'),
      node('Add', ['next', 'end'], 'logits'),
      ...caches.map((name) => node('Identity', [`past_key_values.${name}`], `present.${name}`)),
    ],
  });
}
