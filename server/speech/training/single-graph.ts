/**
 * Puts the hearer of single words together: low-pass, the front end and the speech embedding as they were published, and
 * the head that `single_head.py` fitted. Weights are stored in 16 bits.
 *
 *     npx tsx server/speech/training/single-graph.ts EMBEDDING MODEL [HEAD]
 *
 * EMBEDDING holds `melspectrogram.onnx` and `embedding_model.onnx`; HEAD `words.json` and `head.bin`. Without HEAD the
 * graph gives the embedding's vectors: that is what the head is fitted on.
 */
import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { onnx as Onnx } from 'onnx-proto';
import { WINDOW } from '../../../src/speech/window.ts';

const { onnx } = createRequire(import.meta.url)('onnx-proto') as typeof import('onnx-proto');

/** Bins of the front end's spectrum that its bands use; the others weigh nothing. */
const BINS = 122;
const BANDS = 32;
const FRAME = 512;
const HOP = 160;
const TAPS = 63;
/** Each window gives eight vectors of 96 numbers. */
const VECTORS = 768;
const FLOAT = 1;
const INT64 = 7;
const HALF = 10;

const [embedding = '', model = '', head] = process.argv.slice(2);
const read = (file: string) => onnx.ModelProto.decode(readFileSync(join(embedding, file))).graph;
const mels = read('melspectrogram.onnx');
const vectors = read('embedding_model.onnx');
if (!mels || !vectors) throw new Error(`${embedding} holds no graphs.`);

const nodes: Onnx.INodeProto[] = [];
const initializer: Onnx.ITensorProto[] = [];

function node(
  opType: string,
  input: string[],
  output: string,
  attribute: Onnx.IAttributeProto[] = [],
): string {
  nodes.push({ opType, input, output: [output], attribute });
  return output;
}
const ints = (name: string, values: number[]): Onnx.IAttributeProto => ({ name, type: 7, ints: values });
const int = (name: string, value: number): Onnx.IAttributeProto => ({ name, type: 2, i: value });
const bytes = (array: ArrayLike<number> & { buffer: ArrayBufferLike }): Uint8Array =>
  new Uint8Array(array.buffer);

function whole(name: string, values: number[]): string {
  initializer.push({
    name,
    dims: [values.length],
    dataType: INT64,
    rawData: bytes(BigInt64Array.from(values.map(BigInt)) as never),
  });
  return name;
}
function number(name: string, value: number): string {
  initializer.push({ name, dims: [], dataType: FLOAT, rawData: bytes(Float32Array.of(value)) });
  return name;
}
/** Weights, stored in 16 bits and used in 32. */
function weights(name: string, dims: number[], values: ArrayLike<number>): string {
  initializer.push({
    name: `${name}.half`,
    dims,
    dataType: HALF,
    rawData: bytes(Uint16Array.from(values, half)),
  });
  return node('Cast', [`${name}.half`], name, [int('to', FLOAT)]);
}

/** A number in the 16 bits of IEEE 754, rounded to the nearest. */
function half(value: number): number {
  const sign = value < 0 || Object.is(value, -0) ? 0x8000 : 0;
  const size = Math.abs(value);
  if (size >= 65_520) throw new RangeError(`${value} does not fit into 16 bits.`);
  if (size < 2 ** -14) return sign + Math.round(size * 2 ** 24);
  const exponent = Math.floor(Math.log2(size));
  return sign + ((exponent + 15) << 10) + Math.round((size / 2 ** exponent - 1) * 1024);
}

const named = (graph: Onnx.IGraphProto, name: string): Float32Array => {
  const raw = graph.initializer?.find((one) => one.name === name)?.rawData;
  if (!raw) throw new Error(`${name} is missing.`);
  return new Float32Array(Uint8Array.from(raw).buffer);
};

// What 8 kHz can hold, as in model.py: the digits were recorded at 8 kHz, the other words at 16.
const taps = Array.from({ length: TAPS }, (_, i) => {
  const x = ((i - (TAPS - 1) / 2) * 3900) / 8000;
  return (
    (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x)) *
    (0.54 - 0.46 * Math.cos((2 * Math.PI * i) / (TAPS - 1)))
  );
});
const total = taps.reduce((a, b) => a + b);
const bands = named(mels, '1.melW');
if (bands.subarray(BINS * BANDS).some((weight) => weight !== 0)) throw new Error('The bands use more bins.');
const waves = ['real', 'imag'].flatMap((part) => [
  ...named(mels, `0.stft.conv_${part}.weight`).subarray(0, BINS * FRAME),
]);

const [first, middle, end, one] = [
  whole('0', [0]),
  whole('bins', [BINS]),
  whole('both', [2 * BINS]),
  whole('1', [1]),
];
node('Mul', ['input_values', number('16 bits', 32_768)], 'loud');
node('Unsqueeze', ['loud', one], 'sound');
node(
  'Conv',
  [
    'sound',
    weights(
      'taps',
      [1, 1, TAPS],
      taps.map((tap) => tap / total),
    ),
  ],
  'low',
  [ints('pads', [31, 31])],
);
node('Conv', ['low', weights('waves', [2 * BINS, 1, FRAME], waves)], 'spectrum', [ints('strides', [HOP])]);
node('Mul', ['spectrum', 'spectrum'], 'squares');
node('Slice', ['squares', first, middle, one], 'real');
node('Slice', ['squares', middle, end, one], 'imaginary');
node('Add', ['real', 'imaginary'], 'power');
node('Transpose', ['power'], 'by frame', [ints('perm', [0, 2, 1])]);
node('MatMul', ['by frame', weights('bands', [BINS, BANDS], bands.subarray(0, BINS * BANDS))], 'in bands');
node('Max', ['in bands', number('least', 1e-10)], 'positive');
node('Log', ['positive'], 'ln');
node('Mul', ['ln', number('to bels', 1 / Math.LN10)], 'bels');
// No more than 80 dB under the loudest, then as the embedding was trained.
node('ReduceMax', ['bels'], 'top', [ints('axes', [1, 2]), int('keepdims', 1)]);
node('Sub', ['top', number('8', 8)], 'bottom');
node('Max', ['bels', 'bottom'], 'limited');
node('Add', ['limited', number('2', 2)], 'mels');
node('Unsqueeze', ['mels', one], 'image');

// The published graph reshapes first and last; between the two it is convolutions only, and takes any length.
const layers = vectors.node ?? [];
const entrance = layers[0]?.output?.[0] as string;
for (const tensor of vectors.initializer ?? []) {
  const name = tensor.name as string;
  if (tensor.dataType !== FLOAT) continue;
  const dims = (tensor.dims ?? []).map(Number);
  if (dims.length === 4) weights(name, dims, named(vectors, name));
  else initializer.push(tensor);
}
for (const layer of layers.slice(1, -1)) {
  nodes.push({ ...layer, input: (layer.input ?? []).map((name) => (name === entrance ? 'image' : name)) });
}
const flat = node('Flatten', [layers.at(-1)?.input?.[0] as string], head ? 'flat' : 'logits', [
  int('axis', 1),
]);

let tokens = VECTORS;
if (head) {
  const words = JSON.parse(readFileSync(join(head, 'words.json'), 'utf8')) as string[];
  tokens = words.length + 1;
  const fitted = new Float32Array(Uint8Array.from(readFileSync(join(head, 'head.bin'))).buffer);
  const hidden = (fitted.length - tokens) / (VECTORS + 1 + tokens);
  let at = 0;
  const next = (count: number): Float32Array => {
    at += count;
    return fitted.subarray(at - count, at);
  };
  const enter = weights('enter', [VECTORS, hidden], next(VECTORS * hidden));
  const enterBias = weights('enter bias', [hidden], next(hidden));
  const exit = weights('exit', [hidden, tokens], next(hidden * tokens));
  const exitBias = weights('exit bias', [tokens], next(tokens));
  node('Gemm', [flat, enter, enterBias], 'entered');
  node('Relu', ['entered'], 'hidden');
  node('Gemm', ['hidden', exit, exitBias], 'logits');
}

const port = (name: string, width: number): Onnx.IValueInfoProto => ({
  name,
  type: { tensorType: { elemType: FLOAT, shape: { dim: [{ dimParam: 'windows' }, { dimValue: width }] } } },
});
const graph = {
  name: 'single-words',
  node: nodes,
  initializer,
  input: [port('input_values', WINDOW)],
  output: [port('logits', tokens)],
};
const file = onnx.ModelProto.encode({
  irVersion: 7,
  opsetImport: [{ domain: '', version: 13 }],
  producerName: 'single-graph',
  graph,
}).finish();
mkdirSync(join(model, 'onnx'), { recursive: true });
writeFileSync(join(model, 'onnx', 'model_quantized.onnx'), file);
writeFileSync(
  join(model, 'config.json'),
  `${JSON.stringify({ model_type: 'wav2vec2', architectures: ['Wav2Vec2ForCTC'], vocab_size: tokens }, null, 1)}\n`,
);
if (head) copyFileSync(join(head, 'words.json'), join(model, 'words.json'));
console.log(`${file.length} bytes`);
