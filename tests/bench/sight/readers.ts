import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { createCanvas } from '@napi-rs/canvas';
import type * as Ort from 'onnxruntime-web';
import { createWorker, PSM } from 'tesseract.js';
import { type Sight, sightOf } from '../../../src/sight/characters.ts';
import {
  type Box,
  type Frame,
  greyAt,
  PATCH_HEIGHT,
  PATCH_WIDTH,
  patchOf,
} from '../../../src/sight/patch.ts';

const require = createRequire(import.meta.url);
// In Node.js it is a CommonJS package whose names an import does not find.
const ort = require('onnxruntime-web') as typeof Ort;
ort.env.wasm.numThreads = 1;
ort.env.logLevel = 'error';

export const MODEL = new URL('../../../client/sight/reader.onnx', import.meta.url);

export interface Reader {
  name: string;
  read(frame: Frame, box: Box): Promise<Sight>;
}

/** Our own network, as the page runs it. */
export async function ownReader(file: URL | string = MODEL): Promise<Reader> {
  const session = await ort.InferenceSession.create(new Uint8Array(readFileSync(file)));
  return {
    name: 'own network',
    async read(frame, box) {
      const { pixels } = patchOf(frame, box);
      const patch = new ort.Tensor('float32', pixels, [1, 1, PATCH_HEIGHT, PATCH_WIDTH]);
      const { scores } = await session.run({ patch });
      return sightOf(scores?.data as Float32Array);
    },
  };
}

/** So high is a box made for it: characters of about 60 pixels. */
const TALL = 100;

/** tesseract.js with its English data, told that there is one line of a number's characters. Dark on light, as it likes it. */
export async function tesseractReader(): Promise<Reader> {
  const data = join(require.resolve('@tesseract.js-data/eng/package.json'), '..');
  const worker = await createWorker('eng', 1, {
    langPath: join(data, '4.0.0_best_int'),
    cacheMethod: 'none',
  });
  await worker.setParameters({
    tessedit_char_whitelist: '0123456789.-',
    tessedit_pageseg_mode: PSM.SINGLE_LINE,
  });
  return {
    name: 'tesseract.js',
    async read(frame, box) {
      const { data: found } = await worker.recognize(await picture(frame, box));
      return { text: found.text.trim().replaceAll(' ', ''), belief: found.confidence / 100 };
    },
  };
}

async function picture(frame: Frame, box: Box): Promise<Buffer> {
  const small = createCanvas(box.width, box.height);
  const ctx = small.getContext('2d');
  const image = ctx.createImageData(box.width, box.height);
  const greys = Array.from({ length: box.width * box.height }, (_, i) =>
    greyAt(frame, box.x + (i % box.width), box.y + Math.floor(i / box.width)),
  );
  const sorted = [...greys].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
  const [dark, light] = [at(0.02), at(0.98)];
  // The ground is more than the characters: it is on the side of the middle.
  const shines = at(0.5) < (dark + light) / 2;
  greys.forEach((grey, i) => {
    const share = Math.min(1, Math.max(0, (grey - dark) / Math.max(1, light - dark)));
    const v = 255 * (shines ? 1 - share : share);
    image.data.set([v, v, v, 255], i * 4);
  });
  ctx.putImageData(image, 0, 0);
  const large = createCanvas(Math.round((box.width * TALL) / box.height), TALL);
  large.getContext('2d').drawImage(small, 0, 0, large.width, large.height);
  return large.encode('png');
}
