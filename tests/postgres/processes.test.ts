import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import { Carriage } from '../../server/guard/carriage.ts';
import { SigningKey } from '../../server/notary/ed25519.ts';
import { openPostgres } from '../../server/postgres/open.ts';
import type { ServerOptions } from '../../server/start.ts';
import { newSummaryKey } from '../../server/store/summary-key.ts';
import { findFault } from '../../src/log/chain.ts';
import { JobRecord } from '../../src/protocol/jobs.ts';
import { holder, neededAccounts } from '../server/browser.ts';
import { run } from '../server/child.ts';
import { collector, spansIn } from '../server/collector.ts';
import { serve } from '../server/house.ts';
import { get, join as joinJob, openJob, Phone, post } from '../server/phone.ts';
import { Cluster, POSTGRES } from './cluster.ts';

describe.runIf(POSTGRES)('a server of two processes on one database', () => {
  const data = mkdtempSync(join(tmpdir(), 'ladderline-processes-'));
  let cluster: Cluster;
  beforeAll(async () => {
    Phone.patienceMs = 25_000;
    cluster = await Cluster.start();
    // One after the other makes the tables and the keys; then all may start at once.
    await (await openPostgres({ ...cluster.newPlace(), schema: undefined }, newSummaryKey())).close();
  }, 60_000);
  afterAll(async () => {
    await cluster?.remove();
    rmSync(data, { recursive: true });
  }, 30_000);

  const start = async () => {
    const where = ['--port', '0', '--host', '127.0.0.1', '--tls', 'off', '--data', data];
    const store = ['--store', cluster.url, '--store-password-file', cluster.passwordFile];
    const server = run([...where, ...store]);
    return { ...server, url: await server.started };
  };

  /** As a phone does: again and again, until it is let in. */
  const comeIn = async (url: string, token: string, after: number): Promise<Phone> => {
    for (let tries = 0; ; tries++) {
      try {
        return await Phone.at(url, token, after);
      } catch (error) {
        if (tries > 40) throw error;
        await setTimeout(250);
      }
    }
  };

  const recordOf = async (url: string, token: string) => {
    const { head, entries } = JobRecord.parse(await (await get(url, '/api/record', token)).json());
    expect(findFault(entries, head)).toBeUndefined();
    return entries;
  };

  it('R170: the phones of a crew and a watcher are on different ones, and see the same, each message once', async () => {
    const [a, b] = [await start(), await start()];
    const job = await openJob(a.url);
    const panel = await Phone.at(a.url, job.token);
    // The code is used where the job is not.
    const joined = await joinJob(b.url, job.invite.code);
    const emitter = await Phone.at(b.url, joined.token);
    const watcher = await Phone.at(b.url, job.watch);
    await panel.presence((p) => p.emitter === 'online' && p.watchers === 1);
    const seqs = [
      await panel.ack(panel.remark('from a')),
      await emitter.ack(emitter.remark('from b')),
      await panel.ack(panel.say('forty two')),
    ];
    const { head } = await watcher.next('welcome');
    expect(head.job).toBe(job.job);
    const last = seqs.at(-1) as number;
    for (const phone of [panel, emitter, watcher]) await phone.entry(({ seq }) => seq === last);
    const record = await recordOf(b.url, job.watch);
    for (const phone of [panel, emitter, watcher])
      expect(phone.entries).toEqual(record.slice(0, phone.entries.length));
    // What a phone asks about the line goes all the way.
    emitter.send({ t: 'ping', n: 7 });
    expect((await emitter.next('pong')).n).toBe(7);
    expect(await (await get(b.url, '/api/health')).json()).toMatchObject({ store: 'postgres' });
    a.child.kill();
    expect((await a.ended).code).toBe(0);
    // It gave its jobs up, so nobody has to wait.
    expect((await emitter.closed).code).toBe(1001);
    const again = await comeIn(b.url, joined.token, emitter.entries.at(-1)?.seq ?? -1);
    expect(await again.ack(again.remark('at b alone'))).toBeGreaterThan(last);
  });

  it('a request that is carried is one trace at the collector; who asks from outside has no say in it', async () => {
    const { got, url: otlp } = await collector();
    const place = cluster.newPlace();
    const signingKey = SigningKey.make();
    const at = async () => {
      const store = await openPostgres(place, newSummaryKey());
      onTestFinished(() => store.close());
      return serve({ store, leases: store.leases, signingKey, otlp });
    };
    const [a, b] = [await at(), await at()];
    const job = await openJob(a.url);
    await Phone.at(a.url, job.token);
    // W3C Trace Context, section 3.2.3, its example.
    const traceparent = '00-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-01';
    const body = { code: job.invite.code, device: 'emitter phone' };
    expect((await post(b.url, '/api/join', body, { traceparent })).status).toBe(200);
    await Promise.all([a.close(), b.close()]);
    const spans = spansIn(got).filter(({ name }) => name === 'POST /api/join');
    const first = spans.find(({ parentSpanId = '' }) => parentSpanId === '');
    const [carried] = spans.filter((span) => span !== first);
    expect(spans).toHaveLength(2);
    expect(carried).toMatchObject({ traceId: first?.traceId, parentSpanId: first?.spanId });
    expect(traceparent).not.toContain(first?.traceId);
  });

  it('R181: who is signed in where they came to is named, also where another process has the job', async () => {
    const place = cluster.newPlace();
    const signingKey = SigningKey.make();
    const accounts = neededAccounts(mkdtempSync(join(data, 'accounts-')));
    const at = async (more: Partial<ServerOptions>) => {
      const store = await openPostgres(place, newSummaryKey());
      onTestFinished(() => store.close());
      return { store, ...(await serve({ store, leases: store.leases, signingKey, ...more })) };
    };
    // At the first one nobody is known.
    const [a, b] = [await at({}), await at({ accounts })];
    const job = await openJob(a.url);
    await Phone.at(a.url, job.token);
    const { cookie } = await holder({ url: b.url, accounts }, 'Ada Löwe', 'supervisor');
    await Phone.at(b.url, job.watch, -1, { cookie });
    // Any process reads a record; who asked is known where it was asked.
    const authorization = `Bearer ${job.watch}`;
    const exported = await fetch(`${b.url}/api/export.jsonl`, { headers: { cookie, authorization } });
    expect(exported.status).toBe(200);
    // Who only says so, and does not know the key of this server, is nobody.
    await Phone.at(a.url, job.watch, -1, new Carriage('a guess').headersFor('192.0.2.1', 'B. Example'));
    const readers = async () =>
      (await a.store.readsAfter(0, 9)).map(({ what, role, reader, name }) => [what, role, reader, name]);
    await vi.waitFor(async () =>
      expect(await readers()).toEqual([
        ['record', 'panel', 'link', ''],
        ['record', 'watcher', 'account', 'Ada Löwe'],
        ['export', 'watcher', 'account', 'Ada Löwe'],
        ['record', 'watcher', 'link', ''],
      ]),
    );
  });

  it('R171: one that is killed: its phones come back to the other, miss nothing, and what they send again is there once', async () => {
    const [a, b] = [await start(), await start()];
    const job = await openJob(a.url);
    const panel = await Phone.at(a.url, job.token);
    const watcher = await Phone.at(b.url, job.watch);
    await panel.ack(panel.remark('before'));
    const id = panel.remark('on the way');
    await panel.ack(id);
    a.child.kill('SIGKILL');
    await watcher.closed;
    const again = await comeIn(b.url, job.token, -1);
    expect(await again.ack(again.remark('on the way', id))).toBe(await panel.ack(id));
    const watching = await comeIn(b.url, job.watch, watcher.entries.at(-1)?.seq ?? -1);
    const last = await again.ack(again.remark('after'));
    await watching.entry(({ seq }) => seq === last);
    const record = await recordOf(b.url, job.watch);
    expect([...watcher.entries, ...watching.entries]).toEqual(record);
  });

  it('R172: one that is stopped for longer than its lease stores nothing more, and its phones go to the other', async () => {
    const [a, b] = [await start(), await start()];
    const job = await openJob(a.url);
    const panel = await Phone.at(a.url, job.token);
    await panel.ack(panel.remark('before'));
    a.child.kill('SIGSTOP');
    // It lies in the socket of the process that does not run.
    const late = panel.remark('to the stopped one');
    const again = await comeIn(b.url, job.token, -1);
    const taken = await again.ack(again.remark('at the other'));
    a.child.kill('SIGCONT');
    const became = await Promise.race([
      panel.ack(late).then(
        () => 'acknowledged',
        () => 'closed',
      ),
      panel.refusal(late).then(
        () => 'refused',
        () => 'closed',
      ),
    ]);
    expect(became).not.toBe('acknowledged');
    await panel.closed;
    // Through the one that was stopped, it now reaches the other.
    const through = await comeIn(a.url, job.watch, -1);
    await through.entry(({ seq }) => seq === taken);
    const ack = await again.ack(again.remark('to the stopped one', late));
    const record = await recordOf(a.url, job.watch);
    expect(record.filter(({ ref }) => ref === late).map(({ seq }) => seq)).toEqual([ack]);
  });
});
