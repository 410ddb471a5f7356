import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { digest, newToken } from '../../server/guard/secrets.ts';
import { DATABASE_FILE, openDataFolder } from '../../server/store/data-folder.ts';
import { SUMMARY_KEY_FILE } from '../../server/store/summary-key.ts';
import { DRIVERS } from '../store/drivers.ts';
import { Desk } from './desk.ts';
import { serve } from './house.ts';
import { Phone } from './phone.ts';
import { demo, visitTo } from './played-site.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-damage-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;

/** Signed in the demo. */
const PAIR = 'N2';
const { job } = visitTo(PAIR);
const site = demo.site[0]?.job ?? '';

describe.each(DRIVERS)('R46: a database file that was changed on the disk, with $name,', (driver) => {
  /** A site whose board was read, so that every summary is kept. The server has ended. */
  async function played() {
    const folder = join(root, String(++folders));
    const store = openDataFolder(folder, driver);
    const { desk } = await layDown(store, demo);
    const server = await serve({ store });
    const board = await new Desk(server.url, desk).board();
    expect(board.damage).toBeUndefined();
    expect(board.pairs.find(({ plan }) => plan.id === PAIR)?.status).toBe('signed');
    await server.close();
    return { folder, desk };
  }

  /** As somebody can who may write the file: without the triggers. */
  function edit(folder: string, ...statements: string[]): void {
    const db = driver.open(join(folder, DATABASE_FILE));
    const triggers = db.prepare<[], { name: string }>(
      "SELECT name FROM sqlite_schema WHERE type = 'trigger'",
    );
    for (const { name } of triggers.all()) db.exec(`DROP TRIGGER ${name}`);
    for (const statement of statements)
      expect(Number(db.prepare(statement).run().changes)).toBeGreaterThan(0);
    db.close();
  }

  async function boardOf(folder: string, token: string) {
    const warnings: string[] = [];
    const store = openDataFolder(folder, driver, (text) => warnings.push(text));
    const { url } = await serve({ store });
    const desk = new Desk(url, token);
    const board = await desk.board();
    return { url, desk, board, warnings, row: board.pairs.find(({ plan }) => plan.id === PAIR) };
  }

  const of = `WHERE job = '${job}'`;
  const LAST = `(SELECT max(seq) FROM entries ${of})`;
  it.each([
    [
      'an edited payload',
      [`UPDATE entries SET body = replace(body, '"at":', '"at": ') ${of} AND seq = 7`],
      7,
    ],
    ['a payload that is no JSON', [`UPDATE entries SET body = 'x' ${of} AND seq = 7`], 7],
    ['a deleted row', [`DELETE FROM entries ${of} AND seq = 7`], 7],
    [
      'two rows swapped',
      [
        `UPDATE entries SET seq = -1 ${of} AND seq = 7`,
        `UPDATE entries SET seq = 7 ${of} AND seq = 8`,
        `UPDATE entries SET seq = 8 ${of} AND seq = -1`,
      ],
      7,
    ],
    [
      'a row of another job',
      [
        `UPDATE entries SET body = (SELECT body FROM entries WHERE job <> '${job}' AND seq = 7), hash = (SELECT hash FROM entries WHERE job <> '${job}' AND seq = 7) ${of} AND seq = 7`,
      ],
      7,
    ],
    [
      'the id of another message beside an entry',
      [`UPDATE entries SET ref = 'another-message' ${of} AND seq = 7`],
      7,
    ],
    [
      'a tail that was cut',
      [`DELETE FROM entries ${of} AND seq = ${LAST}`],
      visitTo(PAIR).entries.length - 1,
    ],
    [
      'a tail that was cut, and the head with it',
      [
        `DELETE FROM entries ${of} AND seq >= 7`,
        `UPDATE heads SET count = 7, hash = (SELECT hash FROM entries ${of} AND seq = 6) ${of}`,
      ],
      7,
    ],
    ['a head that is gone', [`DELETE FROM heads ${of}`], visitTo(PAIR).entries.length],
    ['a job that is gone, with its head', [`DELETE FROM entries ${of}`, `DELETE FROM heads ${of}`], 0],
    [
      'a job of which nothing is left',
      [`DELETE FROM entries ${of}`, `DELETE FROM heads ${of}`, `DELETE FROM summaries ${of}`],
      0,
    ],
  ])('%s, is what the board says first: which pair, where, and what to do', async (_, statements, seq) => {
    const { folder, desk } = await played();
    edit(folder, ...statements);
    const { board, row, desk: at } = await boardOf(folder, desk);
    expect(board.damage?.found).toEqual([
      { pair: PAIR, job, seq, text: expect.stringContaining(`Pair ${PAIR}`) },
    ]);
    expect(board.damage?.toDo).toMatch(/^Sign nothing .* restore the newest backup\.$/);
    expect(row).toMatchObject({ status: 'needs-attention', next: expect.stringContaining('do not sign') });
    expect([row?.signed, row?.final]).toEqual([undefined, undefined]);
    const head = { count: visitTo(PAIR).entries.length, hash: visitTo(PAIR).entries.at(-1)?.hash };
    const signer = {
      name: 'S. Example',
      role: 'Supervisor',
      signature: { kind: 'typed', text: 'S. Example' },
    };
    expect(await (await at.post('/api/site/sign', { job, head, ...signer })).json()).toMatchObject({
      reason: 'log-broken',
    });
  });

  it('the site’s own log: the board says so, and takes nothing more', async () => {
    const { folder, desk } = await played();
    edit(
      folder,
      `UPDATE entries SET body = replace(body, 'North', 'South') WHERE job = '${site}' AND seq = 3`,
    );
    const { board, desk: at } = await boardOf(folder, desk);
    expect(board.damage?.found).toEqual([
      { job: site, seq: 3, text: expect.stringContaining('The record of this site was damaged') },
    ]);
    expect((await at.post('/api/site/drop', { pair: PAIR, reason: 'not needed' })).status).toBe(409);
  });

  it('the site’s own log, with nothing left of it: the link does not look wrong, the site is gone', async () => {
    const { folder, desk } = await played();
    edit(folder, `DELETE FROM entries WHERE job = '${site}'`, `DELETE FROM heads WHERE job = '${site}'`);
    const { board } = await boardOf(folder, desk);
    expect(board.damage?.found).toEqual([
      { job: site, seq: 0, text: expect.stringContaining('The record of this site is gone') },
    ]);
  });

  it('an edited summary is not believed: the log says what is so', async () => {
    const { folder, desk } = await played();
    const other = visitTo('S4');
    const set = (status: string) =>
      `UPDATE summaries SET body = json_set(body, '$.status', '${status}') WHERE job = '${other.job}'`;
    edit(folder, set('signed'));
    const { board, warnings } = await boardOf(folder, desk);
    expect(board.pairs.find(({ plan }) => plan.id === 'S4')?.status).toBe('signed-not-proven');
    expect(board.damage).toBeUndefined();
    expect(warnings).toEqual([expect.stringContaining('not of this server')]);
  });

  it('with a key file that is lost or another: every summary is made again, and the server says so', async () => {
    const { folder, desk } = await played();
    const file = join(folder, SUMMARY_KEY_FILE);
    rmSync(file);
    const lost = await boardOf(folder, desk);
    expect(lost.row?.status).toBe('signed');
    expect(lost.warnings[0]).toContain('was missing');
    expect(statSync(file).mode & 0o777).toBe(0o600);
  });

  it('an open room takes nothing more once the check in the background has found the damage', async () => {
    const folder = join(root, String(++folders));
    const store = openDataFolder(folder, driver);
    const { desk } = await layDown(store, demo);
    const limits = { checkShare: 1, checkAgainMs: 20 };
    const { url } = await serve({ store, limits });
    const token = newToken();
    await store.append(job, [], { issue: [{ token: digest(token), role: 'panel' }] });
    const panel = await Phone.at(url, token);
    await panel.ack(panel.remark('before'));
    await new Desk(url, desk).board();
    // The store itself is the one program that may write while the server runs.
    store.db.exec('DROP TRIGGER entries_stay');
    store.db.exec(`UPDATE entries SET body = replace(body, '"at":', '"at": ') ${of} AND seq = 7`);
    await vi.waitFor(
      async () => expect((await new Desk(url, desk).board()).damage?.found).toMatchObject([{ job, seq: 7 }]),
      { timeout: 20_000 },
    );
    expect(await panel.refusal(panel.remark('after'))).toMatchObject({ reason: 'log-broken' });
  });
});
