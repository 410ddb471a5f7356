import { execFileSync, spawnSync } from 'node:child_process';
import {
  appendFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { fileFaults } from '../../server/export/folder.ts';
import { Manifest } from '../../server/export/manifest.ts';
import { digest } from '../../server/guard/secrets.ts';
import { requireAccounts } from '../../server/store/account-book.ts';
import { accountsOf } from '../../server/store/accounts.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import { seal } from '../../src/log/chain.ts';
import { enclosureOf, photoOf } from '../../src/simulator/photos.ts';
import { demo } from './played-site.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-export-'));
afterAll(() => rmSync(root, { recursive: true }));
const data = join(root, 'data');
const SIGNER = 'S. Example';
const [{ job: pictured = '' } = {}] = demo.visits.map(({ job }) => ({ job }));

/** The programs themselves, from their sources. */
function run(program: string, ...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', program, ...args], {
    encoding: 'utf8',
  });
  return { status, out: stdout, err: stderr };
}
const exported = (folder: string, ...args: string[]) =>
  run('server/export/export-main.ts', folder, '--data', data, ...args);
const verified = (folder: string) => run('server/verify/main.ts', folder);

const manifestIn = (folder: string) =>
  Manifest.parse(JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8')));
const linesIn = (folder: string, file: string) =>
  readFileSync(join(folder, file), 'utf8').split('\n').slice(0, -1);

beforeAll(async () => {
  const store = openDataFolder(data);
  await layDown(store, demo);
  // A picture in one record, and two readers, of whom one has an account.
  const head = await store.head(pictured);
  await store.append(
    pictured,
    [seal(head, { actor: 'panel', fact: photoOf('Bracket') }, 5 + head.count)],
    {},
    {
      put: { ...enclosureOf('Bracket'), seq: head.count },
    },
  );
  const read = {
    hour: 3_600_000,
    log: pictured,
    what: 'record',
    role: 'watcher',
    key: 'a'.repeat(12),
  } as const;
  await store.changeReads({
    note: [
      { ...read, reader: 'account', name: SIGNER },
      { ...read, reader: 'account', name: 'B. Example' },
      { ...read, reader: 'link', name: '' },
    ],
  });
  await store.close();
  const passkey = {
    id: 'p'.repeat(22),
    publicKey: 'SECRET-KEY',
    counter: 0,
    rpId: 'ladder.example',
    madeAt: 1,
  };
  const account = (name: string, role: 'administrator' | 'supervisor') => ({
    ...{ id: digest(name).slice(0, 22), name, role, madeAt: 1 },
    passkeys: [passkey],
  });
  accountsOf(data).change((book) =>
    requireAccounts(
      { ...book, accounts: [account('Ada First', 'administrator'), account(SIGNER, 'supervisor')] },
      1,
    ),
  );
}, 30_000);

describe('npm run export -- FOLDER', () => {
  const folder = join(root, 'all');

  it('R187: writes all that the firm has, and verify finds it whole, as does sha256sum', async () => {
    expect(exported(folder)).toMatchObject({ status: 0, err: '' });
    const manifest = manifestIn(folder);
    const logs = [...demo.visits.map(({ job }) => job), demo.site[0]?.job ?? ''];
    if (manifest.of !== 'firm') throw new Error('it is of a firm');
    expect(manifest.records.map(({ head }) => head.job).sort()).toEqual(logs.sort());
    expect(manifest).toMatchObject({ firm: '', reads: 3, practice: 0, lost: [], stamps: 0 });
    // Each present head was signed, so that the copy can be proven.
    expect(manifest.signedHeads).toBe(logs.length);
    expect(linesIn(folder, 'who-read.jsonl').map((line) => JSON.parse(line).name)).toEqual([
      SIGNER,
      'B. Example',
      '',
    ]);
    const accounts = readFileSync(join(folder, 'accounts.json'), 'utf8');
    expect(accounts).toContain(SIGNER);
    expect(accounts).not.toContain('SECRET-KEY');
    expect(readdirSync(join(folder, 'records')).filter((name) => name.endsWith('.zip'))).toEqual([
      `${pictured}.zip`,
    ]);
    expect(verified(folder)).toMatchObject({ status: 0, out: expect.stringMatching(/^Whole: \d+ records/) });
    // GNU coreutils, sha256sum(1).
    execFileSync('sha256sum', ['--check', '--strict', '--quiet', 'SHA256SUMS'], { cwd: folder });
    // Only for who made it.
    for (const name of ['', 'records', 'manifest.json', `records/${pictured}.zip`])
      expect(statSync(join(folder, name)).mode & 0o077, name).toBe(0);
  }, 60_000);

  it('R187: verify finds a file that was changed, is missing, or was added; and a record put in place of another', async () => {
    const copy = (name: string) => {
      execFileSync('cp', ['-r', folder, join(root, name)]);
      return join(root, name);
    };
    const changed = copy('changed');
    appendFileSync(join(changed, 'who-read.jsonl'), '{}\n');
    expect(await fileFaults(changed)).toEqual(['who-read.jsonl was changed.']);
    const missing = copy('missing');
    const [gone = ''] = readdirSync(join(missing, 'records'));
    rmSync(join(missing, 'records', gone));
    expect(await fileFaults(missing)).toEqual([`records/${gone} is missing.`]);
    const added = copy('added');
    writeFileSync(join(added, 'records', 'another.jsonl'), '');
    expect(await fileFaults(added)).toEqual(['records/another.jsonl is not of this export.']);
    const cut = copy('cut');
    rmSync(join(cut, 'SHA256SUMS'));
    expect(verified(cut)).toMatchObject({
      status: 1,
      out: expect.stringContaining('the export was cut off'),
    });
    // Whoever writes the sums again too still cannot put one record in the place of another.
    const swapped = copy('swapped');
    const manifest = manifestIn(swapped);
    if (manifest.of !== 'firm') throw new Error('it is of a firm');
    const [one, two] = manifest.records.filter(({ file }) => file.endsWith('.jsonl')).map(({ file }) => file);
    execFileSync(
      'sh',
      [
        '-c',
        'cp "$1" "$2" && sha256sum $(find . -type f ! -name SHA256SUMS | cut -c3-) > SHA256SUMS',
        'sh',
        one ?? '',
        two ?? '',
      ],
      {
        cwd: swapped,
      },
    );
    expect(verified(swapped)).toMatchObject({
      status: 1,
      out: expect.stringContaining(`${two}: the record ends elsewhere than the list says.`),
    });
  }, 60_000);

  it('R188: with --person, writes each entry that holds the name, the account, and what was read; nothing of others', async () => {
    const own = join(root, 'own');
    expect(exported(own, '--person', 's.  EXAMPLE')).toMatchObject({ status: 0, err: '' });
    const manifest = manifestIn(own);
    if (manifest.of !== 'person') throw new Error('it is of a person');
    const held = demo.visits.flatMap(({ job, entries }) =>
      entries
        .filter((entry) => JSON.stringify(entry).includes(SIGNER))
        .map(({ seq, hash }) => ({ job, seq, hash })),
    );
    expect(held.length).toBeGreaterThan(1);
    const lines = linesIn(own, 'entries.jsonl').map((line) => JSON.parse(line));
    expect(lines.map(({ hash, entry: { job, seq } }) => ({ job, seq, hash }))).toEqual(
      expect.arrayContaining(held),
    );
    for (const line of lines) expect(JSON.stringify(line)).toContain(SIGNER);
    expect(manifest).toMatchObject({ reads: 1, name: 's.  EXAMPLE' });
    const accounts = JSON.parse(readFileSync(join(own, 'accounts.json'), 'utf8'));
    expect(accounts.accounts.map(({ name }: { name: string }) => name)).toEqual([SIGNER]);
    expect(readFileSync(join(own, 'who-read.jsonl'), 'utf8')).not.toContain('B. Example');
    expect(verified(own).status).toBe(0);
    // An entry that was changed shows, also where the sums were written again.
    const file = join(own, 'entries.jsonl');
    writeFileSync(file, readFileSync(file, 'utf8').replace(SIGNER, 'T. Example'));
    execFileSync('sh', ['-c', 'sha256sum $(find . -type f ! -name SHA256SUMS | cut -c3-) > SHA256SUMS'], {
      cwd: own,
    });
    expect(verified(own)).toMatchObject({ status: 1, out: expect.stringContaining('WRONG:') });
  }, 60_000);

  it('refuses a folder in which something lies, and a data folder without a database, with words that say what to do', () => {
    expect(exported(folder)).toMatchObject({
      status: 1,
      err: expect.stringContaining('name a folder that is new'),
    });
    expect(run('server/export/export-main.ts', join(root, 'none'), '--data', root)).toMatchObject({
      status: 1,
      err: expect.stringContaining('name the data folder of the server with --data'),
    });
  }, 60_000);
});
