import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { afterAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { forgetReader } from '../../server/forget/forget.ts';
import { digest, keyIdOf, newToken } from '../../server/guard/secrets.ts';
import { IDLE_MS } from '../../server/guard/sessions.ts';
import { Reads } from '../../server/reads/reads.ts';
import { requireAccounts, withdraw } from '../../server/store/account-book.ts';
import { ACCOUNTS_FILE } from '../../server/store/accounts.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { HOUR_MS, type Read } from '../../server/store/reads.ts';
import { StoreFailure } from '../../server/store/store.ts';
import type { AccountRole } from '../../src/model/account.ts';
import { Reads as ReadsAnswer } from '../../src/protocol/reads.ts';
import { ROUTES, type Route } from '../../src/protocol/routes.ts';
import { Browser, holder, neededAccounts } from './browser.ts';
import { serve } from './house.ts';
import { ManualClock } from './manual-clock.ts';
import { bothIn, get, Phone } from './phone.ts';
import { demo, tokenOf, visitTo } from './played-site.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-reads-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;

const { job } = visitTo('N2');
const site = demo.site[0]?.job ?? '';
const other = visitTo('N3').job;
/** A played site, with a link to watch one of its jobs. */
async function played(options: Parameters<typeof serve>[0] = {}) {
  const store = new MemoryStore();
  const links = await layDown(store, demo);
  const panel = await tokenOf(store, job, 'panel');
  const clock = new ManualClock();
  const { url } = await serve({ store, clock, ...options });
  const lines = async () => (await store.readsAfter(0, 1_000)).map(({ number, ...read }) => read);
  return { store, clock, url, panel, lines, ...links };
}

/** And with accounts, whose people have passkeys. */
async function withAccounts() {
  const folder = mkdtempSync(join(root, `${folders++}-`));
  const accounts = neededAccounts(folder);
  return { folder, accounts, ...(await played({ accounts })) };
}

const hourOf = (at: number) => Math.floor(at / HOUR_MS) * HOUR_MS;

describe('who read what', () => {
  it('R181: each address that gives something of a record says what; those that do not are named here', () => {
    const without = Object.entries<Route>(ROUTES).filter(
      ([, { method, bearer, reads }]) =>
        method === 'get' && ['job', 'site', 'desk', 'holder'].includes(bearer) && reads === undefined,
    );
    // A sentence that the caller sends, how far a report is, and one's own account.
    expect(without.map(([name]) => name).sort()).toEqual(['ownAccount', 'reportProgress', 'voice']);
  });

  const ofSite = (path: string) => [path, 'desk', site] as const;
  it.each([
    ['/api/record', 'panel', job, 'record'],
    ['/api/keys', 'panel', job, 'record'],
    ['/api/export.jsonl', 'panel', job, 'export'],
    ['/api/export.csv', 'panel', job, 'export'],
    ['/api/export.zip', 'panel', job, 'export'],
    ['/api/report.pdf', 'panel', job, 'report'],
    [...ofSite('/api/site'), 'board'],
    [...ofSite('/api/site/findings'), 'board'],
    [`/api/site?job=${other}`, 'desk', other, 'board'],
    [`/api/site/keys?job=${other}`, 'desk', other, 'record'],
    [`/api/site/record?job=${other}`, 'watch', other, 'record'],
    [`/api/site/export.jsonl?job=${other}`, 'desk', other, 'export'],
    [`/api/site/export.csv?job=${other}`, 'desk', other, 'export'],
    [`/api/site/export.zip?job=${other}`, 'desk', other, 'export'],
    // A visit that the address does not ask for is nobody's word for what was read.
    [`/api/record?job=${other}`, 'panel', job, 'record'],
  ] as const)(
    'R181: GET %s with the key of the %s',
    async (path, key, log, what) => {
      const { url, lines, clock, ...keys } = await played();
      const answer = await get(url, path, keys[key]);
      expect(answer.status).toBe(200);
      await answer.arrayBuffer();
      const role = key === 'watch' ? 'watcher' : key;
      const read: Read = {
        ...{ hour: hourOf(clock.now()), log, what, role, key: keyIdOf(digest(keys[key])) },
        ...{ reader: 'link', name: '' },
      };
      expect(await lines()).toEqual([read]);
    },
    30_000,
  );

  it('R181: a phone that is connected, and who watches', async () => {
    const store = new MemoryStore();
    const { url } = await serve({ store });
    const crew = await bothIn(url);
    await Phone.at(url, crew.job.watch);
    const roles = async () =>
      (await store.readsAfter(0, 9)).map(({ what, role }) => `${what} ${role}`).sort();
    await vi.waitFor(async () =>
      expect(await roles()).toEqual(['record emitter', 'record panel', 'record watcher']),
    );
  });

  it('R181: a phone that is connected is named where somebody is signed in on it, as long as they are', async () => {
    const house = await withAccounts();
    const { cookie } = await holder(house, 'Ada Löwe', 'technician');
    const readers = async () => (await house.lines()).map(({ reader, name }) => `${reader} ${name}`);
    const comesWith = async (headers: Record<string, string>) => {
      await Phone.at(house.url, house.panel, -1, headers);
    };
    // A browser says for each websocket from which page it comes: over https the other cookie counts, and this one may be anybody's.
    for (const strange of [
      {},
      { cookie: `${cookie}x` },
      { cookie, origin: house.url.replace('http', 'https') },
    ])
      await comesWith(strange);
    await vi.waitFor(async () => expect(await readers()).toEqual(['link ']));
    await comesWith({ cookie });
    await vi.waitFor(async () => expect(await readers()).toEqual(['link ', 'account Ada Löwe']));
    // As `npm run account -- mode open` leaves it: who still has a session is not asked for any more, and not named.
    house.accounts.change((book) => ({ kind: 'changed', book: { ...book, required: false } }));
    house.clock.advance(HOUR_MS);
    await comesWith({ cookie });
    await vi.waitFor(async () => expect((await readers()).slice(2)).toEqual(['link ']));
    house.accounts.change((book) => requireAccounts(book, Date.now()));
    const { id = '' } = house.accounts.read().accounts.find(({ name }) => name === 'Ada Löwe') ?? {};
    house.accounts.change((book) => withdraw(book, id));
    house.clock.advance(HOUR_MS);
    await comesWith({ cookie });
    await vi.waitFor(async () => expect((await readers()).slice(3)).toEqual(['link ']));
    // A crew is let in also where nobody can be known any more.
    writeFileSync(join(house.folder, ACCOUNTS_FILE), '{');
    house.clock.advance(HOUR_MS);
    await comesWith({ cookie });
    await vi.waitFor(async () => expect((await readers()).slice(4)).toEqual(['link ']));
  });

  it('R182: once an hour, by the clock of the server', async () => {
    const { url, panel, lines, clock } = await played();
    const look = async () => void (await (await get(url, '/api/record', panel)).arrayBuffer());
    const began = hourOf(clock.now());
    for (const at of [began + HOUR_MS - 1, began + HOUR_MS, began + HOUR_MS + 1, began + 2 * HOUR_MS - 1]) {
      clock.advance(at - clock.now());
      await look();
    }
    expect((await lines()).map(({ hour }) => hour)).toEqual([began, began + HOUR_MS]);
  });

  it('R183: nothing where nothing was given: a strange key, one that was taken away, a visit of another site', async () => {
    const { url, store, desk, lines, watch } = await played();
    const site = await store.pass(digest(watch));
    await store.append(site?.job ?? '', [], { withdraw: digest(watch) });
    const statuses = [
      await get(url, '/api/record', newToken()),
      await get(url, '/api/record'),
      await get(url, '/api/site', watch),
      await get(url, '/api/site/record?job=another-job1', desk),
      await get(url, '/api/site/keys', desk),
      await get(url, '/api/figures', desk),
    ].map(({ status }) => status);
    expect(statuses).toEqual([401, 401, 401, 404, 400, 409]);
    expect(await lines()).toEqual([]);
  });

  it('R184: is for administrators, who are named there themselves', async () => {
    const house = await withAccounts();
    const statusOf = async (browser: Browser) => (await browser.send('/api/reads')).status;
    expect(await statusOf(new Browser(house.url))).toBe(401);
    const roles: [AccountRole, number][] = [
      ['technician', 403],
      ['supervisor', 403],
      ['administrator', 200],
    ];
    for (const [role, status] of roles)
      expect(await statusOf(await holder(house, `A ${role}`, role)), role).toBe(status);
    expect(await house.lines()).toMatchObject([
      { what: 'reads', log: '', reader: 'account', name: 'A administrator' },
    ]);
    const open = await played();
    expect((await get(open.url, '/api/reads')).status).toBe(409);
  });

  it('R184: says who was signed in, with which key, of which site and pair; newest first, by pages, of one record alone', async () => {
    const house = await withAccounts();
    const browser = await holder(house, 'S. Example', 'administrator');
    const as = (token: string) => ({ authorization: `Bearer ${token}` });
    await (await browser.send('/api/record', undefined, as(house.panel))).arrayBuffer();
    await (await browser.send('/api/site', undefined, as(house.desk))).arrayBuffer();
    const seen = async (query = '') =>
      ReadsAnswer.parse(await (await browser.send(`/api/reads${query}`)).json());
    const { reads, more } = await seen();
    expect(more).toBe(false);
    const by = { reader: 'account', name: 'S. Example' };
    expect(reads).toMatchObject([
      { ...by, what: 'board', role: 'desk', log: site, site: 'Hollin Bridge sorting hall (invented)' },
      {
        ...by,
        what: 'record',
        role: 'panel',
        log: job,
        pair: 'North aisle 2',
        key: keyIdOf(digest(house.panel)),
      },
    ]);
    expect((await seen(`?log=${job}`)).reads).toHaveLength(1);
    expect((await seen(`?before=${reads[1]?.number}`)).reads).toEqual([]);
    const note = Array.from({ length: 101 }, (_, i): Read => {
      const of = { hour: i * HOUR_MS, log: site, what: 'board', role: 'desk', key: '' } as const;
      return { ...of, reader: 'link', name: '' };
    });
    await house.store.changeReads({ note });
    const first = await seen(`?log=${site}`);
    expect([first.reads.length, first.more]).toEqual([100, true]);
    const rest = await seen(`?log=${site}&before=${first.reads.at(-1)?.number}`);
    // The board, and 101 lines.
    expect([rest.reads.length, rest.more]).toEqual([2, false]);
    expect((await browser.send('/api/reads?before=x')).status).toBe(400);
  });

  it('R184: a page that looks again by itself keeps nobody signed in', async () => {
    const house = await withAccounts();
    const browser = await holder(house, 'S. Example', 'supervisor');
    const reals = performance.now.bind(performance);
    const wait = (ms: number) => vi.spyOn(performance, 'now').mockImplementation(() => reals() + ms);
    onTestFinished(() => void vi.restoreAllMocks());
    wait(IDLE_MS / 2);
    const board = await browser.send('/api/site', undefined, { authorization: `Bearer ${house.desk}` });
    expect(board.status).toBe(200);
    wait(IDLE_MS);
    expect((await browser.access()).isIn).toBe(false);
  });

  it('R185: a name that is forgotten goes from there, whatever its case; the lines stay', async () => {
    const { store } = await played();
    const read = { hour: 0, log: job, what: 'record', role: 'panel', key: '' } as const;
    const by = (name: string): Read => ({ ...read, reader: 'account', name });
    await store.changeReads({ note: [by('S. Example'), by('B. Example')] });
    const wish = { name: 's.  EXAMPLE', why: 'Asked for', at: 5 };
    expect(await forgetReader(store, { ...wish, isSure: false })).toEqual(['S. Example']);
    expect(await store.readers()).toEqual(['B. Example', 'S. Example']);
    expect(await forgetReader(store, { ...wish, isSure: true })).toEqual(['S. Example']);
    expect((await store.readsAfter(0, 9)).map(({ reader, name }) => [reader, name])).toEqual([
      ['forgotten', ''],
      ['account', 'B. Example'],
    ]);
  });

  it('R185: what is older than the days that it is kept is removed by the server, and nothing younger', async () => {
    const store = new MemoryStore();
    const now = Date.now();
    const clock = new ManualClock();
    clock.advance(now - clock.now());
    const DAY = 24 * HOUR_MS;
    const line = (hour: number): Read => {
      const of = { hour, log: job, what: 'record', role: 'panel', key: '' } as const;
      return { ...of, reader: 'link', name: '' };
    };
    const kept = now - 40 * DAY;
    await store.changeReads({ note: [line(kept - 1), line(kept), line(now)] });
    await serve({ store, clock, keepReadsDays: 40 });
    await vi.waitFor(async () =>
      expect((await store.readsAfter(0, 9)).map(({ hour }) => hour)).toEqual([kept, now]),
    );
  });

  it('where it cannot be written down, the record is given all the same, and the next time it is tried again', async () => {
    const written: Read[] = [];
    let works = false;
    const store = {
      changeReads: async (change: object) => {
        if (!works) throw new StoreFailure('the disk is full');
        if ('note' in change) written.push(...(change.note as Read[]));
      },
    };
    const reads = new Reads({ store, clock: new ManualClock(), log: pino({ enabled: false }) });
    const read = { log: job, what: 'record', role: 'panel', key: '', reader: 'link', name: '' } as const;
    await reads.note(read);
    works = true;
    await Promise.all([reads.note(read), reads.note(read)]);
    await reads.note(read);
    expect(written).toMatchObject([read]);
  });
});
