import { mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { loadRecogniser, type Recogniser } from '../../server/speech/recogniser.ts';
import { decide } from '../../src/conversation/decide.ts';
import { fromWritten, MOST_BELIEVED } from '../../src/speech/written.ts';
import { END, START, writeWhisper } from './whisper-folder.ts';

const newFolder = (): string => join(mkdtempSync(join(tmpdir(), 'ladderline-whisper-')), 'model');
const tone = Float32Array.from(
  { length: 16_000 },
  (_, i) => 0.3 * Math.sin((2 * Math.PI * 300 * i) / 16_000),
);

const reading = (value: number) => [{ kind: 'reading', reading: { kind: 'value', value } }];

describe('a model in the layout of Whisper', () => {
  const folder = newFolder();
  let model: Recogniser;
  beforeAll(async () => {
    writeWhisper(folder, {
      [START]: { one: 1 },
      one: { 'forty-two.': 0.7, 'forty-three.': 0.3 },
      'forty-two.': { [END]: 1 },
      'forty-three.': { [END]: 1 },
    });
    model = await loadRecogniser(folder);
  });

  it('is asked about, with its other texts, each as likely as the model says', async () => {
    const heard = await model.hear(tone);
    expect(heard.text).toBe('one forty-two.');
    expect(heard.confidence).toBeCloseTo(0.7 * MOST_BELIEVED, 3);
    expect(heard.alternatives[1]?.text).toBe('one forty-three.');
    expect(heard.alternatives[1]?.confidence).toBeCloseTo(0.3 * MOST_BELIEVED, 3);
    expect(decide({ via: 'voice', ...heard })).toEqual({
      kind: 'doubtful',
      options: [reading(142), reading(143)],
    });
  });

  it('hears nothing when it writes nothing', async () => {
    expect((await model.hear(new Float32Array(16_000))).text).toBe('');
    expect((await model.hear(new Float32Array(0))).text).toBe('');
  });

  it('says which of its files is missing', async () => {
    const part = newFolder();
    writeWhisper(part, { [START]: { one: 1 }, one: { [END]: 1 } });
    rmSync(join(part, 'onnx', 'decoder_model_merged_quantized.onnx'));
    await expect(loadRecogniser(part)).rejects.toThrow(/decoder_model_merged_quantized\.onnx missing/);
  });

  it('can have full weights instead of weights in 8 bits', async () => {
    const full = newFolder();
    writeWhisper(full, { [START]: { done: 1 }, done: { [END]: 1 } });
    for (const graph of ['encoder_model', 'decoder_model_merged']) {
      renameSync(join(full, 'onnx', `${graph}_quantized.onnx`), join(full, 'onnx', `${graph}.onnx`));
    }
    expect((await (await loadRecogniser(full)).hear(tone)).text).toBe('done');
  });
});

describe('words without a measured confidence', () => {
  const sure = (text: string) => decide({ via: 'voice', ...fromWritten([{ text, probability: 1 }]) });

  it('are asked about, however sure the model is', () => {
    expect(sure('142')).toEqual({ kind: 'doubtful', options: [reading(142)] });
    expect(sure('Done.').kind).toBe('doubtful');
  });

  it('are taken when they only make things safer', () => {
    expect(sure('Stop!')).toEqual({ kind: 'taken', intents: [{ kind: 'stop' }] });
  });

  it('must be said again when they are not a sentence of ours', () => {
    expect(sure('Thanks for watching.').kind).toBe('unclear');
  });
});

it('a folder whose configuration cannot be read says so', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-whisper-'));
  writeFileSync(join(folder, 'config.json'), 'no JSON');
  await expect(loadRecogniser(folder)).rejects.toThrow(/config\.json cannot be read/);
});
