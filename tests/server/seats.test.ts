import { describe, expect, it } from 'vitest';
import { blockOf, Guesses } from '../../server/guard/guesses.ts';
import { LIMITS } from '../../server/guard/limits.ts';
import { CODE_ALPHABET } from '../../src/protocol/join-code.ts';
import { PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import { pause, serve } from './house.ts';
import { House } from './in-memory.ts';
import { ManualClock } from './manual-clock.ts';
import { bothIn, join, openJob, Phone, post, SETUP } from './phone.ts';

const refusalOf = async (response: Response) => ({
  status: response.status,
  ...((await response.json()) as { reason: string; text: string }),
});

describe('seats and codes', () => {
  it('R14: a newer connection of the same phone replaces the older one, whose frames no longer count', async () => {
    const { url } = await serve();
    const { job, panel, emitter } = await bothIn(url);
    const newer = await Phone.at(url, job.token);
    panel.remark('from the old connection');
    expect((await panel.next('refused')).reason).toBe('replaced');
    expect((await panel.closed).code).toBe(4409);
    await newer.ack(newer.remark('from the new one'));
    await emitter.entry((e) => e.fact.type === 'remark' && e.fact.text === 'from the new one');
    expect(emitter.entries.filter((e) => e.fact.type === 'remark')).toHaveLength(1);
    expect(emitter.entries.filter((e) => e.fact.type === 'link')).toEqual([]);
    expect(emitter.all('presence').at(-1)).toMatchObject({
      presence: { panel: 'online' },
    });
  });

  it('R15: a code is six unambiguous characters; it works once, in upper or lower case, with or without gaps', async () => {
    const { url } = await serve();
    const { invite } = await openJob(url);
    expect(invite.code).toMatch(new RegExp(`^[${CODE_ALPHABET}]{6}$`));
    expect(invite.path).toMatch(new RegExp(`^/join#${invite.code}/[A-Za-z0-9_-]{22}$`));
    const spoken = `${invite.code.slice(0, 3).toLowerCase()} ${invite.code.slice(3).toLowerCase()}`;
    const joined = await join(url, spoken);
    expect(joined.seat).toBe('emitter');
    const again = await post(url, '/api/join', { code: invite.code });
    expect(await refusalOf(again)).toMatchObject({ status: 403, reason: 'bad-code' });
  });

  it('R15: a code is valid for fifteen minutes', async () => {
    const clock = new ManualClock();
    const { url } = await serve({ clock });
    const { invite } = await openJob(url);
    expect(invite.expiresAt - clock.now()).toBe(15 * 60_000);
    clock.advance(15 * 60_000);
    expect(await refusalOf(await post(url, '/api/join', { code: invite.code }))).toMatchObject({
      reason: 'bad-code',
    });
  });

  it('R15: only the newest code of a seat is valid', async () => {
    const { url } = await serve();
    const job = await openJob(url);
    const panel = await Phone.at(url, job.token);
    const id = panel.send({ t: 'invite', seat: 'emitter' });
    const { invite } = await panel.next('invite', (m) => m.id === id);
    expect((await post(url, '/api/join', { code: job.invite.code })).status).toBe(403);
    expect((await join(url, invite.code)).seat).toBe('emitter');
  });

  it('R15: if two phones use a code at the same time, one gets the seat', async () => {
    const { url } = await serve();
    const { invite } = await openJob(url);
    const both = await Promise.all(
      [1, 2].map((n) => post(url, '/api/join', { code: invite.code, device: `${n}` })),
    );
    expect(both.map((r) => r.status).sort()).toEqual([200, 403]);
  });

  it('R16: the seat of a phone that is online cannot be taken, and the code stays valid', async () => {
    const { url } = await serve();
    const { panel, emitter } = await bothIn(url);
    const id = emitter.send({ t: 'invite', seat: 'emitter' });
    const { invite } = await emitter.next('invite', (m) => m.id === id);
    expect(await refusalOf(await post(url, '/api/join', { code: invite.code }))).toMatchObject({
      status: 409,
      reason: 'seat-in-use',
    });
    await emitter.hangUp();
    await panel.presence((p) => p.emitter === 'away');
    expect((await join(url, invite.code)).seat).toBe('emitter');
  });

  it('R16: nobody is invited to a seat while its phone is online', async () => {
    const { url } = await serve();
    const { panel } = await bothIn(url);
    const id = panel.send({ t: 'invite', seat: 'emitter' });
    expect((await panel.refusal(id)).reason).toBe('seat-in-use');
  });

  it('R43: names go into the log with the seat, and of a phone only a mark, another in each job', async () => {
    const house = new House();
    const phone = 'V1StGXR8_Z5jdHi6B-myT';
    const person = { name: 'A. Example', firm: 'Larkmoor Fire Systems' };
    const open = async () => {
      const opened = await house.rooms.open({ setup: SETUP, device: 'panel phone', phone, person });
      if (opened.kind !== 'ok') throw new Error(opened.text);
      return opened.value;
    };
    const [one, other] = [await open(), await open()];
    await house.rooms.join(one.invite.code, { device: 'ladder phone', phone });
    const seated = async (job: string) =>
      (await house.entries(job)).flatMap(({ fact }) => (fact.type === 'seated' ? [fact] : []));
    const [panel, emitter] = await seated(one.job);
    const [elsewhere] = await seated(other.job);
    expect(panel).toMatchObject({ person, phone: expect.stringMatching(/^[0-9a-f]{8}$/) });
    expect(emitter?.person).toBeUndefined();
    expect(emitter?.phone).toBe(panel?.phone);
    expect(elsewhere?.phone).not.toBe(panel?.phone);
    expect(JSON.stringify(await house.entries(one.job))).not.toContain(phone);
  });

  it('R43: another person at the same phone is named from there on', async () => {
    const { url } = await serve();
    const { panel } = await bothIn(url);
    panel.send({ t: 'person', person: { name: 'C. Example' } });
    const { fact } = await panel.entry((e) => e.fact.type === 'seated' && e.fact.handedOn === true);
    expect(fact).toMatchObject({ seat: 'panel', takeover: false, person: { name: 'C. Example' } });
  });

  it('R17: a new code takes over the seat of a dead phone; the log says so, and the old phone is told', async () => {
    const { url } = await serve();
    const { panel, emitter, emitterToken } = await bothIn(url);
    emitter.socket.terminate();
    await panel.presence((p) => p.emitter === 'away');
    const id = panel.send({ t: 'invite', seat: 'emitter' });
    const { invite } = await panel.next('invite', (m) => m.id === id);
    const joined = await join(url, invite.code, 'spare phone');
    const seated = await panel.entry((e) => e.fact.type === 'seated' && e.fact.takeover);
    expect(seated.fact).toEqual({ type: 'seated', seat: 'emitter', device: 'spare phone', takeover: true });

    const old = new Phone(url);
    await old.opened();
    old.send({ t: 'hello', v: PROTOCOL_VERSION, token: emitterToken, after: -1 });
    expect((await old.next('refused')).reason).toBe('seat-lost');
    expect((await old.closed).code).toBe(4403);

    const spare = await Phone.at(url, joined.token);
    await spare.ack(spare.say('done'));
  });

  it('R17: the panel’s seat can be taken over too', async () => {
    const { url } = await serve();
    const { panel, emitter } = await bothIn(url);
    await panel.hangUp();
    await emitter.presence((p) => p.panel === 'away');
    const id = emitter.send({ t: 'invite', seat: 'panel' });
    const { invite } = await emitter.next('invite', (m) => m.id === id);
    expect((await join(url, invite.code)).seat).toBe('panel');
  });

  it('R18: wrong codes are limited for each address; at the limit no right code is taken either', async () => {
    const { url } = await serve({ limits: { guessesPerAddress: { burst: 3, perSecond: 1 } } });
    const { invite } = await openJob(url);
    for (const code of ['222222', '333333', 'not a code']) {
      expect(await refusalOf(await post(url, '/api/join', { code }))).toMatchObject({ reason: 'bad-code' });
    }
    const blocked = await post(url, '/api/join', { code: invite.code });
    expect(await refusalOf(blocked)).toMatchObject({ status: 429, reason: 'too-fast' });
    await pause(1_050);
    expect((await join(url, invite.code)).seat).toBe('emitter');
  });

  it('R18: a code that was scanned is never limited, and its proof is good for no other code', async () => {
    const { url } = await serve({ limits: { guessesPerAddress: { burst: 2, perSecond: 0 } } });
    const { invite } = await openJob(url);
    const proof = invite.path.split('/').at(-1);
    for (const code of ['222222', '333333']) await post(url, '/api/join', { code });
    expect((await post(url, '/api/join', { code: invite.code })).status).toBe(429);
    for (const wrong of [
      { code: '444444', proof },
      { code: invite.code, proof: 'A'.repeat(22) },
    ]) {
      expect((await post(url, '/api/join', wrong)).status).toBe(429);
    }
    expect((await post(url, '/api/join', { code: invite.code, proof })).status).toBe(200);
  });

  it('R18: somebody who guesses stops their own block of addresses, and nobody else', () => {
    const guesses = new Guesses(LIMITS, 0);
    const guess = (address: string, now = 0) => {
      const may = guesses.may(address, now);
      if (may) guesses.wrong(address, now);
      return may;
    };
    // Five blocks guess all that they may, which is more than all may together.
    const five = [1, 2, 3, 4, 5].map((n) => `198.51.${n}.7`);
    const made = five.map(
      (address) => Array.from({ length: 8 }, () => guess(address)).filter(Boolean).length,
    );
    expect(made.reduce((sum, n) => sum + n)).toBeGreaterThanOrEqual(LIMITS.guesses.burst);
    expect(five.map((address) => guess(address.replace(/7$/, '99')))).toEqual(five.map(() => false));
    // Somebody else mistypes once and is right the second time, some minutes later.
    expect(guess('203.0.113.5')).toBe(true);
    expect(guesses.may('203.0.113.5', 1)).toBe(false);
    expect(guesses.may('2001:db8:0:7::5', 1)).toBe(true);
  });

  it.each([
    ['192.0.2.7', '192.0.2'],
    ['::ffff:192.0.2.99', '192.0.2'],
    ['2001:db8:1:2:3:4:5:6', '2001:db8:1:2'],
    ['2001:db8:1:2::9', '2001:db8:1:2'],
    ['2001:db8::9', '2001:db8:0:0'],
    ['2001:0DB8:0001::', '2001:db8:1:0'],
    ['fe80::1%eth0', 'fe80:0:0:0'],
    ['::1', '0:0:0:0'],
  ])('R18: the address %s is limited with its block %s', (address, block) => {
    expect(blockOf(address)).toBe(block);
  });

  it('R18: at these limits 1,000 blocks need more than a year to guess a code of ten open jobs', () => {
    const yearS = 365.25 * 24 * 3600;
    const codes = CODE_ALPHABET.length ** 6;
    const perSecond = LIMITS.guesses.perSecond + 1_000 * LIMITS.guessesWhenMany.perSecond;
    expect(CODE_ALPHABET).toHaveLength(31);
    expect(codes / 10 / perSecond / yearS).toBeGreaterThan(1);
  });
});

describe('presence and the line', () => {
  it('R19: each change is told to everyone at once', async () => {
    const { url } = await serve();
    const job = await openJob(url);
    const panel = await Phone.at(url, job.token);
    await panel.presence((p) => p.panel === 'online' && p.emitter === 'empty');
    const { token } = await join(url, job.invite.code);
    await panel.presence((p) => p.emitter === 'away');
    const emitter = await Phone.at(url, token);
    const watcher = await Phone.at(url, job.watch);
    await panel.presence((p) => p.emitter === 'online' && p.watchers === 1);
    const since = performance.now();
    await emitter.hangUp();
    await watcher.presence((p) => p.emitter === 'away' && p.watchers === 1);
    expect(performance.now() - since).toBeLessThan(2_000);
  });

  it('R19: a dead line that looks open is noticed, even if nobody hangs up', async () => {
    const limits = { pingEveryMs: 50, deadAfterMs: 200 };
    const { url } = await serve({ limits });
    const { panel, emitter } = await bothIn(url);
    // A phone in a lift: it reads no frame and answers no ping, but the connection stays open.
    emitter.socket.pause();
    await panel.presence((p) => p.emitter === 'away');
    const link = await panel.entry((e) => e.fact.type === 'link');
    expect(link.fact).toEqual({ type: 'link', seat: 'emitter', online: false });
    // The panel says nothing either, but answers the pings.
    await pause(2 * limits.deadAfterMs);
    expect(panel.socket.readyState).toBe(panel.socket.OPEN);
  });

  it('R20: the log says when a phone comes and goes', async () => {
    const { url } = await serve();
    const { panel, emitter, emitterToken } = await bothIn(url);
    await emitter.hangUp();
    await panel.entry((e) => e.fact.type === 'link' && !e.fact.online);
    await Phone.at(url, emitterToken);
    await panel.entry((e) => e.fact.type === 'link' && e.fact.online);
    const links = panel.entries.flatMap((e) => (e.fact.type === 'link' ? [e.fact] : []));
    expect(links).toEqual([
      { type: 'link', seat: 'emitter', online: false },
      { type: 'link', seat: 'emitter', online: true },
    ]);
  });

  it('R20: a phone that joined but never connected is logged as gone after a moment', async () => {
    const { url } = await serve({ limits: { deadAfterMs: 100 } });
    const job = await openJob(url);
    await join(url, job.invite.code);
    const panel = await Phone.at(url, job.token);
    const link = await panel.entry((e) => e.fact.type === 'link');
    expect(link.fact).toEqual({ type: 'link', seat: 'emitter', online: false });
  });

  it('R21: a ping is answered with its number and the server’s time', async () => {
    const clock = new ManualClock();
    const { url } = await serve({ clock });
    const { panel } = await bothIn(url);
    panel.send({ t: 'ping', n: 41 });
    expect(await panel.next('pong')).toEqual({ t: 'pong', n: 41, now: clock.now() });
  });

  it('R22: a phone that reads too slowly is cut off, misses nothing when it resumes, and delays nobody', async () => {
    const { url } = await serve({
      limits: { maxBufferedBytes: 2_000, messages: { burst: 5000, perSecond: 0 } },
    });
    const { panel, emitter, emitterToken } = await bothIn(url);
    const seen = emitter.entries.at(-1)?.seq ?? -1;
    emitter.socket.pause();
    const isGone = () => panel.all('presence').at(-1)?.presence.emitter === 'away';
    let last = 0;
    for (let i = 0; i < 3_000 && !isGone(); i++) last = await panel.ack(panel.remark('x'.repeat(2_000)));
    expect(isGone()).toBe(true);
    const again = await Phone.at(url, emitterToken, seen);
    const seqs = again.entries.map((e) => e.seq);
    expect(seqs).toContain(last);
    expect(seqs).toEqual(seqs.map((_, i) => seen + 1 + i));
  });
});
