import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { Firms } from '../../server/firms/firms.ts';
import { digest } from '../../server/guard/secrets.ts';
import type { DatabaseAddress } from '../../server/postgres/address.ts';
import { openPostgres, openTables } from '../../server/postgres/open.ts';
import type { PostgresStore } from '../../server/postgres/postgres.ts';
import { STEPS } from '../../server/postgres/schema.ts';
import { startServer } from '../../server/start.ts';
import type { Read } from '../../server/store/reads.ts';
import { StoreFailure } from '../../server/store/store.ts';
import { newSummaryKey } from '../../server/store/summary-key.ts';
import { emptyHead, headAfter } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import { sealRemarks, storeContract } from '../store/contract.ts';
import { Cluster, POSTGRES } from './cluster.ts';
import { pairOf } from './pair-of.ts';

const JOB = 'job-one-0001';
const NORTH = 'job-north-01';
const SOUTH = 'job-south-01';

/** Tables that are nobody's: which version they are of, and who is which firm. */
const OF_NOBODY = ['firms', 'ladderline_version'];

const READ: Read = {
  ...{ hour: 3_600_000, log: JOB, what: 'record', role: 'watcher', key: 'a'.repeat(12) },
  ...{ reader: 'account', name: 'A. Example' },
};

/** Two of each kind of thing, in a log of this name. */
async function fill(store: PostgresStore, job: string): Promise<void> {
  const token = (name: string) => digest(`${job} ${name}`);
  const entries = sealRemarks(emptyHead(job), ['one', 'two'], 'message-1');
  await store.append(
    job,
    entries,
    {
      issue: [{ token: token('panel'), role: 'panel' }],
      code: { code: digest('4711'), seat: 'emitter', expiresAt: 5 },
    },
    { put: { seq: 0, salt: '00', content: Buffer.from('a picture') } },
  );
  const head = headAfter(entries[1] as Entry);
  await store.database.rows("INSERT INTO names (job, seq, salt, names) VALUES ($1, 9, '00', '{}')", [job]);
  await store.keepSummary(job, { ...head, body: 'a summary' });
  await store.addSignedHeads([{ ...head, at: 5, key: 'a key', signature: 'a signature' }]);
  await store.addStamp({ size: 1, root: 'f', at: 5, key: 'k', signature: 's', nonce: 'n', token: 'A' });
  await store.figures.keep({ head, name: 'Hall A', pairs: [pairOf('A-1', head)] });
  await store.changeReads({ note: [READ] });
  await store.leases.begin(`http://127.0.0.1/${job}`);
  await store.leases.take(job);
}

describe.runIf(POSTGRES)('firms that share a database', () => {
  let cluster: Cluster;
  beforeAll(async () => {
    cluster = await Cluster.start();
    for (const login of ['owner', 'north', 'south', 'stranger'])
      await cluster.sql(`CREATE ROLE ${login} LOGIN PASSWORD '${cluster.password}'`);
    await cluster.sql('GRANT CREATE ON DATABASE postgres TO owner');
  }, 60_000);
  afterAll(() => cluster?.remove());

  type Place = DatabaseAddress & { schema: string };
  const as = (login: string, place: Place): Place => ({
    ...place,
    url: place.url.replace('tester@', `${login}@`),
  });

  /** With the firms North and South. */
  async function shared(): Promise<Place> {
    const place = cluster.newPlace();
    const tables = await openTables(as('owner', place));
    const firms = new Firms(tables);
    await firms.add({ name: 'North Example', login: 'north' });
    await firms.add({ name: 'South Example', login: 'south' });
    await tables.close();
    return place;
  }

  async function open(login: string, place: Place): Promise<PostgresStore> {
    const store = await openPostgres(as(login, place), newSummaryKey());
    onTestFinished(() => store.close());
    return store;
  }

  const refusal = (opened: Promise<unknown>) =>
    opened.then(
      () => 'it was opened',
      (error: Error) => (error instanceof StoreFailure ? error.message : `not in words: ${error.message}`),
    );

  /** A connection that is not ours, as one of a program that went wrong, or of somebody who stole the password. */
  async function raw(login: string, { schema }: Place): Promise<Client> {
    const [, host = ''] = cluster.url.split('?host=');
    const client = new Client({ host, user: login, database: 'postgres', password: cluster.password });
    await client.connect();
    onTestFinished(() => client.end());
    await client.query(`SET search_path = ${schema}`);
    return client;
  }

  const tablesOf = async ({ schema }: Place): Promise<string[]> => {
    const rows = await cluster.sql(
      `SELECT relname FROM pg_class WHERE relkind IN ('r', 'p') AND relnamespace = '${schema}'::regnamespace ORDER BY 1`,
    );
    return rows.map(({ relname }) => String(relname)).filter((table) => !OF_NOBODY.includes(table));
  };

  /** A store that is open renews the time until which it is alive. */
  const AS_IT_BEGAN = 'ROW(firm, number, url)';

  /** Every row of a firm, as a superuser sees them. */
  const allOf = async (firm: string, place: Place) => {
    const rows: Record<string, unknown[]> = {};
    for (const table of await tablesOf(place))
      rows[table] = await cluster.sql(
        `SELECT ${table === 'processes' ? AS_IT_BEGAN : 't'}::text FROM ${table} t WHERE firm = '${firm}' ORDER BY 1`,
        place.schema,
      );
    return rows;
  };

  /** Both firms with something in every table, and under the same names where they can be the same. */
  async function filled(): Promise<Place> {
    const place = await shared();
    for (const [login, own] of [
      ['north', NORTH],
      ['south', SOUTH],
    ] as const) {
      const store = await open(login, place);
      await fill(store, JOB);
      await store.append(own, sealRemarks(emptyHead(own), [`of ${login}`]));
    }
    return place;
  }

  describe('as one of two firms', () => {
    let place: Place;
    let firms: Firms;
    let others = 0;
    beforeAll(async () => {
      place = await shared();
      firms = new Firms(await openTables(as('owner', place)));
      const south = await openPostgres(as('south', place), newSummaryKey());
      await fill(south, JOB);
      await south.close();
    });

    storeContract('PostgreSQL', async () => {
      const login = `firm_${++others}`;
      await cluster.sql(`CREATE ROLE ${login} LOGIN PASSWORD '${cluster.password}'`);
      await firms.add({ name: `Example ${others}`, login });
      return openPostgres(as(login, place), newSummaryKey());
    });
  });

  it('R174: every table but those of nobody has rows of firms, held to them also for its owner', async () => {
    const place = await filled();
    const tables = await tablesOf(place);
    expect(tables).toContain('entries');
    const rows = await cluster.sql(`
      SELECT c.relname, c.relrowsecurity AND c.relforcerowsecurity AS held, count(p.*)::integer AS policies
      FROM pg_class c LEFT JOIN pg_policy p ON p.polrelid = c.oid
      WHERE c.relkind IN ('r', 'p') AND c.relnamespace = '${place.schema}'::regnamespace
        AND c.relname <> ALL ('{${OF_NOBODY.join()}}') GROUP BY c.oid ORDER BY 1`);
    expect(rows).toEqual(tables.map((relname) => ({ relname, held: true, policies: 1 })));
    const south = await allOf('South Example', place);
    // Else what follows would show nothing.
    for (const table of tables) expect(south[table], table).not.toHaveLength(0);
  });

  it('R174: no statement of a firm’s login reads a row of another firm, also without WHERE', async () => {
    const place = await filled();
    const north = await raw('north', place);
    for (const table of await tablesOf(place)) {
      const { rows } = await north.query(`SELECT firm, count(*)::integer AS n FROM ${table} GROUP BY firm`);
      expect(rows, table).toEqual([{ firm: 'North Example', n: expect.any(Number) }]);
      const named = await north.query(`SELECT * FROM ${table} WHERE firm = 'South Example'`);
      expect(named.rows, table).toEqual([]);
    }
    const { rows } = await north.query('SELECT body FROM entries');
    expect(JSON.stringify(rows)).toContain('of north');
    expect(JSON.stringify(rows)).not.toContain('of south');
    await expect(north.query('SELECT * FROM firms')).rejects.toThrow(/permission denied/);
  });

  it('R174: no statement of a firm’s login changes, removes or adds a row of another firm', async () => {
    const place = await filled();
    const before = await allOf('South Example', place);
    const north = await raw('north', place);
    for (const table of await tablesOf(place)) {
      for (const statement of [
        `UPDATE ${table} SET firm = firm WHERE firm = 'South Example'`,
        `UPDATE ${table} SET firm = 'South Example'`,
        `DELETE FROM ${table} WHERE firm = 'South Example'`,
        `DELETE FROM ${table}`,
        `TRUNCATE ${table}`,
      ]) {
        await north.query('BEGIN');
        await north.query(statement).catch(() => undefined);
        await north.query('COMMIT');
      }
      await expect(
        north.query(`INSERT INTO ${table} (firm) VALUES ('South Example')`),
        table,
      ).rejects.toThrow(/row-level security|null value|non-DEFAULT/);
    }
    const entry =
      "INSERT INTO entries (job, seq, hash, body, firm) VALUES ($1, 2, 'h', '{}', 'South Example')";
    await expect(north.query(entry, [SOUTH])).rejects.toThrow(/row-level security/);
    expect(await allOf('South Example', place)).toEqual(before);
  });

  it('R186: a firm’s login reads and adds who read what, and changes or removes none of it', async () => {
    const place = await filled();
    const north = await raw('north', place);
    for (const statement of [
      "UPDATE reads SET name = 'B. Example'",
      "UPDATE reads SET reader = 'forgotten', name = ''",
      'DELETE FROM reads',
      'TRUNCATE reads',
      "INSERT INTO reads (hour, log, what, role, key, reader, name) VALUES (1, '', '', '', '', '', '') ON CONFLICT (firm, hour, log, what, key, reader, name) DO UPDATE SET name = ''",
    ])
      await expect(north.query(statement), statement).rejects.toThrow(/permission denied/);
    expect(await allOf('North Example', place)).toMatchObject({ reads: [expect.anything()] });
    // Its owner is no way round either: the rows of a firm are not shown to it, and a trigger holds what is changed.
    const change = "UPDATE reads SET name = 'B. Example'";
    await expect(cluster.sql(change, place.schema)).rejects.toThrow(/only a name is forgotten/);
    await expect(cluster.sql('TRUNCATE reads', place.schema)).rejects.toThrow(/only a name is forgotten/);
  });

  it.each(['owner', 'tester'])(
    'R186: forgetting a reader, and ending what is old, reach the own firm alone (the tables are of %s)',
    async (login) => {
      const place = cluster.newPlace();
      const tables = await openTables(as(login, place));
      const firms = new Firms(tables);
      await firms.add({ name: 'North Example', login: 'north' });
      await firms.add({ name: 'South Example', login: 'south' });
      await tables.close();
      const young = { ...READ, hour: Date.now() - 29 * 24 * 3_600_000 };
      for (const firm of ['north', 'south'])
        await (await open(firm, place)).changeReads({ note: [READ, young] });
      const south = await allOf('South Example', place);
      const north = await raw('north', place);
      await north.query('SELECT forget_reader($1)', [READ.name]);
      const { rows } = await north.query('SELECT DISTINCT reader, name FROM reads');
      expect(rows).toEqual([{ reader: 'forgotten', name: '' }]);
      // Whatever it is told: what is younger than thirty days stays.
      await north.query('SELECT end_reads($1)', ['9000000000000000']);
      expect((await north.query('SELECT hour FROM reads')).rows).toEqual([{ hour: String(young.hour) }]);
      expect(await allOf('South Example', place)).toEqual(south);
      const stranger = await raw('stranger', place);
      await expect(stranger.query(`SELECT ${place.schema}.forget_reader('A. Example')`)).rejects.toThrow(
        /permission denied/,
      );
    },
  );

  it('R174: what a firm’s login sets, makes or becomes shows it no other firm', async () => {
    const place = await filled();
    const north = await raw('north', place);
    const firmsSeen = async () => {
      const { rows } = await north.query(`SELECT DISTINCT firm FROM ${place.schema}.entries`);
      return rows.map(({ firm }) => firm);
    };
    for (const statement of [
      'SET SESSION AUTHORIZATION south',
      'SET ROLE south',
      'SET ROLE owner',
      `ALTER TABLE ${place.schema}.entries DISABLE ROW LEVEL SECURITY`,
      `DROP POLICY own_firm ON ${place.schema}.entries`,
      `CREATE OR REPLACE FUNCTION ${place.schema}.current_firm() RETURNS text LANGUAGE sql AS 'SELECT ''South Example'''`,
      `INSERT INTO ${place.schema}.firms VALUES ('South Example', 'north')`,
      `SELECT ${place.schema}.grant_firm('north')`,
    ])
      await expect(north.query(statement), statement).rejects.toThrow(/permission|must be owner/);
    // A table of one's own under the name of ours, before ours in the path.
    await north.query('CREATE TEMP TABLE firms (name text, login name)');
    await north.query("INSERT INTO pg_temp.firms VALUES ('South Example', 'north')");
    await north.query(`SET search_path = pg_temp, ${place.schema}`);
    await north.query("SET application_name = 'South Example'");
    expect(await firmsSeen()).toEqual(['North Example']);
    // postgresql.org/docs/15/ddl-rowsecurity.html: turned off, a query that a policy would filter fails.
    await north.query('SET row_security = off');
    await expect(firmsSeen()).rejects.toThrow(/row-level security/);
  });

  it('the owner of the tables is held to it as well, and so is a login of no firm', async () => {
    const place = await filled();
    const owner = await raw('owner', place);
    expect((await owner.query('SELECT * FROM entries')).rows).toEqual([]);
    expect((await owner.query('DELETE FROM entries')).rowCount).toBe(0);
    const stranger = await raw('stranger', place);
    await expect(stranger.query(`SELECT * FROM ${place.schema}.entries`)).rejects.toThrow(
      /permission denied/,
    );
  });

  it('two firms have logs of the same name, each its own, with heads numbered from 0', async () => {
    const place = await filled();
    const [north, south] = [await open('north', place), await open('south', place)];
    expect(north.firm).toBe('North Example');
    expect((await north.logs()).sort()).toEqual([NORTH, JOB]);
    expect((await south.jobs()).map(({ job }) => job)).toEqual([JOB, SOUTH]);
    expect(await south.append(NORTH, sealRemarks(emptyHead(NORTH), ['another']))).toEqual({ kind: 'stored' });
    expect((await north.read(NORTH, -1, 9)).map(({ fact }) => fact)).toMatchObject([{ text: 'of north' }]);
    for (const store of [north, south]) {
      expect(await store.audit(JOB)).toBeUndefined();
      expect((await store.signedHeadsOf(JOB)).map(({ number }) => number)).toEqual([0]);
    }
  });

  it('R174: the figures over all sites are those of the own firm', async () => {
    const place = await filled();
    const north = await open('north', place);
    await north.figures.keep({
      ...{ head: await north.head(NORTH), name: 'Hall N' },
      pairs: ['N-1', 'N-2'].map((pair) => pairOf(pair, undefined)),
    });
    expect(await north.figures.over(0)).toMatchObject({ sites: 2, pairs: 3 });
    expect(await (await open('south', place)).figures.over(0)).toMatchObject({ sites: 1, pairs: 1 });
  });

  it('a process hears of those of its own firm only', async () => {
    const place = await shared();
    const stores = [await open('north', place), await open('north', place), await open('south', place)];
    for (const [i, store] of stores.entries()) await store.leases.begin(`http://127.0.0.1:${i}`);
    onTestFinished(async () => {
      for (const store of stores) await store.leases.close();
    });
    expect(await stores[0]?.leases.others()).toEqual(['http://127.0.0.1:1']);
    expect(await stores[2]?.leases.others()).toEqual([]);
  });

  it('R174: a link of one firm opens nothing at the server of another', async () => {
    const place = await shared();
    const [north, south] = [await open('north', place), await open('south', place)];
    const servers = await Promise.all([north, south].map((store) => startServer({ store })));
    onTestFinished(async () => {
      for (const server of servers) await server.close();
    });
    const [ofNorth = '', ofSouth = ''] = servers.map(({ url }) => url);
    const opened = await fetch(`${ofNorth}/api/sites`, {
      method: 'POST',
      body: JSON.stringify({ site: 'Hall A' }),
    });
    const { desk } = (await opened.json()) as { desk: string };
    const board = (url: string) =>
      fetch(`${url}/api/site`, { headers: { authorization: `Bearer ${desk}` } }).then(({ status }) => status);
    expect([await board(ofNorth), await board(ofSouth)]).toEqual([200, 401]);
  });

  describe('is refused with words that say what to do:', () => {
    it('a login of no firm', async () => {
      const place = await shared();
      expect(await refusal(open('stranger', place))).toMatch(
        /belongs to no firm there: add it, .*npm run firm -- add/,
      );
    });

    it('a superuser, who would see all of them', async () => {
      const place = await shared();
      expect(await refusal(open('tester', place))).toMatch(
        /several firms share .* use the login of one firm/,
      );
    });

    it('the login of a firm that was withdrawn; what it has is there again with it', async () => {
      const place = await filled();
      const firms = new Firms(await openTables(as('owner', place)));
      expect(await firms.withdraw('North Example')).toEqual({ name: 'North Example', login: 'north' });
      expect(await refusal(open('north', place))).toMatch(/belongs to no firm/);
      expect(await refusal(firms.withdraw('North Example'))).toMatch(/no firm here is called North Example/);
      await firms.add({ name: 'North Example', login: 'north' });
      expect((await (await open('north', place)).head(NORTH)).count).toBe(1);
    });

    it.each([
      ['North Example', 'stranger', /North Example is there already, with the login north/],
      ['West Example', 'south', /South Example is there already, with the login south/],
      ['West Example', 'nobody_at_all', /has no login nobody_at_all: make it first \(CREATE ROLE/],
      ['West Example', 'tester', /tester passes by the rules/],
      ['West Example', 'owner', /owner passes by the rules/],
      [' West', 'stranger', /without spaces around it/],
      ['', 'stranger', /1 to 60 letters/],
    ])('the firm “%s” with the login %s', async (name, login, why) => {
      const firms = new Firms(await openTables(as('owner', await shared())));
      expect(await refusal(firms.add({ name, login }))).toMatch(why);
      expect((await firms.all()).map((firm) => firm.login)).toEqual(['north', 'south']);
    });

    it('a firm that looks after firms', async () => {
      const firms = new Firms((await open('north', await shared())).database);
      expect(await refusal(firms.all())).toMatch(/only the owner of the tables may do that: name owner/);
    });

    it('a firm’s login that finds older tables', async () => {
      const place = await shared();
      await cluster.sql('UPDATE ladderline_version SET version = 1', place.schema);
      expect(await refusal(open('north', place))).toMatch(/older version.* npm run firm -- list once/);
    });
  });

  it('a database that the program of version 1 wrote is brought up, with all that is in it', async () => {
    // Written by commit 1ca8d3b7: the demonstration of tests/store/databases/schema-7, copied there, with a code, a stamp and a summary.
    const old = gunzipSync(readFileSync(new URL('databases/schema-1.sql.gz', import.meta.url))).toString();
    await cluster.sql(old);
    const place = { ...cluster.newPlace(), schema: 'old' };
    const store = await open('tester', place);
    expect(store.firm).toBe('');
    const [job] = await store.jobs();
    expect(job?.count).toBe(274);
    for (const log of await store.logs()) expect(await store.audit(log)).toBeUndefined();
    const version = await store.database.row('SELECT version FROM ladderline_version');
    expect(version).toEqual({ version: STEPS.length });
    const next = sealRemarks(await store.head(job?.job ?? ''), ['and on']);
    expect(await store.append(job?.job ?? '', next)).toEqual({ kind: 'stored' });
    expect((await store.signedHeadsOf(job?.job ?? '')).length).toBeGreaterThan(0);
    await store.addSignedHeads([
      { ...(await store.head(job?.job ?? '')), at: 6, key: 'a key', signature: 'another' },
    ]);
    expect(await store.lastStamp()).toMatchObject({ size: 1 });
    expect(await store.grant(digest('4711'), 1)).toEqual({ job: 'job-coded-001', seat: 'emitter' });
    expect(await store.audit(job?.job ?? '')).toBeUndefined();
  });

  it('a database of version 2 that firms share is brought up by the owner of its tables, with the rows of all of them', async () => {
    // Written by commit 5cc7a71f: tests/store/databases/schema-8 copied there as North, with figures of a site for each firm.
    const old = gunzipSync(readFileSync(new URL('databases/schema-2.sql.gz', import.meta.url))).toString();
    // Tables are of who makes them, and row-level security holds this one too.
    await cluster.sql(`SET ROLE owner; ${old}`);
    const place = { ...cluster.newPlace(), schema: 'old2' };
    await (await openTables(as('owner', place))).close();
    const [north, south] = [await open('north', place), await open('south', place)];
    for (const store of [north, south])
      for (const log of await store.logs()) expect(await store.audit(log), log).toBeUndefined();
    expect((await north.jobs()).map(({ job }) => job)).toContain('site-north-01');
    expect(await south.logs()).toEqual(['site-south-01']);
    // Worked out by hand from the pairs that were laid down: times of 1, 2 and 10 minutes, and of 5.
    expect(await north.figures.over(0)).toMatchObject({
      ...{ sites: 1, pairs: 3, damaged: 0, drifting: { pairs: 1, compared: 1 } },
      ladder: { pairs: 3, half: 120_000, most: 600_000 },
      findings: [{ id: 'corrections', severity: 'note', pairs: 3 }],
      due: { over: 0, soon: 0, later: 1, none: 2 },
    });
    expect(await south.figures.over(0)).toMatchObject({ pairs: 1, ladder: { half: 300_000, most: 300_000 } });
    // The log of each site had grown since it was counted.
    expect(await south.figures.claim(10)).toEqual(['site-south-01']);
    expect(await south.readsAfter(0, 9)).toEqual([]);
    await south.changeReads({ note: [READ] });
    expect(await north.readsAfter(0, 9)).toEqual([]);
  });
});
