/// <reference lib="webworker" />
import * as ort from 'onnxruntime-web';
import plainUrl from 'onnxruntime-web/dist/ort-wasm.wasm?url';
import simdUrl from 'onnxruntime-web/dist/ort-wasm-simd.wasm?url';
import { type Sight, sightOf } from '../../src/sight/characters.ts';
import { type Drift, drift, type Surroundings, surroundings } from '../../src/sight/drift.ts';
import { type Frame, PATCH_HEIGHT, PATCH_WIDTH, patchOf } from '../../src/sight/patch.ts';
import type { Look } from '../../src/sight/watch.ts';
import type { Answered } from '../browser/calls.ts';
import modelUrl from './reader.onnx?url';
import type { Ask, Grabbed } from './reader.ts';

/** A worker of the page: the reader of displays. One thread is enough, and needs no headers that block other things. */
ort.env.wasm.numThreads = 1;
ort.env.wasm.wasmPaths = { 'ort-wasm.wasm': plainUrl, 'ort-wasm-simd.wasm': simdUrl };
ort.env.logLevel = 'error';

let session: Promise<ort.InferenceSession> | undefined;

async function read(pixels: Float32Array): Promise<Sight> {
  session ??= ort.InferenceSession.create(modelUrl, { logSeverityLevel: 3 });
  const patch = new ort.Tensor('float32', pixels, [1, 1, PATCH_HEIGHT, PATCH_WIDTH]);
  const { scores } = await (await session).run({ patch });
  return sightOf((scores?.data ?? []) as Float32Array);
}

const frameOf = ({ data, width, height }: Grabbed): Frame => ({ data, width, height, channels: 4 });

const STILL: Drift = { by: 0, likeness: 1 };
let learnt: Surroundings | undefined;

async function look(grabbed: Grabbed): Promise<Omit<Look, 'at'>> {
  const frame = frameOf(grabbed);
  const { pixels, mean, deviation } = patchOf(frame, grabbed.box);
  const moved = learnt ? drift(learnt, surroundings(frame, grabbed.box)) : STILL;
  return { sight: await read(pixels), drift: moved, mean, deviation };
}

addEventListener('message', async ({ data: { id, ...ask } }: MessageEvent<Ask>) => {
  try {
    if (ask.do === 'learn') learnt = surroundings(frameOf(ask.grabbed), ask.grabbed.box);
    const value = ask.do === 'look' ? await look(ask.grabbed) : undefined;
    postMessage({ id, value } satisfies Answered);
  } catch (error) {
    // The next try may work: perhaps there was no link.
    session = undefined;
    postMessage({ id, failed: error instanceof Error ? error.message : String(error) } satisfies Answered);
  }
});
