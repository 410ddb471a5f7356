import { closeSync, mkdtempSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, onTestFinished } from 'vitest';
import { DATABASE_FILE, openDataFolder } from '../../server/store/data-folder.ts';
import { StoreFailure } from '../../server/store/store.ts';
import { openInThread } from '../../server/store/threaded.ts';
import { emptyHead, headAfter } from '../../src/log/chain.ts';
import { sealRemarks, storeContract } from './contract.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-thread-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;
const newFolder = () => join(root, String(++folders));
const open = (folder: string) => openInThread(folder, () => {});

storeContract('SQLite in a thread', () => open(newFolder()));

/**
 * Commits in a write-ahead log, by its own format (sqlite.org/fileformat2.html#walformat): a header of 32 bytes with the
 * page size at 8, then frames with a header of 24 bytes, whose second number is not 0 where a transaction ends.
 */
function commitsIn(file: string): number {
  const wal = readFileSync(file);
  const frame = 24 + wal.readUInt32BE(8);
  let commits = 0;
  for (let at = 32; at + frame <= wal.length; at += frame) if (wal.readUInt32BE(at + 4) !== 0) commits += 1;
  return commits;
}

describe('the store in its thread', () => {
  it('stores what comes at the same time with one wait for the disk, and all of it', async () => {
    const folder = newFolder();
    const store = await open(folder);
    onTestFinished(() => store.close());
    const jobs = Array.from({ length: 40 }, (_, i) => `job-${String(i).padStart(8, '0')}`);
    await store.head('job-00000000');
    const wal = join(folder, `${DATABASE_FILE}-wal`);
    const before = commitsIn(wal);
    const appended = await Promise.all(
      jobs.map((job) => store.append(job, sealRemarks(emptyHead(job), ['one', 'two']))),
    );
    expect(appended.every(({ kind }) => kind === 'stored')).toBe(true);
    expect(commitsIn(wal) - before).toBe(1);
    for (const job of jobs) expect((await store.head(job)).count).toBe(2);
  });

  it('stores the others when one of those that come at the same time cannot be stored', async () => {
    const store = await open(newFolder());
    onTestFinished(() => store.close());
    const [first] = sealRemarks(emptyHead('job-good-0001'), ['one']);
    const [bad] = sealRemarks(emptyHead('job-bad-00001'), ['one']);
    if (!first || !bad) throw new Error('nothing was sealed');
    // A token can be issued once only: the second time its row is refused.
    const keys = { issue: [{ token: 'the same', role: 'panel' as const }] };
    const [good, broken, after] = await Promise.allSettled([
      store.append(first.job, [first], keys),
      store.append(bad.job, [bad], keys),
      store.append(first.job, sealRemarks(headAfter(first), ['two'])),
    ]);
    expect(good).toEqual({ status: 'fulfilled', value: { kind: 'stored' } });
    expect(broken).toMatchObject({ status: 'rejected', reason: expect.any(StoreFailure) });
    expect(after).toEqual({ status: 'fulfilled', value: { kind: 'stored' } });
    expect((await store.head(bad.job)).count).toBe(0);
    expect((await store.head(first.job)).count).toBe(2);
  });

  it('stores what came before it is closed, and takes nothing after', async () => {
    const folder = newFolder();
    const store = await open(folder);
    const entries = sealRemarks(emptyHead('job-last-0001'), ['one']);
    const [appended] = await Promise.all([store.append('job-last-0001', entries), store.close()]);
    expect(appended).toEqual({ kind: 'stored' });
    await expect(store.head('job-last-0001')).rejects.toThrow(StoreFailure);
    const again = openDataFolder(folder);
    expect(await again.read('job-last-0001', -1, 10)).toEqual(entries);
    await again.close();
  });

  it('says in the same words as ever why a file cannot be opened', async () => {
    const folder = newFolder();
    await (await open(folder)).close();
    const file = openSync(join(folder, DATABASE_FILE), 'r+');
    writeSync(file, Buffer.alloc(100, 'x'), 0, 100, 0);
    closeSync(file);
    await expect(open(folder)).rejects.toThrow(/is damaged .*backup/);
    await expect(open(folder)).rejects.toThrow(StoreFailure);
  });
});
