import { mkdtempSync, readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import wavefile from 'wavefile';
import { DEFAULT_MODEL_FOLDER } from '../../server/process/program.ts';
import { speechAt } from '../../server/speech/elsewhere.ts';
import { serveSpeech } from '../../server/speech/serve.ts';
import type { SpeechEngine } from '../../server/speech/service.ts';
import { readSound } from '../../server/speech/sound-file.ts';
import { openTranscriber } from '../../server/speech/start.ts';
import { SpeechTimeout, SpeechUnavailable, type Transcriber } from '../../server/speech/transcriber.ts';
import { decide } from '../../src/conversation/decide.ts';
import { TO_READ } from '../../src/speech/to-read.ts';
import { spokenFile } from '../sounds/spoken.ts';

const folder = mkdtempSync(join(tmpdir(), 'ladderline-speech-'));

/** A synthetic voice saying the words, 16 kHz. */
const voice = (words: string): Promise<Float32Array> => readSound(spokenFile(words));

/** The engine of a server, and one that is a service of its own, as the server has it. */
const ENGINES: readonly [string, () => Promise<SpeechEngine>][] = [
  ['the speech engine', async () => openTranscriber(DEFAULT_MODEL_FOLDER)],
  [
    'the speech service',
    async () => {
      const password = 'of the services';
      const here = { host: '127.0.0.1', port: 0, password };
      const service = await serveSpeech(openTranscriber(DEFAULT_MODEL_FOLDER), here);
      const engine = speechAt([service.url], { password });
      return { ...engine, close: async () => void (await Promise.all([engine.close(), service.close()])) };
    },
  ],
];

describe.each(ENGINES)('%s', (_name, open) => {
  let engine: SpeechEngine;

  beforeAll(async () => {
    engine = await open();
    await engine.ready;
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

  /** The digits read one after the other, with half a second between them. */
  const read = async (digits: readonly string[]): Promise<Float32Array> => {
    const sounds = await Promise.all(digits.map(voice));
    const pause = new Float32Array(8_000);
    return Float32Array.from(sounds.flatMap((sound) => [...pause, ...sound]));
  };

  it('learns of a voice from ten digits, and hears by it', async () => {
    const known = await engine.learn?.(await read(TO_READ));
    expect(known?.shift).toEqual(expect.any(Number));
    const sound = await voice('one forty two');
    const [plain, careful] = [
      await engine.transcribe(sound),
      await engine.transcribe(sound, { voice: { shift: -2 } }),
    ];
    expect(careful.text).toBe('one forty two');
    expect(careful.confidence).toBeLessThan(plain.confidence);
  });

  it.each([
    ['in another order', [...TO_READ].reverse()],
    ['with one left out', TO_READ.slice(1)],
    ['that are other words', TO_READ.map(() => 'stop')],
  ])('learns nothing from digits %s', async (_, said) => {
    expect(await engine.learn?.(await read(said))).toBeUndefined();
  });

  it('learns nothing from no sound, nor from noise', async () => {
    expect(await engine.learn?.(new Float32Array(0))).toBeUndefined();
    expect(
      await engine.learn?.(Float32Array.from({ length: 80_000 }, (_, i) => 0.2 * Math.sin(i * i))),
    ).toBeUndefined();
  });

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
});

describe('the speech engine', () => {
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

describe('a server whose speech services are elsewhere', () => {
  const silence = new Float32Array(16_000);
  const heard = { text: 'stop', confidence: 1, alternatives: [{ text: 'stop', confidence: 1 }], ms: 1 };
  const engineThat = (transcribe: Transcriber['transcribe']): SpeechEngine => ({
    name: 'stand-in',
    transcribe,
    close: async () => {},
  });
  const serve = async (engine: SpeechEngine, password?: string) => {
    const service = await serveSpeech(engine, { host: '127.0.0.1', port: 0, password });
    onTestFinished(() => service.close());
    return service.url;
  };

  it('gives the samples and what is expected as they are', async () => {
    const got: unknown[] = [];
    const url = await serve(
      engineThat(async (samples, options) => {
        got.push([...samples], options);
        return heard;
      }),
    );
    const options = {
      expect: { low: 10, high: 90.5, steps: { from: 0, by: 0.5 }, asked: ['reading' as const] },
      voice: { shift: -0.5 },
    };
    const samples = Float32Array.of(0.25, -1, 0.5).subarray(1);
    expect(await speechAt([url]).transcribe(samples, options)).toMatchObject({ text: 'stop' });
    expect(got).toEqual([[-1, 0.5], options]);
  });

  it('asks the next one where the first does not answer, and says which when none does', async () => {
    const [away, url] = ['http://127.0.0.1:9', await serve(engineThat(async () => heard))];
    expect((await speechAt([away, url]).transcribe(silence)).text).toBe('stop');
    const none = speechAt([away]);
    await expect(none.ready).rejects.toThrow(/127\.0\.0\.1:9 does not answer \(.+\): see whether it runs/);
    await expect(none.transcribe(silence)).rejects.toBeInstanceOf(SpeechUnavailable);
  });

  it('asks the one that has the least to do', async () => {
    const asked = [0, 0];
    const slow = (n: 0 | 1) =>
      serve(
        engineThat(async () => {
          asked[n] = (asked[n] ?? 0) + 1;
          await setTimeout(50);
          return heard;
        }),
      );
    const engine = speechAt([await slow(0), await slow(1)]);
    await Promise.all(Array.from({ length: 6 }, () => engine.transcribe(silence)));
    expect(asked).toEqual([3, 3]);
  });

  it('is let in with the password alone', async () => {
    const url = await serve(
      engineThat(async () => heard),
      'right',
    );
    for (const password of [undefined, 'wrong', 'rightly'])
      await expect(speechAt([url], { password }).transcribe(silence)).rejects.toThrow(/password is wrong/);
    expect((await speechAt([url], { password: 'right' }).transcribe(silence)).text).toBe('stop');
  });

  it('tells a service that is too slow from one that is not there', async () => {
    const never = await serve(engineThat(() => new Promise(() => {})));
    await expect(speechAt([never], { withinMs: 50 }).transcribe(silence)).rejects.toBeInstanceOf(
      SpeechTimeout,
    );
    const late = await serve(engineThat(() => Promise.reject(new SpeechTimeout('late'))));
    await expect(speechAt([late]).transcribe(silence)).rejects.toBeInstanceOf(SpeechTimeout);
  });

  it.each([
    ['no JSON', 'sound', 400],
    ['sound that is none', JSON.stringify({ sound: '***' }), 400],
    ['too much', JSON.stringify({ sound: 'A'.repeat(12_000_000) }), 413],
  ])('a service answers what it cannot take (%s) with what it takes', async (_what, body, status) => {
    const url = await serve(engineThat(async () => heard));
    const answer = await fetch(`${url}/hear`, { method: 'POST', body });
    expect(answer.status).toBe(status);
    expect(await answer.json()).toEqual({ error: expect.any(String) });
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
