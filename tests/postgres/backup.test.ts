import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { copyStore } from '../../server/copy/copy.ts';
import { Firms } from '../../server/firms/firms.ts';
import type { DatabaseAddress } from '../../server/postgres/address.ts';
import { openPostgres, openTables } from '../../server/postgres/open.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { newSummaryKey } from '../../server/store/summary-key.ts';
import { emptyHead } from '../../src/log/chain.ts';
import { sealRemarks } from '../store/contract.ts';
import { Cluster, POSTGRES } from './cluster.ts';

const doc = readFileSync('docs/operations.md', 'utf8');
const part = doc.slice(doc.indexOf('**With the records in PostgreSQL**'), doc.indexOf('## Time stamps'));
/** The lines of the document that are for PostgreSQL's own programs. */
const LINES = [...part.matchAll(/```sh\n(.*?)```/gs)].flatMap(([, block = '']) =>
  block.split('\n').filter((line) => /^(pg_|createdb)/.test(line)),
);

describe.runIf(POSTGRES)('a backup with PostgreSQL’s own tools, as docs/operations.md says it', () => {
  let cluster: Cluster;
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-dump-'));
  beforeAll(async () => {
    cluster = await Cluster.start();
  }, 60_000);
  afterAll(async () => {
    await cluster?.remove();
    rmSync(folder, { recursive: true });
  });

  const place = (login: string, database: string): DatabaseAddress => ({
    url: cluster.url.replace('tester@/postgres', `${login}@/${database}`),
    passwordFile: cluster.passwordFile,
  });

  async function open(login: string, database: string) {
    const store = await openPostgres(place(login, database), newSummaryKey());
    onTestFinished(() => store.close());
    return store;
  }

  function run(line: string): void {
    const [, host = ''] = cluster.url.split('?host=');
    const [program = '', ...args] = line.split(' ');
    execFileSync(join(POSTGRES ?? '', program), args, {
      cwd: folder,
      env: { ...process.env, PGHOST: host, PGUSER: 'tester', PGPASSWORD: cluster.password },
    });
  }

  it('is whole after a restore: every hash, each firm its own rows, and it goes on', async () => {
    expect(LINES.map((line) => line.split(' ')[0])).toEqual([
      'pg_dump',
      'pg_dumpall',
      'createdb',
      'pg_restore',
    ]);
    run('createdb --encoding=UTF8 --template=template0 ladderline');
    for (const login of ['owner', 'north', 'south'])
      await cluster.sql(`CREATE ROLE ${login} LOGIN PASSWORD '${cluster.password}'`);
    await cluster.sql('GRANT CREATE ON DATABASE ladderline TO owner');
    const tables = await openTables(place('owner', 'ladderline'));
    for (const login of ['north', 'south']) await new Firms(tables).add({ name: `${login} example`, login });
    await tables.close();
    const jobs = { north: 'job-north-01', south: 'job-south-01' } as const;
    const read = { hour: 3_600_000, what: 'record', role: 'watcher', key: 'a'.repeat(12) } as const;
    for (const login of ['north', 'south'] as const) {
      const job = jobs[login];
      const store = await open(login, 'ladderline');
      const entries = sealRemarks(emptyHead(job), ['one', `of ${login}`], 'message-1');
      await store.append(
        job,
        entries,
        { issue: [{ token: login.repeat(3), role: 'panel' }] },
        {
          put: { seq: 0, salt: '00', content: Buffer.from('a picture') },
        },
      );
      const signed = { at: 5, key: 'a key', signature: 'a signature' };
      await store.addSignedHeads([{ ...(await store.head(job)), ...signed }]);
      await store.changeReads({ note: [{ ...read, log: job, reader: 'account', name: 'A. Example' }] });
    }
    for (const line of LINES) run(line);
    // No password leaves with the logins.
    const logins = readFileSync(join(folder, 'logins.sql'), 'utf8');
    expect(logins).toContain('CREATE ROLE north');
    expect(logins).not.toMatch(/PASSWORD/);
    for (const login of ['north', 'south'] as const) {
      const [before, after] = [await open(login, 'ladderline'), await open(login, 'restored')];
      expect(await after.logs()).toEqual([jobs[login]]);
      // The drill: every hash is checked where it comes from and where it arrives.
      const drill = new MemoryStore();
      expect(await copyStore(after, drill)).toMatchObject({
        logs: 1,
        entries: 2,
        enclosures: 1,
        signedHeads: 1,
      });
      expect(await after.read(jobs[login], -1, 9)).toEqual(await before.read(jobs[login], -1, 9));
      expect(await after.readsAfter(0, 9)).toEqual(await before.readsAfter(0, 9));
      const next = sealRemarks(await after.head(jobs[login]), ['and on']);
      expect(await after.append(jobs[login], next)).toEqual({ kind: 'stored' });
      await after.changeReads({ note: [{ ...read, log: '', reader: 'link', name: '' }] });
      expect(await after.readsAfter(0, 9)).toHaveLength(2);
    }
  }, 60_000);

  it('made by the owner of the tables, who is held to the rows of no firm, ends with an error and leaves nothing out', () => {
    const [, host = ''] = cluster.url.split('?host=');
    const dump = () =>
      execFileSync(
        join(POSTGRES ?? '', 'pg_dump'),
        ['--format=custom', '--file=by-owner.dump', 'ladderline'],
        {
          cwd: folder,
          env: { ...process.env, PGHOST: host, PGUSER: 'owner', PGPASSWORD: cluster.password },
          stdio: 'pipe',
        },
      );
    expect(dump).toThrow(/row-level security/);
  });
});
