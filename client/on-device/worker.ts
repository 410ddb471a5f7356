/// <reference lib="webworker" />
import sileroUrl from '@ricky0123/vad-web/dist/silero_vad_v5.onnx?url';
import * as ort from 'onnxruntime-web';
import plainUrl from 'onnxruntime-web/dist/ort-wasm.wasm?url';
import simdUrl from 'onnxruntime-web/dist/ort-wasm-simd.wasm?url';
import { wordGraph } from '../../src/grammar/graph.ts';
import { modelFileMissingText, NO_DETECTOR_ANSWER, NO_LETTERS } from '../../src/phrases/talk.ts';
import { alphabetOf } from '../../src/speech/alphabet.ts';
import type { Logits } from '../../src/speech/logits.ts';
import { type LetterModel, type Recogniser, recogniser } from '../../src/speech/recogniser.ts';
import type { WordModel } from '../../src/speech/second.ts';
import type { SingleWordModel } from '../../src/speech/single-words.ts';
import { inOneRow, WINDOW } from '../../src/speech/window.ts';
import type { Answered } from '../browser/calls.ts';
import type { Ask } from './recogniser.ts';

/** A worker of the page: the voice detector and the speech model, each loaded at its first use. */

// One thread: more threads need headers that block other things, and the models are small.
ort.env.wasm.numThreads = 1;
ort.env.wasm.wasmPaths = { 'ort-wasm.wasm': plainUrl, 'ort-wasm-simd.wasm': simdUrl };
ort.env.logLevel = 'error';

/** With each frame the detector also gets the end of the frame before it; samples at 16 kHz. */
const CONTEXT = 64;
const RATE = new ort.Tensor('int64', BigInt64Array.of(16_000n), [1]);

async function loadDetector(): Promise<(frame: Float32Array) => Promise<number>> {
  const session = await ort.InferenceSession.create(sileroUrl, { logSeverityLevel: 3 });
  let state: ort.Tensor = new ort.Tensor('float32', new Float32Array(2 * 128), [2, 1, 128]);
  let before = new Float32Array(CONTEXT);
  return async (frame) => {
    const sound = new Float32Array(CONTEXT + frame.length);
    sound.set(before);
    sound.set(frame, CONTEXT);
    before = frame.slice(-CONTEXT);
    const input = new ort.Tensor('float32', sound, [1, sound.length]);
    const { output, stateN } = await session.run({ input, state, sr: RATE });
    if (!output || !stateN) throw new Error(NO_DETECTOR_ANSWER);
    state = stateN;
    return output.data[0] as number;
  };
}

const MODEL = '/speech-model';

async function json(file: string): Promise<unknown> {
  const answer = await fetch(file);
  if (!answer.ok) throw new Error(modelFileMissingText(file));
  return answer.json();
}

async function loadRecogniser(): Promise<Recogniser> {
  const [tokenizer, letters, second, single] = await Promise.all([
    json(`${MODEL}/tokenizer.json`),
    loadNetwork(MODEL),
    loadSecondHearer(),
    loadSingleWords(),
  ]);
  return recogniser({ alphabet: alphabetOf(tokenizer), logits: letters }, wordGraph(), { second, single });
}

async function loadSecondHearer(): Promise<WordModel | undefined> {
  const words = await wordsOf('second');
  return words && { words, logits: await loadNetwork(`${MODEL}/second`) };
}

async function loadSingleWords(): Promise<SingleWordModel | undefined> {
  const words = await wordsOf('single');
  if (!words) return undefined;
  const session = await openSession(`${MODEL}/single`);
  return {
    words,
    logits: (windows) => run(session, inOneRow(windows), [windows.length, WINDOW]),
  };
}

/** The words that a hearer knows. A model's folder may be without it: then the server has no such file. */
async function wordsOf(part: string): Promise<string[] | undefined> {
  const answer = await fetch(`${MODEL}/${part}/words.json`);
  if (answer.status === 404) return undefined;
  if (!answer.ok) throw new Error(modelFileMissingText(`${part}/words.json`));
  return (await answer.json()) as string[];
}

const openSession = (folder: string): Promise<ort.InferenceSession> =>
  ort.InferenceSession.create(`${folder}/onnx/model_quantized.onnx`, { logSeverityLevel: 3 });

/** Rows of sound, `dims` as rows and samples. */
async function run(session: ort.InferenceSession, sound: Float32Array, dims: number[]): Promise<Logits> {
  const { logits } = await session.run({ input_values: new ort.Tensor('float32', sound, dims) });
  if (!logits) throw new Error(NO_LETTERS);
  const [frames, tokens] = logits.dims.slice(-2) as [number, number];
  return { data: logits.data as Float32Array, frames, tokens };
}

async function loadNetwork(folder: string): Promise<LetterModel['logits']> {
  const [preprocessor, session] = await Promise.all([
    json(`${folder}/preprocessor_config.json`) as Promise<{ do_normalize?: boolean }>,
    openSession(folder),
  ]);
  return (samples) =>
    run(session, preprocessor.do_normalize ? normalised(samples) : samples, [1, samples.length]);
}

/** Mean 0 and variance 1, as in the model's feature extractor on the server. */
function normalised(samples: Float32Array): Float32Array {
  const mean = samples.reduce((a, b) => a + b, 0) / samples.length;
  const variance = samples.reduce((sum, x) => sum + (x - mean) ** 2, 0) / samples.length;
  return samples.map((x) => (x - mean) / Math.sqrt(variance + 1e-7));
}

let detector: ReturnType<typeof loadDetector> | undefined;
let listening: ReturnType<typeof loadRecogniser> | undefined;

async function answer(ask: Ask): Promise<Answered> {
  const { id } = ask;
  try {
    switch (ask.do) {
      case 'detect':
        detector ??= loadDetector();
        return { id, value: await (await detector)(ask.frame) };
      case 'load':
        listening ??= loadRecogniser();
        await listening;
        return { id, value: undefined };
      case 'hear':
        listening ??= loadRecogniser();
        return { id, value: await (await listening).hear(ask.samples, { voice: ask.voice }) };
    }
  } catch (error) {
    // The next try may work: perhaps there was no link.
    if (ask.do === 'detect') detector = undefined;
    else listening = undefined;
    return { id, failed: error instanceof Error ? error.message : String(error) };
  }
}

// One after another: the detector's frames belong together.
let last: Promise<void> = Promise.resolve();
addEventListener('message', ({ data }: MessageEvent<Ask>) => {
  last = last.then(async () => postMessage(await answer(data)));
});
