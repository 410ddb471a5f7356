import { mkdtempSync, readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { DEFAULT_MODEL_FOLDER } from '../../server/process/program.ts';
import { readSound } from '../../server/speech/sound-file.ts';
import { openTranscriber } from '../../server/speech/start.ts';
import { SpeechTimeout, SpeechUnavailable, type Transcriber } from '../../server/speech/transcriber.ts';
import { decide } from '../../src/conversation/decide.ts';
import { spokenFile } from '../sounds/spoken.ts';

const folder = mkdtempSync(join(tmpdir(), 'ladderline-speech-'));

/** A synthetic voice saying the words, 16 kHz. */
const voice = (words: string): Promise<Float32Array> => readSound(spokenFile(words));

describe('the speech engine', () => {
  let engine: Transcriber;

  beforeAll(async () => {
    const opened = openTranscriber(DEFAULT_MODEL_FOLDER);
    engine = opened;
    await opened.ready;
  }, 60_000);
  afterAll(() => engine.close());

  it.each([
    ['one forty two', { kind: 'reading', reading: { kind: 'value', value: 142 } }],
    ['fifteen', { kind: 'reading', reading: { kind: 'value', value: 15 } }],
    ['fifty', { kind: 'reading', reading: { kind: 'value', value: 50 } }],
    ['no signal', { kind: 'reading', reading: { kind: 'none' } }],
    ['saturated', { kind: 'reading', reading: { kind: 'saturated' } }],
    ['say again', { kind: 'repeat' }],
  ])('hears "%s" and takes it', async (words, intent) => {
    const { text, confidence, alternatives } = await engine.transcribe(await voice(words));
    expect(decide({ via: 'voice', text, confidence, alternatives })).toEqual({
      kind: 'taken',
      intents: [intent],
    });
  });

  it.each(['could somebody bring me a sandwich', 'my brother plays football on sunday'])(
    'takes nothing from talk that is not ours: "%s"',
    async (words) => {
      const { text, confidence, alternatives } = await engine.transcribe(await voice(words));
      expect(decide({ via: 'voice', text, confidence, alternatives }).kind).not.toBe('taken');
    },
  );

  it('hears nothing in silence, and nothing in white noise', async () => {
    const silence = await engine.transcribe(new Float32Array(16_000));
    let seed = 1;
    const noise = Float32Array.from({ length: 32_000 }, () => {
      seed = (seed * 48_271) % 2_147_483_647;
      return 0.2 * (seed / 1_073_741_823.5 - 1);
    });
    expect(silence.text).toBe('');
    expect((await engine.transcribe(noise)).text).toBe('');
  });

  it('hears nothing in the hum of a fan that is cut out of the middle', async () => {
    for (const pole of [0.8, 0.9, 0.95]) {
      let seed = 11;
      let low = 0;
      const hum = Float32Array.from({ length: 32_000 }, () => {
        seed = (seed * 48_271) % 2_147_483_647;
        low = pole * low + 0.1 * (seed / 1_073_741_823.5 - 1);
        return low;
      });
      expect((await engine.transcribe(hum)).text).toBe('');
    }
  });

  it('takes no sound at all as silence', async () => {
    expect((await engine.transcribe(new Float32Array(0))).text).toBe('');
  });

  it('answers overlapping calls each with its own', async () => {
    const [a, b] = await Promise.all(
      ['stop', 'done'].map(async (word) => engine.transcribe(await voice(word))),
    );
    expect([a?.text, b?.text]).toEqual(['stop', 'done']);
  });

  it('gives alternatives whose confidences sum to no more than one', async () => {
    const { alternatives } = await engine.transcribe(await voice('nineteen'));
    expect(alternatives.reduce((sum, { confidence }) => sum + confidence, 0)).toBeLessThanOrEqual(1 + 1e-9);
    expect(alternatives.length).toBeGreaterThan(0);
  });

  it('rejects with a timeout when the answer takes too long', async () => {
    const hasty = openTranscriber(DEFAULT_MODEL_FOLDER, { withinMs: 1 });
    await expect(hasty.transcribe(new Float32Array(16_000))).rejects.toBeInstanceOf(SpeechTimeout);
    await hasty.close();
  });

  it('says what is missing when the folder holds no model', async () => {
    const none = openTranscriber(folder);
    await expect(none.transcribe(new Float32Array(16_000))).rejects.toBeInstanceOf(SpeechUnavailable);
    await expect(none.ready).rejects.toThrow(/no speech model in .*config\.json/);
    await none.close();
  });

  it('rejects what is under way when it is closed', async () => {
    const closing = openTranscriber(DEFAULT_MODEL_FOLDER);
    const asked = closing.transcribe(new Float32Array(16_000));
    await closing.close();
    await expect(asked).rejects.toBeInstanceOf(SpeechUnavailable);
  });
});

it('the model is small enough to ship: at most 10 MB', () => {
  expect(readFileSync(join(DEFAULT_MODEL_FOLDER, 'onnx', 'model_quantized.onnx')).length).toBeLessThan(
    10_000_000,
  );
});

describe('sound files', () => {
  it('reads a WAV file of another rate, in stereo, as 16 kHz mono', async () => {
    const wav = new wavefile.WaveFile();
    const tone = Float32Array.from(
      { length: 44_100 },
      (_, i) => 0.5 * Math.sin((2 * Math.PI * 440 * i) / 44_100),
    );
    wav.fromScratch(2, 44_100, '32f', [tone, tone]);
    const file = join(folder, 'stereo.wav');
    await writeFile(file, wav.toBuffer());
    const samples = await readSound(file);
    expect(Math.abs(samples.length - 16_000)).toBeLessThan(5);
    expect(Math.max(...samples)).toBeCloseTo(0.5, 2);
  });

  it('says so when a file is no sound', async () => {
    const file = join(folder, 'text.wav');
    await writeFile(file, 'not a sound');
    await expect(readSound(file)).rejects.toThrow(/neither a WAV nor a FLAC/);
  });
});
