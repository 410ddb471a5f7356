import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { forgetIn, forgetName } from '../../server/forget/forget.ts';
import { forgetLines } from '../../server/forget/report.ts';
import { wholeLog } from '../../server/record/files.ts';
import { DATABASE_FILE, openDataFolder } from '../../server/store/data-folder.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import type { Store } from '../../server/store/store.ts';
import { bodyOf, emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import { toJsonLines } from '../../src/log/json-lines.ts';
import { isNamed } from '../../src/log/names.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Fact } from '../../src/model/facts.ts';
import { FORGOTTEN } from '../../src/model/forgotten.ts';
import type { JobId } from '../../src/model/ids.ts';
import { toCsv } from '../../src/record/csv-file.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { LoggedJob } from '../../src/simulator/logged-job.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { SETUP } from '../client/fixtures.ts';
import { DRIVERS } from '../store/drivers.ts';
import { verified } from '../verify/checked.ts';
import { Desk } from './desk.ts';
import { serve } from './house.ts';
import { Phone, post } from './phone.ts';
import { demo, tokenOf, visitTo } from './played-site.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-forget-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;
const newFolder = () => join(root, String(++folders));

const WHY = 'Asked for in writing';
const AT = Date.UTC(2026, 10, 27);
const wish = (name: string, isSure = true) => ({ name, why: WHY, isSure, at: AT });

const SIGNER = 'S. Example';
const signedVisits = demo.visits.filter(({ entries }) => entries.some(({ fact }) => fact.type === 'signed'));

/** Sealed as a server seals what one input led to. */
function append(store: Store, job: JobId, facts: readonly Fact[], salt?: () => string) {
  return store.head(job).then(async (head) => {
    let end = head;
    const drafts = facts.map((fact) => ({ actor: 'panel' as const, fact }));
    const entries = drafts.map((draft) => {
      const entry = seal(end, draft, 5 + end.count, undefined, isNamed(draft, drafts) ? salt : undefined);
      end = headAfter(entry);
      return entry;
    });
    await store.append(job, entries);
    return entries;
  });
}

let salts = 0;
const newSalt = () => String(++salts).padStart(32, '0');

const OPENED = (logVersion: 1 | 2 | 3): Fact => ({ type: 'opened', setup: SETUP, logVersion });
const seated = (name: string): Fact => ({
  type: 'seated',
  seat: 'emitter',
  device: 'phone',
  takeover: false,
  person: { name },
});

describe.each(DRIVERS)('forgetting who signed, with $name,', (driver) => {
  async function played() {
    const folder = newFolder();
    const store = openDataFolder(folder, driver);
    const keys = await layDown(store, demo);
    const server = await serve({ store });
    await new Desk(server.url, keys.desk).board();
    await server.close();
    return { folder, ...keys };
  }

  const onDisk = (folder: string, text: string) =>
    readdirSync(folder).filter((file) => readFileSync(join(folder, file)).includes(text));

  it('only says where the name stands until it is told to do it', async () => {
    const { folder } = await played();
    const before = readFileSync(join(folder, DATABASE_FILE));
    const { records: found } = await forgetIn(folder, wish(SIGNER, false));
    expect(found.map(({ job }) => job).sort()).toEqual(signedVisits.map(({ job }) => job).sort());
    const { lines, isDone } = forgetLines(SIGNER, found, false);
    expect(lines.at(-1)).toMatch(/^Nothing is changed yet\. .* run it again with --yes\.$/);
    expect(isDone).toBe(false);
    expect(readFileSync(join(folder, DATABASE_FILE)).equals(before)).toBe(true);
  });

  it('takes the name from every record, from the board and from the medium; each chain holds, and signatures stand', async () => {
    const { folder, desk } = await played();
    expect(onDisk(folder, SIGNER)).toEqual([DATABASE_FILE]);
    const { records: found } = await forgetIn(folder, wish('s.  EXAMPLE'));
    expect(found.length).toBeGreaterThan(1);
    expect(onDisk(folder, SIGNER)).toEqual([]);

    const store = openDataFolder(folder, driver);
    for (const { job } of signedVisits) {
      expect(await store.audit(job)).toBeUndefined();
      const log = await wholeLog(store, job);
      const text = toJsonLines(log.entries, log.head);
      expect(verified(text)).toMatchObject({ ok: true, replayed: true });
      const told = log.entries.at(-1);
      const signed = log.entries.filter(({ fact }) => fact.type === 'signed').map(({ seq }) => seq);
      expect(told).toMatchObject({
        actor: 'server',
        at: AT,
        fact: { type: 'names-forgotten', entries: signed, why: WHY },
      });
      const state = log.entries.reduce(fold, EMPTY);
      expect(state.signed).toMatchObject({ name: FORGOTTEN, role: 'Supervisor' });
      const was = demo.visits.find((visit) => visit.job === job)?.entries.reduce(fold, EMPTY);
      expect(state.changedBy).toBe(was?.changedBy);
      const ids = (entries: readonly Entry[]) => new VisitRecord({ entries }).findings.map(({ id }) => id);
      expect(ids(log.entries)).toEqual(ids(log.entries.slice(0, -1)));
      const csv = toCsv(log.entries, log.head);
      expect(csv).toContain(FORGOTTEN);
      expect(csv + text).not.toContain(SIGNER);
    }
    const server = await serve({ store });
    const board = await new Desk(server.url, desk).board();
    expect(board.damage).toBeUndefined();
    const row = board.pairs.find(({ plan }) => plan.id === 'N2');
    expect(row?.status).toBe('signed');
    expect(JSON.stringify(board)).not.toContain(SIGNER);
    expect(JSON.stringify(row)).toContain(FORGOTTEN);
    expect(onDisk(folder, SIGNER)).toEqual([]);
    await server.close();
  });

  it('finds it no more the second time, writes nothing, and says so', async () => {
    const { folder } = await played();
    await forgetIn(folder, wish(SIGNER));
    const before = readFileSync(join(folder, DATABASE_FILE));
    const { records: found } = await forgetIn(folder, wish(SIGNER));
    expect(found).toEqual([]);
    expect(forgetLines(SIGNER, found, true)).toEqual({
      lines: [
        'Nothing found: no record and no account holds the name "S. Example". Write it as it was typed.',
      ],
      isDone: false,
    });
    expect(readFileSync(join(folder, DATABASE_FILE)).equals(before)).toBe(true);
  });

  /** As somebody can who may write the file: without the triggers. */
  function edit(folder: string, statement: string): void {
    const db = driver.open(join(folder, DATABASE_FILE));
    for (const name of ['names_stay', 'names_once']) db.exec(`DROP TRIGGER ${name}`);
    expect(Number(db.prepare(statement).run().changes)).toBeGreaterThan(0);
    db.close();
  }

  const { job } = visitTo('N2');
  const signed = visitTo('N2').entries.find(({ fact }) => fact.type === 'signed')?.seq ?? -1;
  const of = `WHERE job = '${job}' AND seq = ${signed}`;
  it.each([
    ['the name was changed', `UPDATE names SET names = replace(names, 'S. Ex', 'T. Ex') ${of}`, 'names'],
    ['the salt was changed', `UPDATE names SET salt = '${'0'.repeat(32)}' ${of}`, 'names'],
    ['the name was deleted by hand', `DELETE FROM names ${of}`, 'names-missing'],
    [
      'a name was put beside an entry that has none',
      `INSERT INTO names SELECT job, 0, salt, names FROM names ${of}`,
      'names',
    ],
  ])('R111: is damage that the board says first where %s', async (_, statement, fault) => {
    const { folder, desk } = await played();
    edit(folder, statement);
    const store = openDataFolder(folder, driver);
    const seq = statement.startsWith('INSERT') ? 0 : signed;
    expect(await store.audit(job)).toEqual({ seq, fault });
    const server = await serve({ store });
    const board = await new Desk(server.url, desk).board();
    expect(board.damage?.found).toHaveLength(1);
    expect(JSON.stringify(board.damage)).toContain(`Entry ${seq} has`);
    await server.close();
    // Such a record is evidence: it is left as it is, and the command says so.
    const found = (await forgetIn(folder, wish(SIGNER))).records.filter((each) => each.damaged);
    expect(found.every((each) => each.job === job)).toBe(true);
  });

  it('R111: is damage where a name came back that the log says was forgotten', async () => {
    const { folder } = await played();
    await forgetIn(folder, wish(SIGNER));
    const { salt } = visitTo('N2').entries[signed] as Entry;
    edit(folder, `INSERT INTO names VALUES ('${job}', ${signed}, '${salt}', '{"name":"S. Example"}')`);
    const store = openDataFolder(folder, driver);
    expect((await store.audit(job))?.fault).toBe('names');
    await store.close();
  });
});

describe('a job that a server of today opens', () => {
  const open = (url: string, name: string) =>
    post(url, '/api/jobs', { setup: SETUP, person: { name, firm: 'Larkmoor' } });

  it('R110: has names and salts beside its entries, and none in what is stored of the chain', async () => {
    const store = new MemoryStore();
    const { url } = await serve({ store });
    const jobs = [1, 2].map(async () => (await (await open(url, 'A. Example')).json()) as { job: JobId });
    const entries = (await Promise.all(jobs)).map(
      async ({ job }) => (await store.read(job, 0, 1))[0] as Entry,
    );
    const [one, two] = await Promise.all(entries);
    expect(one).toMatchObject({
      fact: { person: { name: 'A. Example', firm: 'Larkmoor' } },
      sealed: expect.stringMatching(/^[0-9a-f]{64}$/),
      salt: expect.stringMatching(/^[0-9a-f]{32}$/),
    });
    expect(one?.salt).not.toBe(two?.salt);
    expect(bodyOf(one as Entry)).not.toMatch(/Example|Larkmoor/);
  });

  it('R112: is not opened by somebody who is called as a forgotten name is shown', async () => {
    const { url } = await serve();
    for (const name of [FORGOTTEN, ` ${FORGOTTEN} `]) {
      const answer = await open(url, name);
      expect(answer.status).toBe(400);
      expect(await answer.json()).toMatchObject({ reason: 'bad-message' });
    }
    expect((await open(url, `${FORGOTTEN}s`)).status).toBe(201);
  });
});

describe('forgetting one of a crew', () => {
  /** Both phones seated and named, and somebody told. */
  async function underWay(logVersion: 1 | 2 | 3 = 3) {
    const store = new MemoryStore();
    store.close = async () => {};
    const salt = logVersion < 3 ? undefined : newSalt;
    const job = 'under-way-001';
    await append(store, job, [OPENED(logVersion)], salt);
    await append(store, job, [{ ...seated('A. Example'), seat: 'panel' } as Fact], salt);
    await append(store, job, [seated('B. Example')], salt);
    await append(
      store,
      job,
      [
        { type: 'said', seat: 'panel', via: 'typed', text: 'told B. Example' },
        { type: 'item', list: 'before', item: 'people-told', done: true, note: 'B. Example' },
        { type: 'readback', of: 4, text: 'People told: B. Example' },
      ],
      salt,
    );
    await append(store, job, [{ type: 'watcher-remark', by: 'W. Example', text: 'Hello.' }], salt);
    return { store, job };
  }

  it('takes that name only, wherever it stands, and the open job goes on with its seat', async () => {
    const { store, job } = await underWay();
    const found = await forgetName(store, wish('B. Example'));
    expect(found).toMatchObject([{ job, beside: [2, 3, 4, 5], inside: [], loose: [], damaged: false }]);
    const log = await wholeLog(store, job);
    expect(JSON.stringify(log)).not.toContain('B. Example');
    expect(JSON.stringify(log)).toContain('A. Example');
    const token = await tokenOf(store, job, 'emitter');
    const { url } = await serve({ store });
    const phone = await Phone.at(url, token);
    await phone.ack(phone.say('roger'));
    const { seats } = (await wholeLog(store, job)).entries.reduce(fold, EMPTY);
    expect(seats.emitter).toMatchObject({ person: { name: FORGOTTEN }, online: true });
    expect(await store.audit(job)).toBeUndefined();
  });

  it('finds the name in several records, and writes into each only its own entries', async () => {
    const { store } = await underWay();
    for (const job of ['other-job-001', 'other-job-002']) {
      await append(store, job, [OPENED(3), seated(job.endsWith('1') ? 'W. Example' : 'C. Example')], newSalt);
    }
    const found = await forgetName(store, wish('W. Example'));
    expect(found.map(({ job, beside }) => [job, beside])).toEqual([
      ['under-way-001', [6]],
      ['other-job-001', [1]],
    ]);
    expect((await store.head('other-job-002')).count).toBe(2);
    expect(await store.named()).toHaveLength(6);
  });

  it('says which names it cannot reach: of older logs, and in words that anybody may say', async () => {
    const { store, job } = await underWay(2);
    const found = await forgetName(store, wish('B. Example'));
    expect(found).toMatchObject([{ job, beside: [], inside: [2, 4], loose: [3, 5] }]);
    expect((await store.head(job)).count).toBe(7);
    const { lines } = forgetLines('B. Example', found, true);
    expect(lines).toContain(
      `KEPT: made before names could be forgotten: 2 entries in these records keep the name: ${job}`,
    );
    const said = await underWay();
    await append(said.store, said.job, [
      { type: 'remark', seat: 'panel', text: 'Ask B. Example, he knows.' },
      { type: 'remark', seat: 'panel', text: 'Ask B. Examples, he knows.' },
    ]);
    const [both] = await forgetName(said.store, wish('B. Example'));
    expect(both).toMatchObject({ beside: [2, 3, 4, 5], loose: [7] });
    expect(forgetLines('B. Example', both ? [both] : [], true).lines.join('\n')).toContain('entry 7');
  });

  it('does not take "nobody" for a name', async () => {
    const { store, job } = await underWay();
    await append(
      store,
      job,
      [{ type: 'item', list: 'before', item: 'people-told', done: true, note: 'nobody' }],
      newSalt,
    );
    expect(await forgetName(store, wish('nobody'))).toEqual([]);
  });

  it('keeps every replay of the job as it was', () => {
    const job = new LoggedJob('played-job-01', 5);
    job.input({ kind: 'open', setup: SETUP });
    job.input({
      kind: 'seated',
      seat: 'panel',
      device: 'phone',
      takeover: false,
      person: { name: 'A. Example' },
    });
    expect(job.entries.filter(({ sealed }) => sealed !== undefined)).toHaveLength(1);
    expect(emptyHead(job.head.job).count).toBe(0);
    expect(verified(toJsonLines(job.entries, job.head))).toMatchObject({ ok: true });
  });
});
