import { describe, expect, it } from 'vitest';
import { MemoryStore } from '../../server/store/memory.ts';
import { StoreFailure } from '../../server/store/store.ts';
import type { Entry } from '../../src/model/entry.ts';
import { serve } from './house.ts';
import { ManualClock } from './manual-clock.ts';
import { bothIn, get, newId, Phone } from './phone.ts';

const isText = (text: string) => (e: Entry) => 'text' in e.fact && e.fact.text === text;

describe('delivery', () => {
  it('R7: an acknowledgement names an entry that is already stored', async () => {
    const store = new MemoryStore();
    const { url } = await serve({ store });
    const { job, panel } = await bothIn(url);
    const id = panel.say('forty two');
    const seq = await panel.ack(id);
    const [entry] = await store.read(job.job, seq - 1, 1);
    expect(entry).toMatchObject({ seq, ref: id, actor: 'panel', fact: { type: 'said', text: 'forty two' } });
  });

  it('R7: the words of one phone are logged in the order in which it sent them', async () => {
    const { url } = await serve();
    const { panel } = await bothIn(url);
    const texts = Array.from({ length: 30 }, (_, i) => `note ${i}`);
    const ids = texts.map((text) => panel.remark(text));
    await Promise.all(ids.map((id) => panel.ack(id)));
    const logged = panel.entries.flatMap((e) => (e.fact.type === 'remark' ? [e.fact.text] : []));
    expect(logged).toEqual(texts);
  });

  it('R7: both phones and the watchers get the same entries', async () => {
    const { url } = await serve();
    const { job, panel, emitter } = await bothIn(url);
    const watcher = await Phone.at(url, job.watch);
    const seq = await panel.ack(panel.say('sixty'));
    for (const phone of [panel, emitter, watcher]) await phone.entry((e) => e.seq === seq);
    expect(emitter.entries).toEqual(panel.entries);
    expect(watcher.entries).toEqual(panel.entries);
  });

  it('R8: a message that is sent again gets the same acknowledgement and is logged once', async () => {
    const { url } = await serve();
    const { job, panel } = await bothIn(url);
    const id = newId();
    const first = await panel.ack(panel.say('forty two', id));
    await panel.ack(panel.remark('in between'));
    panel.say('forty two', id);
    panel.say('something else under the same id', id);
    await panel.ack(panel.remark('the last'));
    const acks = panel.heard.flatMap((m) => (m.t === 'ack' && m.id === id ? [m.seq] : []));
    expect(acks).toEqual([first, first, first]);
    const { entries } = await (await get(url, '/api/record', job.token)).json();
    expect(entries.filter((e: Entry) => e.ref === id)).toHaveLength(1);
    expect(entries.filter((e: Entry) => e.fact.type === 'said')).toHaveLength(1);
  });

  it('R8: the same holds after the phone came back on a new connection', async () => {
    const { url } = await serve();
    const { job, panel } = await bothIn(url);
    const id = newId();
    const first = await panel.ack(panel.say('forty two', id));
    panel.socket.terminate();
    const again = await Phone.at(url, job.token, first);
    again.say('forty two', id);
    expect(await again.ack(id)).toBe(first);
    expect(again.entries.filter((e) => e.fact.type === 'said')).toEqual([]);
  });

  it('R8: what a phone sent just before it lost the line counts, even without an answer', async () => {
    const { url } = await serve();
    const { panel, emitter } = await bothIn(url);
    panel.remark('my last words');
    panel.socket.close();
    await emitter.entry(isText('my last words'));
  });

  it('R9: a refused message is not logged, and the connection stays', async () => {
    const { url } = await serve();
    const { panel } = await bothIn(url);
    const id = panel.send({ t: 'take-back', target: 9999 });
    expect((await panel.refusal(id)).reason).toBe('bad-target');
    const override = panel.send({ t: 'override', reason: 'because I say so' });
    await panel.refusal(override);
    await panel.ack(panel.remark('still here'));
    expect(panel.entries.filter((e) => e.ref === id || e.ref === override)).toEqual([]);
  });

  it('R9: a reading can be corrected and taken back, and its first entry stays', async () => {
    const { url } = await serve();
    const { panel } = await bothIn(url);
    await panel.ack(panel.say('forty two'));
    const reading = await panel.entry((e) => e.fact.type === 'reading');
    await panel.ack(panel.send({ t: 'correct', target: reading.seq, text: '24' }));
    const corrected = await panel.entry((e) => e.fact.type === 'reading' && e.seq > reading.seq);
    expect(corrected.fact).toMatchObject({ reading: { kind: 'value', value: 24 }, replaces: reading.seq });
    await panel.ack(panel.send({ t: 'take-back', target: corrected.seq }));
    const retract = await panel.entry((e) => e.fact.type === 'retract');
    expect(retract.fact).toMatchObject({ target: corrected.seq, why: 'undo' });
    expect(panel.entries).toContainEqual(reading);
  });

  it('R13: a watcher reads everything and writes nothing', async () => {
    const { url } = await serve();
    const { job, panel } = await bothIn(url);
    const watcher = await Phone.at(url, job.watch);
    const ids = [
      watcher.say('forty two'),
      watcher.remark('I would like to say'),
      watcher.send({ t: 'correct', target: 0, text: '1' }),
      watcher.send({ t: 'take-back', target: 0 }),
      watcher.send({ t: 'override', reason: 'because' }),
      watcher.send({ t: 'talk' }),
      watcher.send({ t: 'invite', seat: 'panel' }),
    ];
    for (const id of ids) expect((await watcher.refusal(id)).reason).toBe('read-only');
    watcher.raw(Buffer.alloc(320));
    await watcher.next('refused', (m) => m.id === undefined && m.reason === 'read-only');
    await panel.ack(panel.remark('undisturbed'));
    await watcher.entry(isText('undisturbed'));
    const { entries } = await (await get(url, '/api/record', job.watch)).json();
    expect(entries.filter((e: Entry) => e.ref && ids.includes(e.ref))).toEqual([]);
  });

  it('R29: when the log cannot be written, nothing is taken; the same message is taken when it is sent again', async () => {
    const store = new MemoryStore();
    const { url } = await serve({ store });
    const { panel, emitter } = await bothIn(url);
    const append = store.append.bind(store);
    store.append = async () => {
      throw new StoreFailure('the disk is full');
    };
    const id = panel.say('forty two');
    expect((await panel.refusal(id)).reason).toBe('store-failed');
    expect(emitter.entries.filter((e) => e.fact.type === 'said')).toEqual([]);
    store.append = append;
    panel.say('forty two', id);
    const seq = await panel.ack(id);
    await emitter.entry((e) => e.seq === seq);
  });

  it('R29: what the store kept although it reported a failure is sent out, and not stored twice', async () => {
    const store = new MemoryStore();
    const { url } = await serve({ store });
    const { job, panel, emitter } = await bothIn(url);
    const append = store.append.bind(store);
    store.append = async (...args) => {
      await append(...args);
      throw new StoreFailure('the line to the database went down');
    };
    const id = panel.say('forty two');
    expect((await panel.refusal(id)).reason).toBe('store-failed');
    store.append = append;
    panel.say('forty two', id);
    const seq = await panel.ack(id);
    await panel.ack(panel.remark('after'));
    await emitter.entry(isText('after'));
    expect(emitter.entries.map((e) => e.seq)).toEqual(emitter.entries.map((_, i) => i));
    const entries = await store.read(job.job, -1, 1000);
    expect(entries.filter((e) => e.ref === id).map((e) => e.seq)).toEqual([seq]);
    expect(await store.audit(job.job)).toBeUndefined();
  });

  it('R30: an instruction that expires is withdrawn, even if nobody says a word', async () => {
    const clock = new ManualClock();
    const { url } = await serve({ clock });
    const { panel } = await bothIn(url);
    await panel.ack(panel.say('forty two'));
    const order = await panel.entry(
      (e) => e.fact.type === 'instruction' && e.fact.advice.action.kind === 're-aim',
    );
    if (order.fact.type !== 'instruction') throw new Error('no instruction');
    clock.advance(order.fact.expiresAt - clock.now() + 1);
    const after = await panel.entry((e) => e.seq > order.seq);
    expect(after.fact).toMatchObject({ type: 'withdrawn', instruction: order.seq, why: 'expired' });
    expect(after.at).toBeGreaterThanOrEqual(order.fact.expiresAt);
  });
});
