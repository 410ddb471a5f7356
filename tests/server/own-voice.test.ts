import { describe, expect, it } from 'vitest';
import type { TranscribeOptions, Transcriber } from '../../server/speech/transcriber.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { MAX_TALK_MS, SAMPLE_RATE } from '../../src/protocol/socket.ts';
import { serve } from './house.ts';
import { bothIn, newId, type Phone } from './phone.ts';

const BYTES_PER_MS = (SAMPLE_RATE * 2) / 1000;

/** An engine that learns what the test says, and remembers with which voice it was asked to hear. */
function engine(learn?: Transcriber['learn']) {
  const voices: TranscribeOptions['voice'][] = [];
  const transcriber: Transcriber = {
    name: 'test engine',
    async transcribe(_, options) {
      voices.push(options?.voice);
      return { text: 'forty two', confidence: 0.99, alternatives: [], ms: 1 };
    },
    ...(learn && { learn }),
    async close() {},
  };
  return { transcriber, voices };
}

/** A talk or a reading of so many milliseconds of nothing. */
function speak(phone: Phone, opening: Parameters<Phone['send']>[0], ms = 300): string {
  const id = phone.send(opening);
  const pcm = Buffer.alloc(ms * BYTES_PER_MS);
  for (let at = 0; at < pcm.length; at += 32_000) phone.raw(pcm.subarray(at, at + 32_000));
  phone.send({ t: 'talk-end', id });
  return id;
}

describe('R150: ten digits, read once', () => {
  it('are told to the phone of who read them alone, and come back with each talk', async () => {
    const { transcriber, voices } = engine(async () => ({ shift: -0.5 }));
    const { url } = await serve({ transcriber });
    const { panel, emitter } = await bothIn(url);
    const id = speak(panel, { t: 'read' });
    const { voice } = await panel.next('voice', (m) => m.id === id);
    expect(voice).toEqual({ shift: -0.5 });
    await emitter.next('hearing', (m) => m.id === id && m.stage === 'done');
    await panel.ack(speak(panel, { t: 'talk', ...(voice && { voice }) }));
    await emitter.ack(speak(emitter, { t: 'talk' }));
    expect(voices).toEqual([{ shift: -0.5 }, undefined]);
    expect(emitter.all('voice')).toEqual([]);
  });

  it('leave nothing in the log and beside it, also where the sound of what is said is kept', async () => {
    const store = new MemoryStore();
    const { transcriber } = engine(async () => ({ shift: -0.5 }));
    const { url } = await serve({ store, transcriber });
    const { job, panel } = await bothIn(url);
    const wish = newId();
    panel.send({ t: 'sound', id: wish, days: 30 });
    await panel.ack(wish);
    const before = await store.read(job.job, -1, 10_000);
    const id = speak(panel, { t: 'read' });
    await panel.next('hearing', (m) => m.id === id && m.stage === 'done');
    expect(await store.read(job.job, -1, 10_000)).toEqual(before);
    expect(await store.enclosed()).toEqual([]);
    const seq = await panel.ack(speak(panel, { t: 'talk', voice: { shift: -0.5 } }));
    const after = await store.read(job.job, -1, 10_000);
    expect(after[seq]?.fact).toMatchObject({ type: 'said', text: 'forty two' });
    expect(JSON.stringify(after)).not.toContain('shift');
  });

  it.each<[string, Transcriber['learn'] | undefined, string]>([
    ['that were not heard as such', async () => undefined, 'done'],
    ['on which the engine failed', () => Promise.reject(new Error('no more memory')), 'failed'],
    ['to an engine that learns nothing', undefined, 'failed'],
  ])('%s say nothing of the voice, and the phone is told so', async (_, learn, stage) => {
    const { transcriber } = engine(learn);
    const { url } = await serve({ transcriber });
    const { panel } = await bothIn(url);
    const id = speak(panel, { t: 'read' });
    expect(await panel.next('voice', (m) => m.id === id)).toEqual({ t: 'voice', id });
    await panel.next('hearing', (m) => m.id === id && m.stage === stage);
    // Whoever cannot be learnt of is heard as before.
    await panel.ack(speak(panel, { t: 'talk' }));
    expect(panel.all('speech')).toEqual([]);
  });

  it('that take too long are cut short, and their end is no fault', async () => {
    const { transcriber } = engine(async () => ({ shift: -0.5 }));
    const { url } = await serve({ transcriber, limits: { sound: { burst: 1e9, perSecond: 1 } } });
    const { panel } = await bothIn(url);
    const id = speak(panel, { t: 'read' }, MAX_TALK_MS + 1_200);
    expect(await panel.next('voice', (m) => m.id === id)).toEqual({ t: 'voice', id });
    await panel.ack(panel.remark('after'));
    expect(panel.all('refused')).toEqual([]);
  });

  it('that lost their line are not logged', async () => {
    const { transcriber } = engine(async () => ({ shift: -0.5 }));
    const { url } = await serve({ transcriber });
    const { panel, emitter } = await bothIn(url);
    panel.send({ t: 'read' });
    await emitter.next('hearing', (m) => m.stage === 'listening');
    panel.socket.terminate();
    await emitter.next('hearing', (m) => m.stage === 'failed');
    await emitter.ack(emitter.remark('after'));
    expect(emitter.all('entries').flatMap((m) => m.entries.map(({ fact }) => fact.type))).not.toContain(
      'unheard',
    );
  });

  it.each([
    [-2.001, false],
    [-2, true],
    [0, true],
    [0.001, false],
  ])(
    'lower the belief within bounds, and never raise it: a talk with a shift of %d is heard: %s',
    async (shift, isHeard) => {
      const { transcriber, voices } = engine();
      const { url } = await serve({ transcriber });
      const { panel } = await bothIn(url);
      const id = speak(panel, { t: 'talk', voice: { shift } });
      if (isHeard) await panel.ack(id);
      else expect((await panel.refusal(id)).reason).toBe('bad-message');
      expect(voices).toEqual(isHeard ? [{ shift }] : []);
    },
  );
});
