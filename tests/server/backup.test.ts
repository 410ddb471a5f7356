import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { backUp } from '../../server/backup/backup.ts';
import { MANIFEST_FILE } from '../../server/backup/folder.ts';
import { PIECES_FOLDER } from '../../server/backup/pieces.ts';
import { restore } from '../../server/backup/restore.ts';
import { SIGNING_KEY_FILE, SigningKey } from '../../server/notary/ed25519.ts';
import { DATABASE_FILE, openDataFolder } from '../../server/store/data-folder.ts';
import { chooseDriver } from '../../server/store/drivers.ts';
import { type Enclosing, StoreFailure } from '../../server/store/store.ts';
import { emptyHead, findFault, seal } from '../../src/log/chain.ts';
import type { Fact } from '../../src/model/facts.ts';
import { JobRecord } from '../../src/protocol/jobs.ts';
import { enclosureOf, photoOf } from '../../src/simulator/photos.ts';
import { sealRemarks } from '../store/contract.ts';
import { DRIVERS } from '../store/drivers.ts';
import { start } from './child.ts';
import { bothIn, get, Phone } from './phone.ts';

const root = mkdtempSync(join(tmpdir(), 'lb-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;
const newFolder = () => join(root, String(++folders));

const recordOf = async (url: string, token: string) =>
  JobRecord.parse(await (await get(url, '/api/record', token)).json());

const JOB = 'job-one-0001';

/** A data folder with three entries, its server stopped. */
async function filled(texts = ['one', 'two', 'three']) {
  const data = newFolder();
  const store = openDataFolder(data);
  await store.append(JOB, sealRemarks(emptyHead(JOB), texts));
  await store.close();
  SigningKey.ofFolder(data);
  return data;
}

async function readBack(data: string) {
  const store = openDataFolder(data);
  const entries = await store.read(JOB, -1, 100);
  await store.close();
  return entries;
}

describe('a backup', () => {
  it('of a server at work has every message that was acknowledged before it began; a phone that knows more is told', async () => {
    const data = newFolder();
    const server = await start(data);
    const { job, panel } = await bothIn(server.url);
    const acked = new Set<string>();
    panel.socket.on('message', (frame) => {
      const message = JSON.parse(String(frame));
      if (message.t === 'ack') acked.add(message.id);
    });
    let sending = true;
    const load = (async () => {
      for (let i = 0; sending; i++) await panel.ack(panel.remark(`note ${i} ${'x'.repeat(400)}`));
    })();
    const into = newFolder();
    const tries: { folder: string; before: Set<string> }[] = [];
    for (let i = 0; i < 3; i++) {
      const enough = acked.size + 10;
      while (acked.size < enough) await new Promise((resolve) => setTimeout(resolve, 5));
      const before = new Set(acked);
      tries.push({ folder: (await backUp(data, into, Date.now() + i)).folder, before });
    }
    sending = false;
    await load;
    await panel.ack(panel.remark('after the last backup'));
    const known = panel.entries.at(-1)?.seq ?? -1;
    server.child.kill('SIGKILL');
    await server.ended;

    for (const { folder, before } of tries) {
      const other = newFolder();
      await restore(folder, other, false, 1);
      const again = await start(other);
      const { head, entries } = await recordOf(again.url, job.token);
      expect(findFault(entries, head)).toBeUndefined();
      const refs = new Set(entries.map(({ ref }) => ref));
      expect([...before].filter((id) => !refs.has(id))).toEqual([]);
      // R6: the phone knows entries that this server does not have.
      await expect(Phone.at(again.url, job.token, known)).rejects.toThrow(
        /from-the-future.*Was an older backup restored\?/,
      );
      again.child.kill('SIGTERM');
      await again.ended;
    }
  }, 120_000);

  it.each(DRIVERS)('copies with $name while the store is open, and goes on', async (driver) => {
    const store = openDataFolder(newFolder(), driver);
    await store.append(JOB, sealRemarks(emptyHead(JOB), ['one', 'two']));
    const folder = newFolder();
    await openDataFolder(folder, driver).close();
    rmSync(join(folder, DATABASE_FILE));
    await store.copyTo(join(folder, DATABASE_FILE));
    await store.append(JOB, sealRemarks(await store.head(JOB), ['three']));
    expect(await store.audit(JOB)).toBeUndefined();
    await store.close();
    expect(await readBack(folder)).toHaveLength(2);
  });

  it('of a stopped server holds its keys, for the owner alone, and comes back as it was', async () => {
    const data = await filled();
    const { folder, manifest, keys, damaged } = await backUp(data, newFolder(), 5);
    expect([manifest.logs, manifest.entries, damaged]).toEqual([1, 3, []]);
    expect(keys).toContain(SIGNING_KEY_FILE);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    expect(statSync(join(folder, SIGNING_KEY_FILE)).mode & 0o777).toBe(0o600);
    const other = newFolder();
    await restore(folder, other, false, 6);
    expect(await readBack(other)).toEqual(await readBack(data));
    expect(SigningKey.ofFolder(other).fingerprint).toBe(SigningKey.ofFolder(data).fingerprint);
  });

  it('has the pictures beside the logs, byte for byte; a lost one is named, and the rest is restored', async () => {
    const data = newFolder();
    const store = openDataFolder(data);
    const add = async (fact: Fact, enclosing?: Enclosing) => {
      const head = await store.head(JOB);
      await store.append(JOB, [seal(head, { actor: 'panel', fact }, 5 + head.count)], {}, enclosing);
    };
    for (const [seq, name] of ['kept', 'removed', 'lost'].entries())
      await add(photoOf(name), { put: { seq, ...enclosureOf(name) } });
    await add({ type: 'photo-removed', photo: 1, why: 'A face is in it' }, { remove: 1 });
    await store.close();
    const into = newFolder();
    const whole = await backUp(data, into, 5);
    expect([whole.damaged, whole.lost]).toEqual([[], []]);
    const db = chooseDriver().open(join(data, DATABASE_FILE));
    db.exec('DELETE FROM enclosures WHERE seq = 2');
    db.close();
    const less = await backUp(data, into, 6);
    expect([less.damaged, less.lost]).toEqual([[], [`${JOB} at entry 2`]]);
    for (const [{ folder, lost }, held] of [
      [whole, ['kept', 'lost']],
      [less, ['kept']],
    ] as const) {
      const other = newFolder();
      expect((await restore(folder, other, false, 7)).lost).toEqual(lost);
      const again = openDataFolder(other);
      const pictures = await Promise.all([0, 1, 2].map((seq) => again.enclosure(JOB, seq)));
      await again.close();
      expect(pictures.filter((picture) => picture !== undefined)).toEqual(held.map(enclosureOf));
    }
  });

  it('of a damaged log is made all the same, and says so; it is not restored', async () => {
    const data = await filled();
    const db = chooseDriver().open(join(data, DATABASE_FILE));
    db.exec('DROP TRIGGER entries_stay');
    db.exec("UPDATE entries SET body = replace(body, 'two', 'TWO') WHERE seq = 1");
    db.close();
    const { folder, damaged } = await backUp(data, newFolder(), 5);
    expect(damaged).toEqual([`${JOB} at entry 1 (hash)`]);
    const other = newFolder();
    await expect(restore(folder, other, false, 6)).rejects.toThrow(/damaged logs: .* Use an older backup/);
    expect(existsSync(join(other, DATABASE_FILE))).toBe(false);
  });

  it('of a folder without a database is refused', async () => {
    await expect(backUp(newFolder(), newFolder(), 5)).rejects.toThrow(/no database/);
  });
});

describe('a restore', () => {
  it('never throws away what stands there: it is refused, or with the flag put aside', async () => {
    const { folder } = await backUp(await filled(), newFolder(), 5);
    const data = await filled(['other', 'words']);
    await expect(restore(folder, data, false, 6)).rejects.toThrow(/holds a database already/);
    expect(await readBack(data)).toHaveLength(2);
    const { before = '' } = await restore(folder, data, true, 7);
    expect(await readBack(data)).toHaveLength(3);
    expect(await readBack(before)).toHaveLength(2);
  });

  it('is refused while a server runs on the folder', async () => {
    const { folder } = await backUp(await filled(), newFolder(), 5);
    const data = await filled(['other']);
    const store = openDataFolder(data);
    await expect(restore(folder, data, true, 6)).rejects.toThrow(/in use/);
    await store.close();
    expect(await readBack(data)).toHaveLength(1);
  });

  it('takes the newest of several, and no file with a single byte changed', async () => {
    const into = newFolder();
    await backUp(await filled(['old']), into, 5);
    const { folder } = await backUp(await filled(['new', 'newer']), into, 6);
    expect(readdirSync(into)).toHaveLength(3);
    const other = newFolder();
    expect((await restore(into, other, false, 7)).from).toBe(folder);
    expect(await readBack(other)).toHaveLength(2);
    const [piece = ''] = JSON.parse(readFileSync(join(folder, MANIFEST_FILE), 'utf8')).pieces;
    const file = join(into, PIECES_FOLDER, piece.slice(0, 2), `${piece}.gz`);
    const bytes = readFileSync(file);
    bytes[bytes.length - 1] = (bytes.at(-1) ?? 0) ^ 1;
    writeFileSync(file, bytes);
    await expect(restore(folder, newFolder(), false, 8)).rejects.toThrow(
      /pieces of .* are missing or damaged/,
    );
    await expect(restore(newFolder(), newFolder(), false, 8)).rejects.toThrow(StoreFailure);
  });
});
