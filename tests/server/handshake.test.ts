import { describe, expect, it } from 'vitest';
import { findFault } from '../../src/log/chain.ts';
import { MAX_FRAME_BYTES, PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import { pause, serve } from './house.ts';
import { bothIn, get, openJob, Phone } from './phone.ts';

describe('saying hello', () => {
  it('R1: the first frame must be hello; any other ends the connection', async () => {
    const { url } = await serve();
    for (const frame of ['{"t":"say","id":"12345678","via":"typed","text":"hi"}', Buffer.alloc(2)]) {
      const phone = new Phone(url);
      await phone.opened();
      phone.raw(frame);
      expect((await phone.next('refused')).reason).toBe('bad-message');
      expect(await phone.closed).toEqual({ code: 4400, reason: 'bad-message' });
    }
  });

  it('R1: a connection that says nothing is closed', async () => {
    const { url } = await serve({ limits: { helloWithinMs: 50 } });
    const phone = new Phone(url);
    expect((await phone.closed).code).toBe(4400);
  });

  it('R2: what a phone sends at the moment it connects is taken', async () => {
    const { url } = await serve();
    const { token } = await openJob(url);
    const phone = new Phone(url);
    phone.socket.once('open', () => {
      phone.send({ t: 'hello', v: PROTOCOL_VERSION, token, after: -1 });
      phone.remark('first words', 'first-words');
      phone.send({ t: 'ping', n: 7 });
    });
    expect(await phone.ack('first-words')).toBeGreaterThan(0);
    expect((await phone.next('pong')).n).toBe(7);
    const entry = await phone.entry((e) => e.ref === 'first-words');
    expect(entry.fact).toEqual({ type: 'remark', seat: 'panel', text: 'first words' });
  });

  it('R3: a protocol that is too old, or newer than the server, is refused with its reason', async () => {
    const { url } = await serve();
    const { token } = await openJob(url);
    for (const v of [0, PROTOCOL_VERSION + 1]) {
      const phone = new Phone(url);
      await phone.opened();
      phone.send({ t: 'hello', v, token, after: -1 });
      expect((await phone.next('refused')).reason).toBe('version');
      expect((await phone.closed).code).toBe(4406);
    }
  });

  it('R4: a token that was never given out is refused', async () => {
    const { url } = await serve();
    const phone = new Phone(url);
    await phone.opened();
    phone.send({ t: 'hello', v: PROTOCOL_VERSION, token: 'A'.repeat(22), after: -1 });
    expect((await phone.next('refused')).reason).toBe('bad-token');
    expect((await phone.closed).code).toBe(4401);
  });

  it('R5: first welcome, then each entry once and in order, then caught-up, then new entries', async () => {
    const { url } = await serve({ limits: { historyBatch: 3 } });
    const { job, panel, emitter } = await bothIn(url);
    for (let i = 0; i < 10; i++) await panel.ack(panel.remark(`note ${i}`));

    const watcher = new Phone(url);
    await watcher.opened();
    watcher.send({ t: 'hello', v: PROTOCOL_VERSION, token: job.watch, after: -1 });
    // New entries while history is still being sent.
    const during = Array.from({ length: 5 }, (_, i) => emitter.remark(`meanwhile ${i}`));
    await Promise.all(during.map((id) => emitter.ack(id)));
    const { seq } = await watcher.next('caught-up');
    const last = await panel.ack(panel.remark('the last'));
    await watcher.entry((e) => e.seq === last);

    expect(watcher.heard[0]).toMatchObject({
      t: 'welcome',
      role: 'watcher',
      job: job.job,
      v: PROTOCOL_VERSION,
    });
    expect(watcher.entries.map((e) => e.seq)).toEqual(Array.from({ length: last + 1 }, (_, i) => i));
    const kinds = watcher.heard.map((m) => m.t).filter((t) => t === 'entries' || t === 'caught-up');
    expect(kinds.at(0)).toBe('entries');
    const before = watcher.heard
      .slice(
        0,
        watcher.heard.findIndex((m) => m.t === 'caught-up'),
      )
      .flatMap((m) => (m.t === 'entries' ? m.entries : []));
    expect(before.at(-1)?.seq).toBe(seq);
    const record = await (await get(url, '/api/record', job.watch)).json();
    expect(findFault(watcher.entries, record.head)).toBeUndefined();
    expect(watcher.entries).toEqual(record.entries);
  });

  it('R5: a phone that returns gets only what it has not seen', async () => {
    const { url } = await serve();
    const { panel, emitter, emitterToken } = await bothIn(url);
    await emitter.ack(emitter.remark('here'));
    const seen = emitter.entries.at(-1)?.seq ?? -1;
    await emitter.hangUp();
    const missed = await panel.ack(panel.remark('while you were away'));
    const again = await Phone.at(url, emitterToken, seen);
    expect(again.entries.at(0)?.seq).toBe(seen + 1);
    expect(again.entries.map((e) => e.seq)).toContain(missed);
  });

  it('R6: a phone with entries that the server does not have is told so', async () => {
    const { url } = await serve();
    const { token } = await openJob(url);
    const phone = new Phone(url);
    await phone.opened();
    phone.send({ t: 'hello', v: PROTOCOL_VERSION, token, after: 1_000_000 });
    expect((await phone.next('refused')).reason).toBe('from-the-future');
    expect((await phone.closed).code).toBe(4416);
  });

  it('R31: a page of another website cannot open a socket or a job', async () => {
    const { url } = await serve();
    for (const origin of ['http://elsewhere.example', 'null']) {
      await expect(new Phone(url, { origin }).opened()).rejects.toThrow('403');
      const response = await fetch(`${url}/api/jobs`, { method: 'POST', headers: { origin } });
      expect(response.status).toBe(403);
    }
    const own = new Phone(url, { origin: url });
    await own.opened();
    await own.hangUp();
  });

  it('there is no socket at any other address', async () => {
    const { url } = await serve();
    await expect(new Phone(`${url}/elsewhere`).opened()).rejects.toThrow('404');
  });
});

describe('frames', () => {
  it('R10: a frame that is not a message is refused with its reason, and the connection stays', async () => {
    const { url } = await serve();
    const { panel } = await bothIn(url);
    for (const frame of [
      'not json',
      '[]',
      '{"t":"dance"}',
      '{"t":"say","id":"x"}',
      '{"t":"remark","id":"12345678"}',
    ]) {
      panel.raw(frame);
    }
    await panel.ack(panel.remark('still here'));
    const refusals = panel.heard.filter((m) => m.t === 'refused');
    expect(refusals).toHaveLength(5);
    expect(refusals.at(-1)).toMatchObject({
      id: '12345678',
      reason: 'bad-message',
      text: expect.stringContaining('text'),
    });
  });

  it('R10: a phone that sends only nonsense is cut off', async () => {
    const { url } = await serve();
    const { panel } = await bothIn(url);
    for (let i = 0; i < 25; i++) panel.raw('nonsense');
    expect((await panel.closed).code).toBe(4400);
  });

  it('R11: words over the limit are refused as too long, and nothing is logged', async () => {
    const { url } = await serve();
    const { panel } = await bothIn(url);
    const id = panel.say('a'.repeat(501));
    expect((await panel.refusal(id)).reason).toBe('too-long');
    await panel.ack(panel.remark('after'));
    expect(panel.entries.filter((e) => e.fact.type === 'said')).toEqual([]);
  });

  it.each(['text', 'sound'])('R11: a frame of %s larger than the limit ends the connection', async (kind) => {
    const { url } = await serve();
    const { panel, emitter } = await bothIn(url);
    const size = MAX_FRAME_BYTES + 1;
    panel.raw(kind === 'text' ? 'x'.repeat(size) : Buffer.alloc(size));
    expect((await panel.closed).code).toBe(1009);
    await emitter.presence((p) => p.panel === 'away');
  });

  it('R12: what comes too fast is refused, and can be sent again', async () => {
    const { url } = await serve({ limits: { messages: { burst: 5, perSecond: 5 } } });
    const { panel } = await bothIn(url);
    const ids = Array.from({ length: 10 }, (_, i) => panel.remark(`note ${i}`));
    const refused = await panel.next('refused');
    expect(refused.reason).toBe('too-fast');
    expect(refused.id).toBe(ids[5]);
    await pause(1_000);
    panel.remark('note again', refused.id);
    expect(await panel.ack(refused.id as string)).toBeGreaterThan(0);
  });
});
