import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { copyStore } from '../../server/copy/copy.ts';
import { forgetInDatabase } from '../../server/forget/forget.ts';
import { digest } from '../../server/guard/secrets.ts';
import { openPostgres } from '../../server/postgres/open.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { type Store, StoreFailure } from '../../server/store/store.ts';
import { newSummaryKey } from '../../server/store/summary-key.ts';
import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Fact } from '../../src/model/facts.ts';
import { Cluster, POSTGRES } from '../postgres/cluster.ts';
import { sealRemarks } from '../store/contract.ts';

const [JOB, OTHER, SITE] = ['job-one-0001', 'job-two-0002', 'site-three-03'];
const token = (name: string) => digest(name);

/** Something of everything that a store can hold. */
async function fill(store: Store): Promise<void> {
  const seated: Fact = {
    ...{ type: 'seated', seat: 'panel', device: 'phone', takeover: false, person: { name: 'Ö. Example' } },
  } as Fact;
  const named: Entry[] = [];
  let head = emptyHead(JOB);
  for (const salt of ['a', 'b']) {
    const entry = seal(head, { actor: 'panel', fact: seated }, 5, undefined, () => salt.repeat(32));
    named.push(entry);
    head = headAfter(entry);
  }
  await store.append(JOB, named, { issue: [{ token: token('panel'), role: 'panel' }] });
  const forget: Fact = { type: 'names-forgotten', entries: [0], why: 'Asked for' };
  await store.append(JOB, [seal(head, { actor: 'server', fact: forget }, 9)], {}, { forget: [0] });
  const texts = Array.from({ length: 700 }, (_, i) => `“${i}” \u0000 火災 🔥`);
  await store.append(JOB, sealRemarks(await store.head(JOB), texts, 'message-1'), undefined, {
    put: { seq: 3, salt: '00', content: Buffer.from('a picture') },
  });
  await store.append(OTHER, sealRemarks(emptyHead(OTHER), ['x']), {
    issue: ['first', 'second'].map((name) => ({ token: token(name), role: 'emitter' as const })),
  });
  await store.append(OTHER, [], { revoke: 'emitter', issue: [{ token: token('third'), role: 'emitter' }] });
  await store.append(OTHER, [], { issue: [{ token: token('link'), role: 'watcher' }] });
  await store.append(OTHER, [], { withdraw: token('link') });
  await store.append(SITE, [], { issue: [{ token: token('desk'), role: 'desk' }] });
  const signed = { at: 5, key: 'a key', signature: 'a signature' };
  await store.addSignedHeads([
    { ...(await store.head(JOB)), ...signed },
    { ...(await store.head(OTHER)), ...signed, signature: 'another' },
  ]);
  const by = { log: JOB, what: 'record', role: 'watcher', key: 'a'.repeat(12), name: 'Ö. Example' } as const;
  await store.changeReads({ note: [0, 3_600_000].map((hour) => ({ ...by, hour, reader: 'account' })) });
  for (const size of [1, 2])
    await store.addStamp({ size, root: 'f', at: 5, key: 'k', signature: 's', nonce: 'n', token: 'A' });
}

/** All that the interface gives of it, but for what is made again. */
async function contentOf(store: Store) {
  const logs = (await store.logs()).sort();
  const each = async <T>(of: (job: string) => Promise<T>) => Promise.all(logs.map(of));
  return {
    jobs: await store.jobs(),
    entries: await each((job) => store.read(job, -1, 10_000)),
    passes: await each(async (job) =>
      (await store.everyPass(job)).sort((a, b) => (a.token < b.token ? -1 : 1)),
    ),
    places: await each((job) => store.seqOf(job, 'message-1')),
    named: await store.named(),
    enclosed: await store.enclosed(),
    picture: await store.enclosure(JOB, 3),
    signed: await store.signedHeads(0, 100),
    stamps: [await store.stampOver(0), await store.stampOver(1), await store.stampOver(2)],
    reads: (await store.readsAfter(0, 100)).map(({ number, ...read }) => read),
    audits: await each((job) => store.audit(job)),
  };
}

const filled = async () => {
  const store = new MemoryStore();
  await fill(store);
  return store;
};

describe('a copy', () => {
  it('has everything, and says how much', async () => {
    const [from, to] = [await filled(), new MemoryStore()];
    expect(await copyStore(from, to)).toEqual({
      ...{ logs: 3, entries: 704, brought: 704, enclosures: 1, signedHeads: 2 },
    });
    expect(await contentOf(to)).toEqual(await contentOf(from));
  });

  it('that was cut off anywhere goes on when it is made again, and is whole then', async () => {
    const from = await filled();
    const whole = await contentOf(from);
    let writes = 0;
    for (let most = 0; ; most++) {
      const to = new MemoryStore();
      let left = most;
      const frail = new Proxy(to, {
        get: (store, name) => {
          const value = Reflect.get(store, name, store);
          if (typeof value !== 'function') return value;
          const writes = ['append', 'addSignedHeads', 'addStamp'].includes(String(name));
          return (...args: unknown[]) => {
            if (writes && left-- <= 0) throw new StoreFailure('the way is cut');
            return value.apply(store, args);
          };
        },
      });
      const outcome = await copyStore(from, frail).catch((error: Error) => error.message);
      if (outcome !== 'the way is cut') break;
      writes += 1;
      await copyStore(from, to);
      expect(await contentOf(to)).toEqual(whole);
      // And once more brings nothing.
      expect(await copyStore(from, to)).toMatchObject({ brought: 0 });
    }
    expect(writes).toBeGreaterThan(10);
  });

  it('writes nothing over: another log, picture or signed head of the same name is refused', async () => {
    const from = await filled();
    const log = new MemoryStore();
    await log.append(JOB, sealRemarks(emptyHead(JOB), ['another beginning']));
    await expect(copyStore(from, log)).rejects.toThrow(
      /the log job-one-0001 is already there and is another one/,
    );
    expect((await log.head(JOB)).count).toBe(1);
    const longer = new MemoryStore();
    await copyStore(from, longer);
    await longer.append(JOB, sealRemarks(await longer.head(JOB), ['gone on']));
    await expect(copyStore(from, longer)).rejects.toThrow(/is another one/);
    const picture = new MemoryStore();
    await picture.append(JOB, [], {}, { put: { seq: 3, salt: '00', content: Buffer.from('another') } });
    await expect(copyStore(from, picture)).rejects.toThrow(/what lies beside entry 3 .* is another one/);
    const heads = new MemoryStore();
    await heads.addSignedHeads([
      { job: JOB, count: 704 - 1, hash: (await from.head(JOB)).hash, at: 5, key: 'k', signature: 'theirs' },
    ]);
    await expect(copyStore(from, heads)).rejects.toThrow(/a signed head .* is another one/);
  });

  it('is not made of a damaged log', async () => {
    const from = await filled();
    await from.append(JOB, [], {}, { forget: [1] });
    const to = new MemoryStore();
    await expect(copyStore(from, to)).rejects.toThrow(
      'the log job-one-0001 is damaged in what is copied, at entry 1 (names-missing).',
    );
    expect(await to.logs()).toEqual([]);
  });
});

describe.runIf(POSTGRES)('a copy to PostgreSQL and back', () => {
  let cluster: Cluster;
  beforeAll(async () => {
    cluster = await Cluster.start();
  }, 60_000);
  afterAll(() => cluster?.remove(), 30_000);

  it('is what was there before, in every part', async () => {
    const root = mkdtempSync(join(tmpdir(), 'ladderline-copy-'));
    onTestFinished(() => rmSync(root, { recursive: true }));
    const [before, after] = ['before', 'after'].map((name) => openDataFolder(join(root, name)));
    const database = await openPostgres(cluster.newPlace(), newSummaryKey());
    if (!before || !after) throw new Error('there are two');
    onTestFinished(async () => {
      for (const store of [before, after, database]) await store.close();
    });
    await fill(before);
    const content = await contentOf(before);
    await copyStore(before, database);
    expect(await contentOf(database)).toEqual(content);
    await copyStore(database, after);
    expect(await contentOf(after)).toEqual(content);
  }, 60_000);

  it('is where a name is forgotten, once no server uses it', async () => {
    const data = mkdtempSync(join(tmpdir(), 'ladderline-forget-'));
    onTestFinished(() => rmSync(data, { recursive: true }));
    const place = cluster.newPlace();
    const wish = { name: 'Ö. Example', why: 'Asked for', isSure: true, at: 20 };
    const database = await openPostgres(place, newSummaryKey());
    onTestFinished(() => database.close());
    await fill(database);
    await database.leases.begin('http://127.0.0.1:1');
    await expect(forgetInDatabase(place, data, wish)).rejects.toThrow(
      /^a server uses postgres:\/\/.* \(the process at http:\/\/127\.0\.0\.1:1\): stop it first\.$/,
    );
    await database.leases.close();
    expect(await forgetInDatabase(place, data, wish)).toMatchObject({
      records: [{ job: JOB, beside: [1] }],
      readers: ['Ö. Example'],
    });
    expect(await database.readers()).toEqual([]);
    expect(JSON.stringify(await database.read(JOB, -1, 10_000))).not.toContain(wish.name);
    expect(await database.audit(JOB)).toBeUndefined();
  }, 60_000);
});
