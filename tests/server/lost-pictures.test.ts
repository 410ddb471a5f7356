import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { DATABASE_FILE, openDataFolder } from '../../server/store/data-folder.ts';
import { JobRecord } from '../../src/protocol/jobs.ts';
import { Logged } from '../../src/protocol/site.ts';
import { picture } from '../photos/pictures.ts';
import { DRIVERS } from '../store/drivers.ts';
import { Desk } from './desk.ts';
import { serve } from './house.ts';
import { newId } from './phone.ts';
import { unsigned, visitTo } from './played-site.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-lost-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;

const PAIR = 'S3';
const { job } = visitTo(PAIR);
/** The check in the background goes on without a rest. */
const limits = { checkShare: 1, checkAgainMs: 20 };

describe.each(DRIVERS)('R58: pictures that were changed on the disk, with $name,', (driver) => {
  /** A site with two photos in a visit that is ready to be signed. The server has ended. */
  async function withPhotos() {
    const folder = join(root, String(++folders));
    const store = openDataFolder(folder, driver);
    const { desk } = await layDown(store, unsigned(PAIR));
    const { url, close } = await serve({ store });
    const photos: number[] = [];
    for (const side of [48, 64]) {
      const query = `id=${newId()}&job=${job}&shows=panel`;
      const response = await fetch(`${url}/api/site/photo?${query}`, {
        method: 'POST',
        headers: { authorization: `Bearer ${desk}` },
        body: new Uint8Array(await picture(side, side)),
      });
      photos.push(Logged.parse(await response.json()).seq);
    }
    await close();
    return { folder, desk, photos };
  }

  async function again(folder: string, token: string) {
    const { url } = await serve({ store: openDataFolder(folder, driver), limits });
    const desk = new Desk(url, token);
    const damage = async () => (await desk.board()).damage;
    const status = async () => (await desk.board()).pairs.find(({ plan }) => plan.id === PAIR)?.status;
    const sign = async () => {
      const { head } = JobRecord.parse(await (await desk.get(`/api/site/record?job=${job}`)).json());
      const { count, hash } = head;
      const signature = { kind: 'typed', text: 'S. Example' };
      return desk.post('/api/site/sign', {
        job,
        head: { count, hash },
        name: 'S. Example',
        role: 'Supervisor',
        signature,
      });
    };
    return { desk, damage, status, sign };
  }

  /** As somebody can who may write the file: without the triggers. */
  function edit(folder: string, statements: readonly string[]): void {
    const db = driver.open(join(folder, DATABASE_FILE));
    db.exec('DROP TRIGGER enclosures_stay');
    for (const statement of statements) expect(Number(db.prepare(statement).run().changes)).toBe(1);
    db.close();
  }

  type Photos = readonly number[];
  it.each<[string, (photos: Photos) => string[], (photos: Photos) => number[]]>([
    ['deleted', ([one]) => [`DELETE FROM enclosures WHERE seq = ${one}`], ([one = 0]) => [one]],
    [
      'with another picture in its place',
      ([one, two]) => [
        `UPDATE enclosures SET content = (SELECT content FROM enclosures WHERE seq = ${two}) WHERE seq = ${one}`,
      ],
      ([one = 0]) => [one],
    ],
    [
      'swapped',
      ([one, two]) => [
        `UPDATE enclosures SET seq = -1 WHERE seq = ${one}`,
        `UPDATE enclosures SET seq = ${one} WHERE seq = ${two}`,
        `UPDATE enclosures SET seq = ${two} WHERE seq = -1`,
      ],
      (both) => [...both],
    ],
    [
      'with an edited salt',
      ([, two]) => [`UPDATE enclosures SET salt = '${'f'.repeat(32)}' WHERE seq = ${two}`],
      ([, two = 0]) => [two],
    ],
    [
      'with a salt that is none',
      ([, two]) => [`UPDATE enclosures SET salt = 'x' WHERE seq = ${two}`],
      ([, two = 0]) => [two],
    ],
    [
      'cut',
      ([, two]) => [`UPDATE enclosures SET content = substr(content, 1, 100) WHERE seq = ${two}`],
      ([, two = 0]) => [two],
    ],
  ])('%s, show on the board, and stand in the way of a signature', async (_, statements, lost) => {
    const { folder, desk, photos } = await withPhotos();
    edit(folder, statements(photos));
    const { desk: at, damage, status, sign } = await again(folder, desk);
    const [first = 0, ...others] = lost(photos);
    await vi.waitFor(async () => expect(await damage()).toBeDefined(), { timeout: 20_000 });
    expect((await damage())?.found).toEqual([
      {
        pair: PAIR,
        job,
        seq: first,
        text: expect.stringMatching(
          new RegExp(
            `^Pair ${PAIR}, visit ${job}: the pictures? of entr.* ${[first, ...others].join(', ')} (is|are) gone`,
          ),
        ),
      },
    ]);
    expect(await status()).toBe('needs-attention');
    const refused = await sign();
    expect([refused.status, await refused.json()]).toMatchObject([
      409,
      { reason: 'not-signable', text: expect.stringContaining('Restore a backup') },
    ]);
    for (const seq of [first, ...others]) {
      const shown = await at.get(`/api/site/photo?job=${job}&seq=${seq}`);
      expect([shown.status, await shown.json()]).toMatchObject([
        404,
        { text: expect.stringContaining('not on the server') },
      ]);
      // With the reason in the log, nothing is hidden any more.
      expect(
        (await at.post('/api/site/photo/remove', { job, photo: seq, why: 'Lost with the disk' })).status,
      ).toBe(200);
    }
    expect(await damage()).toBeUndefined();
    expect((await sign()).status).toBe(200);
    expect(await status()).toBe('signed');
  });

  it('are found at the signature itself, before any check in the background', async () => {
    const { folder, desk, photos } = await withPhotos();
    const store = openDataFolder(folder, driver);
    const { url } = await serve({ store, limits: { checkAgainMs: 3_600_000 } });
    const at = new Desk(url, desk);
    expect((await at.board()).damage).toBeUndefined();
    await vi.waitFor(async () => expect((await at.board()).pairs.every(({ status }) => status)).toBe(true));
    store.db.exec(`DELETE FROM enclosures WHERE seq = ${photos[0]}`);
    const { head } = JobRecord.parse(await (await at.get(`/api/site/record?job=${job}`)).json());
    const signature = { kind: 'typed', text: 'S. Example' };
    const { count, hash } = head;
    const signed = { job, head: { count, hash }, name: 'S. Example', role: 'Supervisor', signature };
    expect(await (await at.post('/api/site/sign', signed)).json()).toMatchObject({ reason: 'not-signable' });
    expect((await at.board()).damage?.found).toMatchObject([{ job, seq: photos[0] }]);
  });

  it('as they were, show no damage, and can be signed', async () => {
    const { folder, desk } = await withPhotos();
    const { damage, sign } = await again(folder, desk);
    await new Promise((resolve) => setTimeout(resolve, 500));
    expect(await damage()).toBeUndefined();
    expect((await sign()).status).toBe(200);
  });
});
