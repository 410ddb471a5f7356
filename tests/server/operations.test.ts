import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { pino } from 'pino';
import { afterAll, describe, expect, it } from 'vitest';
import { DATABASE_FILE } from '../../server/store/data-folder.ts';
import { chooseDriver } from '../../server/store/drivers.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { setPassphrase } from '../../server/store/passphrase.ts';
import { makeLogger } from '../../server/telemetry/logger.ts';
import { METRICS_TOKEN_FILE } from '../../server/telemetry/token.ts';
import { NO_METRICS, STOPPING } from '../../src/phrases/service.ts';
import { JobOpened } from '../../src/protocol/jobs.ts';
import { picture } from '../photos/pictures.ts';
import { start } from './child.ts';
import { serve } from './house.ts';
import { bothIn, get, newId, openJob, Phone, post, SETUP } from './phone.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-operations-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;
const newFolder = () => join(root, String(++folders));

const linesOf = (text: string): Record<string, unknown>[] =>
  text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));

/** Lets every append wait until it is let through. */
class SlowStore extends MemoryStore {
  private hold: Promise<void> = Promise.resolve();
  letThrough: () => void = () => {};

  stop(): void {
    this.hold = new Promise((resolve) => {
      this.letThrough = resolve;
    });
  }

  override async append(...args: Parameters<MemoryStore['append']>) {
    await this.hold;
    return super.append(...args);
  }
}

describe('what the server writes about itself', { timeout: 60_000 }, () => {
  it('says something at every level of a whole job, and nothing that is secret or personal', async () => {
    const data = newFolder();
    const first = await start(data, '--log-level', 'trace');
    const passphrase = 'seven wet otters juggle';
    await setPassphrase(data, passphrase);
    const secrets: string[] = [passphrase, 'badly guessed otter words'];
    await post(first.url, '/api/enter', { passphrase: 'badly guessed otter words' });
    const entered = await post(first.url, '/api/enter', { passphrase });
    const cookie = entered.headers.get('set-cookie')?.split(';')[0] ?? '';
    secrets.push(cookie.split('=')[1] ?? '');

    const person = { name: 'Quillon Vexmoor', firm: 'Brackwater Beams', competence: 'Zealous apprentice' };
    const setup = { ...SETUP, site: 'Larkmoor hall', pair: 'Osprey nine' };
    const opening = await post(
      first.url,
      '/api/jobs',
      { setup, device: 'Puffinphone', phone: newId(), person },
      { cookie },
    );
    const job = JobOpened.parse(await opening.json());
    secrets.push(job.token, job.watch, job.invite.code, job.invite.path.split('/').at(-1) ?? '');
    // More than one block may guess at once: the last ones are refused for that.
    for (let guess = 0; guess < 10; guess++) await post(first.url, '/api/join', { code: '222222' });
    const proof = job.invite.path.split('/').at(-1);
    const joining = await post(first.url, '/api/join', {
      code: job.invite.code,
      proof,
      device: 'Gannetphone',
      person: { name: 'Ysolde Thrumble' },
    });
    expect(joining.status).toBe(200);
    const { token } = (await joining.json()) as { token: string };
    secrets.push(token, '222222', 'Puffinphone', 'Gannetphone', 'Ysolde', 'Thrumble', 'Larkmoor', 'Osprey');
    secrets.push(...Object.values(person).flatMap((text) => text.split(' ')));

    const panel = await Phone.at(first.url, job.token);
    const emitter = await Phone.at(first.url, token);
    await panel.ack(panel.say('forty two'));
    await panel.ack(panel.remark('the cormorant nests behind the detector'));
    await panel.ack(panel.send({ t: 'person', person: { name: 'Ottoline Marchbank' } }));
    await emitter.ack(emitter.say('gibberish flamingo'));
    emitter.raw('{"t":"say","text":"unreadable kittiwake"');
    await emitter.next('refused');
    secrets.push('forty', 'cormorant', 'Ottoline', 'flamingo', 'kittiwake');
    const query = new URLSearchParams({ id: newId(), shows: 'other', caption: 'a heron on the bracket' });
    const sent = await fetch(`${first.url}/api/photo?${query}`, {
      method: 'POST',
      headers: { authorization: `Bearer ${job.token}` },
      body: new Uint8Array(await picture()),
    });
    expect(sent.status).toBe(201);
    await get(first.url, '/api/voice?text=a%20spoken%20bittern', job.token);
    await get(first.url, '/nowhere/razorbill');
    await get(first.url, '/api/nowhere/guillemot');
    expect((await get(first.url, '/api/record', job.token)).status).toBe(200);
    secrets.push('heron', 'bittern', 'razorbill', 'guillemot');
    secrets.push(readFileSync(join(data, METRICS_TOKEN_FILE), 'utf8').trim());
    first.child.kill('SIGTERM');
    const { err: whole } = await first.ended;

    const db = chooseDriver().open(join(data, DATABASE_FILE));
    db.exec('DROP TRIGGER entries_stay');
    db.prepare("UPDATE entries SET body = replace(body, 'cormorant', 'cormorants') WHERE job = ?").run(
      job.job,
    );
    db.close();
    const second = await start(data, '--log-level', 'trace');
    await (await Phone.at(second.url, job.token)).hangUp();
    second.child.kill('SIGTERM');
    const written = whole + (await second.ended).err;

    for (const secret of secrets.filter((each) => each.length > 0))
      expect(written.toLowerCase(), secret).not.toContain(secret.toLowerCase());
    const said = linesOf(written);
    const says = (level: number, msg: string, more: object = {}) =>
      expect(said).toContainEqual(
        expect.objectContaining({ level, msg: expect.stringContaining(msg), ...more }),
      );
    says(10, 'request', { path: '/api/jobs', status: 201 });
    says(10, 'message', { kind: 'say', job: job.job });
    says(20, 'refused', { reason: 'bad-message' });
    says(20, 'entries were written');
    says(20, 'heavy work is done', { kind: 'records' });
    says(30, 'the server has started');
    says(30, 'a job was opened', { log: job.job });
    says(30, 'a phone took a seat', { job: job.job, seat: 'emitter' });
    says(30, 'refused', { reason: 'bad-code' });
    says(30, 'refused', { reason: 'locked' });
    says(40, 'refused', { reason: 'too-fast', of: '/api/join', block: '127.0.0' });
    says(50, 'fails its check', { log: job.job });
    says(30, 'the server has stopped');
  });

  it('leaves out of an error whatever hangs on it', () => {
    const lines: string[] = [];
    const log = makeLogger('trace', { write: (line) => void lines.push(line) });
    const cause = Object.assign(new Error('disk gone'), { input: 'a spoken sentence' });
    log.error(
      { err: Object.assign(new Error('not stored', { cause }), { input: 'forty two' }) },
      'it failed',
    );
    log.error({ err: 'a spoken sentence' }, 'it failed');
    const written = lines.join('');
    expect(written).toContain('not stored');
    expect(written).toContain('disk gone');
    expect(written).not.toMatch(/forty two|spoken/);
  });

  it('says of one network once a minute that it is locked out, and counts each time', async () => {
    const lines: string[] = [];
    const { url } = await serve({
      log: makeLogger('warn', { write: (line) => void lines.push(line) }),
      metricsToken: 'the owner',
    });
    for (let guess = 0; guess < 20; guess++) await post(url, '/api/join', { code: '222222' });
    expect(lines.map((line) => JSON.parse(line).reason)).toEqual(['too-fast']);
    const text = await (await get(url, '/api/metrics', 'the owner')).text();
    // R18: eight wrong ones from one block at once, and the other twelve find it locked.
    expect(text).toContain('ladderline_refusals_total{reason="bad-code",at="request"} 8\n');
    expect(text).toContain('ladderline_refusals_total{reason="too-fast",at="request"} 12\n');
  });
});

describe('whether the server lives, and how it does', () => {
  it('R91: the metrics have what was done so far, and are for the owner only', async () => {
    const { url } = await serve({ metricsToken: 'the owner', disk: { least: 5, now: async () => 7 } });
    const { panel } = await bothIn(url);
    await panel.ack(panel.say('forty two'));
    for (const token of [undefined, '', 'the owne', 'the owner ', 'the-owner']) {
      const refused = await get(url, '/api/metrics', token);
      expect(refused.status).toBe(token === 'the owner ' ? 200 : 401);
      if (!refused.ok) expect(await refused.json()).toEqual({ reason: 'bad-token', text: NO_METRICS });
    }
    const answer = await get(url, '/api/metrics', 'the owner');
    // Prometheus, exposition formats, text-based format.
    expect(answer.headers.get('content-type')).toMatch(/^text\/plain; version=0\.0\.4/);
    const text = await answer.text();
    const value = (name: string) =>
      Number(new RegExp(`^ladderline_${name.replace(/[{}"]/g, '\\$&')} (\\S+)$`, 'm').exec(text)?.[1]);
    expect(value('messages_total{kind="say"}')).toBe(1);
    expect(value('message_seconds_count')).toBeGreaterThanOrEqual(3);
    expect(value('joins_total{seat="emitter"}')).toBe(1);
    expect(value('opened_total{what="job"}')).toBe(1);
    expect(value('connections{role="panel"}')).toBe(1);
    expect(value('connections{role="watcher"}')).toBe(0);
    expect(value('jobs_live')).toBe(1);
    expect(value('entries_total')).toBeGreaterThan(5);
    expect(value('heavy_waiting{kind="jobReports"}')).toBe(0);
    expect(value('damaged_logs')).toBe(0);
    expect(value('disk_free_bytes')).toBe(7);
    expect(value('disk_least_bytes')).toBe(5);
    expect(value('requests_total{path="/api/join",status="200"}')).toBe(1);
    // Every line is a comment or a sample (the same source).
    for (const line of text.trim().split('\n'))
      expect(line).toMatch(/^(# (HELP|TYPE) .*|[a-z_]+(\{(\w+="[^"]*",?)*\})? [-+.\w]+|)$/);
  });

  it('counts a request for another host, and says once a minute which name came', async () => {
    const lines: string[] = [];
    const log = pino({ level: 'info' }, { write: (line: string) => void lines.push(line) });
    const { url } = await serve({ metricsToken: 'the owner', log });
    for (let n = 0; n < 3; n++) {
      const asked = request(`${url}/api/health`, { headers: { host: 'ladders.example' } }).end();
      await new Promise((resolve) =>
        asked.once('response', (answer) => answer.resume().once('end', resolve)),
      );
    }
    const text = await (await get(url, '/api/metrics', 'the owner')).text();
    expect(text).toMatch(/^ladderline_requests_total\{path="no host of ours",status="421"\} 3$/m);
    expect(text).toMatch(/^ladderline_refusals_total\{reason="bad-message",at="request"\} 3$/m);
    const named = linesOf(lines.join('')).filter(({ host }) => host === 'ladders.example');
    expect(named).toHaveLength(1);
    expect(named[0]).toMatchObject({ status: 421, block: '127.0.0' });
  });

  it('R91: nobody may read the metrics of a server without a token for them', async () => {
    const { url } = await serve();
    for (const token of [undefined, 'undefined', ''])
      expect((await get(url, '/api/metrics', token)).status).toBe(401);
  });

  it.each([
    [99, 503],
    [100, 200],
    [101, 200],
  ])('R91: with %i bytes free and 100 that should be, its health is %i', async (free, status) => {
    const { url } = await serve({ disk: { least: 100, now: async () => free } });
    const health = await get(url, '/api/health');
    expect(health.status).toBe(status);
    if (status === 503)
      expect(await health.json()).toMatchObject({
        reason: 'store-failed',
        text: expect.stringMatching(/disk/),
      });
    expect((await get(url, '/api/live')).status).toBe(200);
    // What there still is room for is taken.
    expect((await openJob(url)).job).toBeTruthy();
  });

  it('R91: the program looks at the disk of its data folder, and keeps a token for the metrics there', {
    timeout: 60_000,
  }, async () => {
    const data = newFolder();
    const full = await start(data, '--disk-least', '999999999');
    const health = await get(full.url, '/api/health');
    expect(health.status).toBe(503);
    expect(((await health.json()) as { text: string }).text).toMatch(
      /data folder has \d+ MB free, less than the 999999999 MB/,
    );
    const file = join(data, METRICS_TOKEN_FILE);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    const token = readFileSync(file, 'utf8').trim();
    expect(await (await get(full.url, '/api/metrics', token)).text()).toMatch(/^ladderline_jobs_live 0$/m);
    full.child.kill('SIGTERM');
    expect((await full.ended).err).toMatch(/make room on it/);
  });
});

describe('a server that is asked to stop', { timeout: 60_000 }, () => {
  it('R92: tells the phones, answers what it has taken, takes nothing new, and closes with 1001', async () => {
    const store = new SlowStore();
    const server = await serve({ store });
    const { panel, emitter, job } = await bothIn(server.url);
    await panel.ack(panel.remark('before'));
    store.stop();
    const underWay = panel.remark('under way');
    // A ping is answered as it comes, so the remark before it has come too.
    panel.send({ t: 'ping', n: 1 });
    await panel.next('pong');

    const closing = server.close();
    await Promise.all([panel.next('stopping'), emitter.next('stopping')]);
    const late = panel.remark('too late');
    for (const refused of [
      await post(server.url, '/api/jobs', { setup: SETUP }),
      await post(server.url, '/api/join', { code: '222222' }),
      await get(server.url, '/api/health'),
    ]) {
      expect(refused.status).toBe(503);
      expect(await refused.json()).toEqual({ reason: 'store-failed', text: STOPPING });
    }
    expect((await get(server.url, '/api/live')).status).toBe(200);
    await expect(new Phone(server.url).opened()).rejects.toThrow('503');

    store.letThrough();
    await panel.ack(underWay);
    expect((await panel.closed).code).toBe(1001);
    expect((await emitter.closed).code).toBe(1001);
    await closing;
    const entries = await store.read(job.job, -1, 1_000);
    const remarks = entries.flatMap(({ fact }) => (fact.type === 'remark' ? [fact.text] : []));
    expect(remarks).toEqual(['before', 'under way']);
    expect(panel.all('ack').map(({ id }) => id)).not.toContain(late);
  });

  it('R92: does not wait for ever for a request that never ends', async () => {
    const server = await serve({ limits: { finishWithinMs: 50 } });
    const half = request(`${server.url}/api/jobs`, { method: 'POST', headers: { 'content-length': 1_000 } });
    const cut = new Promise((resolve) => half.on('error', resolve));
    half.write('{"setup":');
    await setTimeout(50);
    await server.close();
    await cut;
  });

  it('R92: the program ends without error, and the next one has all that was acknowledged', async () => {
    const data = newFolder();
    const first = await start(data);
    const { panel, job } = await bothIn(first.url);
    const ids = Array.from({ length: 40 }, (_, n) => panel.remark(`remark ${n}`));
    await panel.ack(ids[0] ?? '');
    first.child.kill('SIGTERM');
    await panel.next('stopping');
    expect((await panel.closed).code).toBe(1001);
    expect(await first.ended).toMatchObject({ code: 0, signal: null, err: '' });

    const second = await start(data);
    const again = await Phone.at(second.url, job.token);
    const logged = again.entries.flatMap(({ ref }) => (ref === undefined ? [] : [ref]));
    const acked = panel.all('ack').map(({ id }) => id);
    expect(acked.length).toBeGreaterThan(0);
    expect(logged).toEqual(expect.arrayContaining(acked));
    // Each one once, also those that were not acknowledged and are sent again.
    for (const id of ids) again.remark('again', id);
    for (const id of ids) await again.ack(id);
    expect(again.entries.filter(({ ref }) => ref !== undefined && ids.includes(ref))).toHaveLength(
      ids.length,
    );
  });
});
