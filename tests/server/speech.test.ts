import { describe, expect, it } from 'vitest';
import { toSamples } from '../../server/speech/service.ts';
import {
  SpeechUnavailable,
  type TranscribeOptions,
  type Transcriber,
} from '../../server/speech/transcriber.ts';
import { MAX_TALK_MS, SAMPLE_RATE } from '../../src/protocol/socket.ts';
import { pause, serve } from './house.ts';
import { bothIn, newId, Phone } from './phone.ts';

const BYTES_PER_MS = (SAMPLE_RATE * 2) / 1000;

/** Sound of so many milliseconds, a ramp. */
const sound = (ms: number): Buffer => {
  const pcm = Buffer.alloc(ms * BYTES_PER_MS);
  for (let i = 0; i < pcm.length; i += 2) pcm.writeInt16LE((i % 20_000) - 10_000, i);
  return pcm;
};

/** A speech engine that hears what the test says, and remembers what it was given. */
function engine(hear: (samples: Float32Array) => Promise<string> | string) {
  const given: Float32Array[] = [];
  const expected: TranscribeOptions['expect'][] = [];
  const transcriber: Transcriber = {
    name: 'test engine',
    async transcribe(samples, options) {
      given.push(samples);
      expected.push(options?.expect);
      const text = await hear(samples);
      return { text, confidence: 0.99, alternatives: [{ text: `${text}?`, confidence: 0.01 }], ms: 1 };
    },
    async close() {},
  };
  return { transcriber, given, expected };
}

function talk(phone: Phone, ms: number, id = newId()): string {
  phone.send({ t: 'talk', id });
  const pcm = sound(ms);
  for (let at = 0; at < pcm.length; at += 3_200) phone.raw(pcm.subarray(at, at + 3_200));
  phone.send({ t: 'talk-end', id });
  return id;
}

const stages = (phone: Phone, id: string) =>
  phone.all('hearing').flatMap((m) => (m.id === id ? [m.stage] : []));

describe('speech', () => {
  it('R23: what was heard is handled like typed words, with its confidence and alternatives', async () => {
    const { transcriber, given } = engine(() => 'forty two');
    const { url } = await serve({ transcriber });
    const { panel, emitter } = await bothIn(url);
    expect(panel.all('welcome')[0]?.speech).toEqual({ name: 'test engine', ready: true });
    const id = talk(panel, 700);
    const seq = await panel.ack(id);
    const said = await emitter.entry((e) => e.seq === seq);
    expect(said).toMatchObject({ ref: id, actor: 'panel' });
    expect(said.fact).toEqual({
      type: 'said',
      seat: 'panel',
      via: 'voice',
      text: 'forty two',
      confidence: 0.99,
      alternatives: [{ text: 'forty two?', confidence: 0.01 }],
    });
    await emitter.entry((e) => e.fact.type === 'reading');
    expect(given[0]).toEqual(toSamples(sound(700)));
    await emitter.next('hearing', (m) => m.stage === 'done');
    expect(stages(emitter, id)).toEqual(['listening', 'working', 'done']);
  });

  it('R23: the speech engine is told which readings are likely', async () => {
    const { transcriber, expected } = engine(() => 'forty two');
    const { url } = await serve({ transcriber });
    const { panel } = await bothIn(url);
    await panel.ack(talk(panel, 300));
    await panel.ack(talk(panel, 300));
    const [first, second] = expected;
    expect(second?.low).toBeGreaterThan(first?.low as number);
    expect(second?.low).toBeLessThan(42);
    expect(second?.high).toBeGreaterThan(42);
  });

  it('R23: sound is 16-bit little-endian, full scale at one', () => {
    const samples = toSamples(Buffer.from([0x00, 0x80, 0xff, 0x7f, 0x00, 0x00, 0x00, 0x40, 0x99]));
    expect([...samples]).toEqual([-1, 32767 / 32768, 0, 0.5]);
  });

  it('R23: a talk that is sent again gets the same acknowledgement, and is not listened to again', async () => {
    const { transcriber, given } = engine(() => 'forty two');
    const { url } = await serve({ transcriber });
    const { panel } = await bothIn(url);
    const id = talk(panel, 300);
    const seq = await panel.ack(id);
    panel.heard.length = 0;
    talk(panel, 300, id);
    expect(await panel.ack(id)).toBe(seq);
    await panel.ack(panel.remark('after'));
    expect(given).toHaveLength(1);
    expect(panel.all('refused')).toEqual([]);
  });

  it('R23: a talk that is sent again while the engine works on it is heard once, and acknowledged on the new connection', async () => {
    let finish: (text: string) => void = () => {};
    const { transcriber, given } = engine(
      () =>
        new Promise<string>((resolve) => {
          finish = resolve;
        }),
    );
    const { url } = await serve({ transcriber });
    const { job, panel } = await bothIn(url);
    const id = talk(panel, 300);
    await panel.next('hearing', (m) => m.stage === 'working');
    panel.socket.terminate();
    const again = await Phone.at(url, job.token);
    talk(again, 300, id);
    await again.ack(again.remark('through by now'));
    finish('forty two');
    await again.ack(id);
    expect(given).toHaveLength(1);
    await again.entry((e) => e.fact.type === 'said');
    expect(again.entries.filter((e) => e.fact.type === 'said')).toHaveLength(1);
  });

  it('R23: other words do not wait for the speech engine', async () => {
    const { transcriber } = engine(() => new Promise<string>(() => {}));
    const { url } = await serve({ transcriber });
    const { panel } = await bothIn(url);
    talk(panel, 300);
    await panel.ack(panel.say('forty two'));
  });

  it('R23: a dropped talk leaves nothing', async () => {
    const { transcriber, given } = engine(() => 'forty two');
    const { url } = await serve({ transcriber });
    const { panel } = await bothIn(url);
    const id = panel.send({ t: 'talk' });
    panel.raw(sound(100));
    panel.send({ t: 'talk-drop', id });
    panel.raw(sound(100));
    await panel.ack(panel.remark('after'));
    expect(given).toEqual([]);
    expect(panel.entries.filter((e) => e.ref === id || e.fact.type === 'unheard')).toEqual([]);
  });

  it('R23: the end of a talk that was not opened here is refused', async () => {
    const { url } = await serve(engine(() => ''));
    const { panel } = await bothIn(url);
    expect((await panel.refusal(panel.send({ t: 'talk-end' }))).reason).toBe('bad-message');
  });

  it('R24: without a speech engine a talk is refused, and typing works', async () => {
    const { url } = await serve();
    const { panel } = await bothIn(url);
    expect(panel.all('welcome')[0]?.speech).toEqual({ name: 'off', ready: false });
    const id = talk(panel, 100);
    expect((await panel.refusal(id)).reason).toBe('speech-unavailable');
    await panel.ack(panel.say('forty two'));
  });

  it('R24: everyone is told when the speech engine has loaded or has failed', async () => {
    for (const loads of [true, false]) {
      let loaded: () => void = () => {};
      let failed: (error: Error) => void = () => {};
      const ready = new Promise<void>((resolve, reject) => {
        loaded = resolve;
        failed = reject;
      });
      const { url } = await serve({ transcriber: { ...engine(() => 'forty two').transcriber, ready } });
      const { panel } = await bothIn(url);
      expect(panel.all('welcome')[0]?.speech.ready).toBe(false);
      if (loads) loaded();
      else failed(new SpeechUnavailable('There is no speech model.'));
      if (loads) await panel.next('speech', (m) => m.speech.ready);
      await panel.ack(panel.remark('typing works'));
      expect(panel.all('speech').map((m) => m.speech.ready)).toEqual(loads ? [true] : []);
    }
  });

  it('R24: sound without words is logged as unheard', async () => {
    const { url } = await serve(engine(() => '  '));
    const { panel } = await bothIn(url);
    const id = talk(panel, 100);
    const seq = await panel.ack(id);
    expect((await panel.entry((e) => e.seq === seq)).fact).toEqual({
      type: 'unheard',
      seat: 'panel',
      why: 'silence',
    });
    await panel.next('hearing', (m) => m.stage === 'failed');
  });

  it.each([
    ['failed', () => Promise.reject(new Error('out of memory'))],
    ['unavailable', () => Promise.reject(new SpeechUnavailable('The speech engine has ended.'))],
    ['timeout', () => new Promise<string>(() => {})],
  ])(
    'R24: when the engine answers with %s, that is logged, told to all, and typing goes on',
    async (why, hear) => {
      let sick = true;
      const { transcriber } = engine(() => (sick ? hear() : 'well again'));
      const { url } = await serve({ transcriber, limits: { transcribeWithinMs: 100, speechRetryMs: 300 } });
      const { panel, emitter } = await bothIn(url);
      const seq = await panel.ack(talk(panel, 100));
      expect((await emitter.entry((e) => e.seq === seq)).fact).toEqual({
        type: 'unheard',
        seat: 'panel',
        why,
      });
      expect((await emitter.next('speech')).speech.ready).toBe(false);
      await panel.ack(panel.say('forty two'));
      sick = false;
      await emitter.next('speech', (m) => m.speech.ready);
    },
  );

  it('R25: a talk over the limit is cut short and logged as cut short, and its end is acknowledged', async () => {
    const { transcriber, given } = engine(() => 'forty two');
    const { url } = await serve({ transcriber, limits: { sound: { burst: 1e9, perSecond: 1 } } });
    const { panel } = await bothIn(url);
    const seq = await panel.ack(talk(panel, MAX_TALK_MS + 200));
    expect((await panel.entry((e) => e.seq === seq)).fact).toEqual({
      type: 'unheard',
      seat: 'panel',
      why: 'cut-short',
    });
    await panel.ack(panel.remark('after'));
    expect(given).toEqual([]);
  });

  it('R25: a talk as long as the limit is taken', async () => {
    const { transcriber, given } = engine(() => 'forty two');
    const { url } = await serve({ transcriber });
    const { panel } = await bothIn(url);
    await panel.ack(talk(panel, MAX_TALK_MS));
    expect(given[0]).toHaveLength((MAX_TALK_MS / 1000) * SAMPLE_RATE);
  });

  it('R25: sound faster than any microphone, or of half samples, is refused', async () => {
    const { transcriber } = engine(() => 'forty two');
    const { url } = await serve({ transcriber, limits: { sound: { burst: 10_000, perSecond: 1 } } });
    const { panel } = await bothIn(url);
    const half = panel.send({ t: 'talk' });
    panel.raw(Buffer.alloc(321));
    expect((await panel.refusal(half)).reason).toBe('bad-message');
    const fast = talk(panel, 1_000);
    expect((await panel.refusal(fast)).reason).toBe('too-fast');
    await panel.ack(panel.say('forty two'));
  });

  it('R26: a talk that lost its line is logged as cut short, and can be sent again, whole', async () => {
    const { transcriber } = engine(() => 'forty two');
    const { url } = await serve({ transcriber });
    const { job, panel, emitter } = await bothIn(url);
    const id = panel.send({ t: 'talk' });
    panel.raw(sound(200));
    await emitter.next('hearing', (m) => m.stage === 'listening');
    panel.socket.terminate();
    const cut = await emitter.entry((e) => e.fact.type === 'unheard');
    expect(cut.fact).toEqual({ type: 'unheard', seat: 'panel', why: 'cut-short' });
    expect(cut.ref).toBeUndefined();
    const again = await Phone.at(url, job.token);
    talk(again, 400, id);
    const seq = await again.ack(id);
    expect((await emitter.entry((e) => e.seq === seq)).fact.type).toBe('said');
  });

  it('R24: a talk in progress does not keep the server from stopping', async () => {
    const { transcriber } = engine(() => new Promise<string>(() => {}));
    const { url } = await serve({ transcriber });
    const { panel } = await bothIn(url);
    talk(panel, 100);
    await panel.next('hearing', (m) => m.stage === 'working');
    await pause(10);
  });
});
