import { createHash } from 'node:crypto';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { pino } from 'pino';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import wavefile from 'wavefile';
import { DEFAULT_MODEL_FOLDER, ROOT_FOLDER } from '../../server/process/program.ts';
import { keepDeleting } from '../../server/sounds/deleting.ts';
import { compressed } from '../../server/sounds/kept-sound.ts';
import { deleteOldSounds } from '../../server/sounds/sounds.ts';
import { loadRecogniser } from '../../server/speech/recogniser.ts';
import { readSound } from '../../server/speech/sound-file.ts';
import type { Transcriber } from '../../server/speech/transcriber.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { readArchive } from '../../src/log/archive.ts';
import type { FactOf, Seat } from '../../src/model/facts.ts';
import { SOUND_BYTES_MOST, SOUND_DAYS_MOST } from '../../src/model/sound.ts';
import { SOUND_NOT_KEPT, SOUND_OVER, soundKeptText } from '../../src/phrases/sound.ts';
import { ClientMessage, MAX_TALK_MS, SAMPLE_RATE } from '../../src/protocol/socket.ts';
import { checkSounds } from '../../src/verify/sounds.ts';
import { verified } from '../verify/checked.ts';
import { serve } from './house.ts';
import { ManualClock } from './manual-clock.ts';
import { bothIn, join as joinJob, newId, type Phone } from './phone.ts';

const DAY_MS = 24 * 3600 * 1000;

/** A tone of 400 Hz at half of full scale, as it comes over the wire. */
function tone(ms: number, hz = 400): Buffer {
  const pcm = Buffer.alloc(((SAMPLE_RATE * ms) / 1000) * 2);
  for (let i = 0; i < pcm.length / 2; i++)
    pcm.writeInt16LE(Math.round(16_000 * Math.sin((2 * Math.PI * hz * i) / SAMPLE_RATE)), 2 * i);
  return pcm;
}

const hears = (text: string): Transcriber => ({
  name: 'test engine',
  transcribe: async () => ({ text, confidence: 0.99, alternatives: [{ text, confidence: 0.99 }], ms: 1 }),
  async close() {},
});

async function crew(text = 'forty two') {
  const store = new MemoryStore();
  const clock = new ManualClock();
  const { url } = await serve({ store, clock, transcriber: hears(text) });
  const { job, panel, emitter, emitterToken } = await bothIn(url);
  const entries = () => store.read(job.job, -1, 10_000);
  const listen = (seq: number, token = job.watch) =>
    fetch(`${url}/api/sound?seq=${seq}`, { headers: { authorization: `Bearer ${token}` } });
  return { store, clock, url, job, panel, emitter, emitterToken, entries, listen };
}

async function talk(phone: Phone, pcm: Buffer): Promise<number> {
  const id = newId();
  phone.send({ t: 'talk', id });
  for (let at = 0; at < pcm.length; at += 3_200) phone.raw(pcm.subarray(at, at + 3_200));
  phone.send({ t: 'talk-end', id });
  return phone.ack(id);
}

async function keep(phone: Phone, days: number): Promise<number> {
  const id = newId();
  phone.send({ t: 'sound', id, days });
  return phone.ack(id);
}

const said = async (of: Awaited<ReturnType<typeof crew>>, seq: number) =>
  (await of.entries())[seq]?.fact as FactOf<'said'>;

describe('R95: the sound of what is said', () => {
  it('is not kept unless the crew wants it', async () => {
    const house = await crew();
    const seq = await talk(house.panel, tone(700));
    expect((await said(house, seq)).sound).toBeUndefined();
    expect(await house.store.enclosed()).toEqual([]);
    expect((await house.listen(seq)).status).toBe(404);
  });

  it.each<[Seat]>([['panel'], ['emitter']])(
    'is kept from when the %s wants it, which both hear, until one of them wants it no longer',
    async (seat) => {
      const house = await crew();
      await keep(house[seat], 30);
      for (const phone of [house.panel, house.emitter])
        await phone.entry(({ fact }) => fact.type === 'notice' && fact.text === soundKeptText(30));
      const seq = await talk(house.panel, tone(700));
      const { sound } = await said(house, seq);
      expect(sound?.until).toBe(house.clock.now() + 30 * DAY_MS);
      await keep(house.panel, 0);
      await house.emitter.entry(({ fact }) => fact.type === 'notice' && fact.text === SOUND_NOT_KEPT);
      expect((await said(house, await talk(house.emitter, tone(300)))).sound).toBeUndefined();
    },
  );

  it('is what the entry names by its salted hash, given to whoever may read the record and to nobody else', async () => {
    const house = await crew();
    await keep(house.panel, 30);
    const pcm = tone(700);
    const seq = await talk(house.panel, pcm);
    const { sound } = await said(house, seq);
    for (const token of [house.job.watch, house.job.token, house.emitterToken]) {
      const response = await house.listen(seq, token);
      expect([response.status, response.headers.get('content-type')]).toEqual([200, 'audio/wav']);
      expect(Buffer.from(await response.arrayBuffer())).toEqual(Buffer.from(compressed(pcm)));
    }
    const { salt = '', content = new Uint8Array() } = (await house.store.enclosure(house.job.job, seq)) ?? {};
    const hash = createHash('sha256').update(Buffer.from(salt, 'hex')).update(content).digest('hex');
    expect(sound).toMatchObject({ hash, bytes: content.length });
    expect((await house.listen(seq, 'not-a-token')).status).toBe(401);
  });

  it('that gave no words is kept, too', async () => {
    const house = await crew('');
    await keep(house.panel, 1);
    const seq = await talk(house.panel, tone(400));
    expect((await house.entries())[seq]?.fact).toMatchObject({ type: 'unheard', sound: { bytes: 3_260 } });
    expect((await house.listen(seq)).status).toBe(200);
  });

  it('is said again to a phone that takes a seat while it is kept, and the same wish again changes nothing', async () => {
    const house = await crew();
    await keep(house.panel, 7);
    await keep(house.emitter, 7);
    const notices = async () =>
      (await house.entries()).filter(({ fact }) => fact.type === 'notice' && fact.text === soundKeptText(7));
    expect(await notices()).toHaveLength(1);
    await house.emitter.hangUp();
    await house.panel.presence(({ emitter }) => emitter === 'away');
    house.panel.send({ t: 'invite', seat: 'emitter' });
    const { invite } = await house.panel.next('invite');
    await joinJob(house.url, invite.code);
    expect(await notices()).toHaveLength(2);
  });

  it.each([
    [0, true],
    [1, true],
    [SOUND_DAYS_MOST, true],
    [SOUND_DAYS_MOST + 1, false],
    [-1, false],
    [1.5, false],
  ])('can be wanted for %d days: %s', (days, isTaken) => {
    expect(ClientMessage.safeParse({ t: 'sound', id: newId(), days }).success).toBe(isTaken);
  });
});

describe('R94: a sound that is kept', () => {
  it.each([
    ['a millisecond before its end', -1, 200, 0],
    ['at its end', 0, 404, 1],
  ])('%s', async (_, after, status, deleted) => {
    const house = await crew();
    await keep(house.panel, 30);
    const seq = await talk(house.panel, tone(700));
    const before = await house.entries();
    house.clock.advance(30 * DAY_MS + after);
    const response = await house.listen(seq);
    expect(response.status).toBe(status);
    if (status === 404) expect(await response.text()).toContain(SOUND_OVER);
    expect(await deleteOldSounds(house.store, house.clock.now())).toBe(deleted);
    expect(await house.store.enclosed()).toHaveLength(1 - deleted);
    expect((await house.entries()).slice(0, before.length)).toEqual(before);
  });

  /** A house that keeps one sound, at the moment when its days are over. */
  async function oneOver() {
    const house = await crew();
    await keep(house.panel, 30);
    await talk(house.panel, tone(700));
    house.clock.advance(30 * DAY_MS);
    return house;
  }
  /** The sounds that are left once there is one less, or after a good while. */
  async function left(store: MemoryStore): Promise<number> {
    for (let i = 0; i < 200 && (await store.enclosed()).length > 0; i++) await setImmediate();
    return (await store.enclosed()).length;
  }

  it('is deleted by the next server that starts', async () => {
    const { store, clock } = await oneOver();
    expect(await left(store)).toBe(1);
    await serve({ store, clock });
    expect(await left(store)).toBe(0);
  });

  // Ours, no source: every hour.
  it.each([
    [3_599_999, 1],
    [3_600_000, 0],
  ])('is looked for every hour: after %d ms there are %d', async (ms, count) => {
    const { store, clock } = await oneOver();
    clock.advance(-1);
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    onTestFinished(() => void vi.useRealTimers());
    const stop = keepDeleting(store, clock, pino({ enabled: false }));
    expect(await left(store)).toBe(1);
    clock.advance(1);
    vi.advanceTimersByTime(ms);
    expect(await left(store)).toBe(count);
    stop();
  });

  it('is in the archive, held to its entry; and the log verifies without it', async () => {
    const house = await crew();
    await keep(house.panel, 30);
    const seq = await talk(house.panel, tone(700));
    const fetchArchive = async () => {
      const headers = { authorization: `Bearer ${house.job.token}` };
      const response = await fetch(`${house.url}/api/export.zip`, { headers });
      return readArchive(new Uint8Array(await response.arrayBuffer()));
    };
    const archive = await fetchArchive();
    const result = verified(archive?.log ?? '');
    if (!result.ok || !archive) throw new Error('not verified');
    expect([...archive.sounds.keys()]).toEqual([seq]);
    expect(checkSounds(result.entries, archive)).toEqual([]);
    const kept = archive.sounds.get(seq);
    const changed = {
      ...kept,
      content: Uint8Array.from(kept?.content ?? [], (x, i) => (i === 99 ? x ^ 1 : x)),
    };
    expect(checkSounds(result.entries, { ...archive, sounds: new Map([[seq, changed]]) })).toEqual([
      { kind: 'changed', seq },
    ]);
    expect(checkSounds(result.entries, { ...archive, sounds: new Map([[0, kept ?? {}]]) })).toEqual([
      { kind: 'strange', name: 'sounds/0.wav' },
    ]);
    house.clock.advance(30 * DAY_MS);
    await deleteOldSounds(house.store, house.clock.now());
    const later = await fetchArchive();
    const again = verified(later?.log ?? '');
    expect([again.ok, later?.sounds.size]).toEqual([true, 0]);
  });
});

describe('the file of a sound', () => {
  it('is WAV, mono, 8 kHz, mu-law, as another library reads it, and no longer than a log may name', () => {
    const file = compressed(tone(MAX_TALK_MS));
    expect(file.length).toBeLessThanOrEqual(SOUND_BYTES_MOST);
    const wav = new wavefile.WaveFile(file);
    expect(wav.fmt).toMatchObject({ audioFormat: 7, numChannels: 1, sampleRate: 8_000, bitsPerSample: 8 });
  });

  // ITU-T G.711 gives about 38 dB of signal to noise over its range; from memory.
  it('holds a tone with noise 35 dB below it', () => {
    const wav = new wavefile.WaveFile(compressed(tone(1_000)));
    wav.fromMuLaw();
    const samples = [...(wav.getSamples(false, Int16Array) as unknown as Int16Array)].slice(800, 7_200);
    const parts = [0, 1].map((quarter) =>
      samples.reduce(
        (sum, x, i) => sum + x * Math.sin((2 * Math.PI * 400 * i) / 8_000 + (quarter * Math.PI) / 2),
        0,
      ),
    );
    const signal =
      (2 / samples.length) * (parts[0] as number) ** 2 + (2 / samples.length) * (parts[1] as number) ** 2;
    const all = samples.reduce((sum, x) => sum + x * x, 0);
    expect(10 * Math.log10(signal / (all - signal))).toBeGreaterThan(35);
  });

  it('is heard as the sentence that was said', { timeout: 60_000 }, async () => {
    const file = join(ROOT_FOLDER, 'tests', 'sounds', 'one-forty-two.wav');
    const pcm = Buffer.from(Int16Array.from(await readSound(file), (x) => x * 32_767).buffer);
    const kept = join(mkdtempSync(join(tmpdir(), 'ladderline-sound-')), 'kept.wav');
    writeFileSync(kept, compressed(pcm));
    const recogniser = await loadRecogniser(DEFAULT_MODEL_FOLDER);
    expect((await recogniser.hear(await readSound(kept))).text).toBe('one forty two');
  });
});
