import { describe, expect, it } from 'vitest';
import { newToken } from '../../server/guard/secrets.ts';
import { JobOpened } from '../../src/protocol/jobs.ts';
import { type Key, Keys } from '../../src/protocol/keys.ts';
import { PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import { Desk } from './desk.ts';
import { serve } from './house.ts';
import { bothIn, get, newId, openJob, Phone, post } from './phone.ts';

const keysOf = async (response: Response): Promise<Key[]> => Keys.parse(await response.json()).keys;
const withdraw = (url: string, token: string, body: object, path = '/api/keys/withdraw') =>
  post(url, path, { id: newId(), ...body }, { authorization: `Bearer ${token}` });
const reasonOf = async (response: Response) => ((await response.json()) as { reason: string }).reason;
const keyOf = (keys: readonly Key[], role: Key['role']): Key => {
  const key = keys.find((each) => each.role === role);
  if (!key) throw new Error(`nobody has a key as ${role}`);
  return key;
};

describe('who has a key', () => {
  it('R106: the panel sees every key that is good: its role, since when, last used, whose phone, how many are there', async () => {
    const { url } = await serve();
    const job = await openJob(url);
    const person = { name: 'B. Example', firm: 'Larkmoor Fire Systems' };
    const joined = await post(url, '/api/join', { code: job.invite.code, device: 'iPhone', person });
    const { token } = (await joined.json()) as { token: string };
    const panel = await Phone.at(url, job.token);
    const emitter = await Phone.at(url, token);
    await panel.presence((p) => p.emitter === 'online');
    const keys = await keysOf(await get(url, '/api/keys', job.token));
    expect(keys.map(({ role, online, own }) => ({ role, online, own }))).toEqual(
      expect.arrayContaining([
        { role: 'panel', online: 1, own: true },
        { role: 'emitter', online: 1, own: false },
        { role: 'watcher', online: 0, own: false },
      ]),
    );
    const seated = emitter.entries.find(({ fact }) => fact.type === 'seated' && fact.seat === 'emitter');
    expect(keyOf(keys, 'emitter')).toMatchObject({ device: 'iPhone', people: [person], since: seated?.at });
    expect(keyOf(keys, 'emitter').seen).toBeGreaterThanOrEqual(seated?.at ?? Number.NaN);
    expect(keyOf(keys, 'watcher').seen).toBeUndefined();
    expect((await get(url, '/api/record', job.watch)).status).toBe(200);
    expect(keyOf(await keysOf(await get(url, '/api/keys', job.token)), 'watcher').seen).toBeDefined();
    // Nothing in it opens anything.
    const text = JSON.stringify(keys);
    for (const secret of [job.token, job.watch, token]) expect(text).not.toContain(secret);
  });

  it('R106: nobody but the panel and the desk sees or changes it', async () => {
    const { url } = await serve();
    const { job, emitterToken } = await bothIn(url);
    const { key } = keyOf(await keysOf(await get(url, '/api/keys', job.token)), 'emitter');
    const site = await Desk.open(url);
    for (const token of [emitterToken, job.watch, site.reader.token]) {
      expect(await reasonOf(await get(url, '/api/keys', token))).toBe('read-only');
      expect(await reasonOf(await withdraw(url, token, { key }))).toBe('read-only');
    }
    expect(await reasonOf(await withdraw(url, site.desk.token, { key }))).toBe('bad-target');
    expect((await site.desk.get(`/api/site/keys?job=${job.job}`)).status).toBe(404);
    expect((await get(url, '/api/record', emitterToken)).status).toBe(200);
  });

  it('R107: a key that is taken away ends its connection at once, in words, opens nothing, and stands in the log', async () => {
    const { url } = await serve();
    const { job, panel, emitter, emitterToken } = await bothIn(url);
    const { key } = keyOf(await keysOf(await get(url, '/api/keys', job.token)), 'emitter');
    const id = newId();
    const first = await (await withdraw(url, job.token, { id, key })).json();
    const { reason, text } = await emitter.next('refused');
    expect({ reason, code: (await emitter.closed).code }).toEqual({ reason: 'revoked', code: 4410 });
    expect(text).toContain('was taken away');
    const entry = await panel.entry(({ fact }) => fact.type === 'key-withdrawn');
    expect(entry).toMatchObject({ actor: 'panel', ref: id, fact: { role: 'emitter' } });
    await panel.presence((p) => p.emitter === 'away');
    expect(await reasonOf(await get(url, '/api/record', emitterToken))).toBe('revoked');
    const again = new Phone(url);
    await again.opened();
    again.send({ t: 'hello', v: PROTOCOL_VERSION, token: emitterToken, after: -1 });
    expect((await again.next('refused')).reason).toBe('revoked');
    // The same order again is the same entry.
    expect(await (await withdraw(url, job.token, { id, key })).json()).toEqual(first);
    expect(await reasonOf(await withdraw(url, job.token, { key }))).toBe('bad-target');
    // The seat is free for a phone with a code.
    const asked = panel.send({ t: 'invite', seat: 'emitter' });
    const { invite } = await panel.next('invite', (m) => m.id === asked);
    expect((await post(url, '/api/join', { code: invite.code })).status).toBe(200);
    expect(keyOf(await keysOf(await get(url, '/api/keys', job.token)), 'emitter').key).not.toBe(key);
  });

  it('R107: a link to watch is exchanged for another, which works at once, and only that', async () => {
    const { url } = await serve();
    const { job, panel } = await bothIn(url);
    const watcher = await Phone.at(url, job.watch);
    const { key } = keyOf(await keysOf(await get(url, '/api/keys', job.token)), 'watcher');
    const next = newToken();
    expect((await withdraw(url, job.token, { key, next })).status).toBe(200);
    expect((await watcher.closed).code).toBe(4410);
    expect((await get(url, '/api/record', job.watch)).status).toBe(401);
    expect((await get(url, '/api/record', next)).status).toBe(200);
    expect(panel.all('refused')).toEqual([]);
  });

  it('R107: no phone takes its own seat, and no seat is exchanged', async () => {
    const { url } = await serve();
    const { job, emitterToken } = await bothIn(url);
    const keys = await keysOf(await get(url, '/api/keys', job.token));
    expect(await reasonOf(await withdraw(url, job.token, { key: keyOf(keys, 'panel').key }))).toBe(
      'bad-target',
    );
    const swap = { key: keyOf(keys, 'emitter').key, next: newToken() };
    expect(await reasonOf(await withdraw(url, job.token, swap))).toBe('bad-target');
    expect((await get(url, '/api/record', emitterToken)).status).toBe(200);
  });

  it('R108: the desk does the same with the keys of its visits, and exchanges the links of its site', async () => {
    const { url } = await serve();
    const { desk, reader } = await Desk.open(url);
    const meter = (await import('./phone.ts')).SETUP.meter;
    await desk.post('/api/site/pairs', { pairs: [{ id: 'A', name: 'Pair A', meter }] });
    const visit = JobOpened.parse(
      await (await desk.post('/api/site/jobs', { pair: 'A', device: 'x' })).json(),
    );
    const panel = await Phone.at(url, visit.token);
    const keys = await keysOf(await desk.get(`/api/site/keys?job=${visit.job}`));
    const body = { job: visit.job, key: keyOf(keys, 'panel').key };
    expect((await desk.post('/api/site/keys/withdraw', body)).status).toBe(200);
    expect((await panel.closed).code).toBe(4410);
    const log = (await (await desk.get(`/api/site/record?job=${visit.job}`)).json()) as { entries: object[] };
    expect(log.entries).toContainEqual(
      expect.objectContaining({ actor: 'supervisor', fact: { type: 'key-withdrawn', role: 'panel' } }),
    );
    const own = await keysOf(await desk.get('/api/keys'));
    expect(own.map(({ role }) => role).sort()).toEqual(['desk', 'watcher']);
    const readers = { key: keyOf(own, 'watcher').key };
    expect((await desk.post('/api/keys/withdraw', readers)).status).toBe(200);
    expect(await reasonOf(await reader.get('/api/site'))).toBe('revoked');
    const mine = { key: keyOf(own, 'desk').key };
    expect(await reasonOf(await desk.post('/api/keys/withdraw', mine))).toBe('bad-target');
    const next = new Desk(url, newToken());
    expect((await desk.post('/api/keys/withdraw', { ...mine, next: next.token })).status).toBe(200);
    expect((await next.get('/api/site')).status).toBe(200);
    expect(await reasonOf(await desk.get('/api/site'))).toBe('revoked');
  });
});
