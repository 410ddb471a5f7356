import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { forgetHolder } from '../../server/forget/holder.ts';
import { digest } from '../../server/guard/secrets.ts';
import { accept, type Changed, invite, requireAccounts } from '../../server/store/account-book.ts';
import { ACCOUNTS_FILE, type AccountsFile, accountsOf } from '../../server/store/accounts.ts';
import { openDataFolder } from '../../server/store/data-folder.ts';
import { emptyHead } from '../../src/log/chain.ts';
import { type AccountRole, AccountRole as Roles } from '../../src/model/account.ts';
import { sealRemarks } from '../store/contract.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-forget-holder-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;

/** A data folder with a record, and accounts of these people. */
async function folderWith(
  people: Record<string, AccountRole>,
): Promise<{ data: string; file: AccountsFile }> {
  const data = join(root, String(++folders));
  const store = openDataFolder(data);
  await store.append('job-one-0001', sealRemarks(emptyHead('job-one-0001'), ['one']));
  await store.close();
  const file = accountsOf(data);
  for (const [name, role] of Object.entries(people)) {
    const secret = digest(name);
    const id = name.replace(/\W/g, '').padEnd(22, '0');
    const passkey = { id, publicKey: 'AA', counter: 0, rpId: 'localhost', madeAt: 1 };
    must(file.change((book) => invite(book, { name, role }, secret, 1)));
    must(file.change((book) => accept(book, secret, id, passkey, 2)));
  }
  return { data, file };
}

function must(outcome: Changed): void {
  if (outcome.kind === 'refused') throw new Error(outcome.text);
}

const textOf = (data: string) => readFileSync(join(data, ACCOUNTS_FILE), 'utf8');

describe('forgetting who has an account', () => {
  it.each(Roles.options)('withdraws a %s, and leaves everybody else', async (role) => {
    const { data, file } = await folderWith({ 'A. Example': 'administrator', 'B. Example': role });
    must(file.change((book) => requireAccounts(book, 3)));
    expect(forgetHolder(file, 'B. Example', false)).toEqual([{ as: 'account', role }]);
    expect(textOf(data)).toContain('B. Example');
    expect(forgetHolder(file, ' b.  EXAMPLE', true)).toEqual([{ as: 'account', role }]);
    expect(textOf(data)).not.toContain('B. Example');
    expect(file.read()).toMatchObject({ required: true, accounts: [{ name: 'A. Example' }] });
    expect(forgetHolder(file, 'B. Example', true)).toEqual([]);
  });

  it('takes an invitation of that name, also one that is over', async () => {
    const { data, file } = await folderWith({ 'A. Example': 'administrator' });
    must(file.change((book) => invite(book, { name: 'B. Example', role: 'technician' }, digest('b'), 3)));
    expect(forgetHolder(file, 'B. Example', true)).toEqual([{ as: 'invitation', role: 'technician' }]);
    expect(textOf(data)).not.toContain('B. Example');
  });

  it.each([
    [true, 'stays while accounts are needed, and says why'],
    [false, 'goes where nobody needs an account'],
  ])('of the last administrator (needed: %s) %s', async (isNeeded) => {
    const { data, file } = await folderWith({ 'A. Example': 'administrator', 'B. Example': 'supervisor' });
    if (isNeeded) must(file.change((book) => requireAccounts(book, 3)));
    const kept = isNeeded ? { kept: expect.stringContaining('last administrator') } : {};
    expect(forgetHolder(file, 'A. Example', true)).toEqual([
      { as: 'account', role: 'administrator', ...kept },
    ]);
    expect(textOf(data).includes('A. Example')).toBe(isNeeded);
  });
});

describe('npm run forget', () => {
  /** The program itself, from its sources. */
  function forget(data: string, ...args: string[]) {
    const program = ['--import', 'tsx', 'server/forget/forget-main.ts', '--data', data, ...args];
    const { status, stdout } = spawnSync(process.execPath, program, { encoding: 'utf8' });
    return { status, lines: stdout.trimEnd().split('\n') };
  }

  it('withdraws the account of somebody whom no record names, and says which older copies it did not look into', async () => {
    const { data } = await folderWith({ 'A. Example': 'administrator', 'B. Example': 'supervisor' });
    mkdirSync(join(data, 'before-restore-5'));
    expect(forget(data, 'B. Example')).toEqual({
      status: 1,
      lines: [
        'Found: the account (supervisor). With --yes it is withdrawn, and opens nothing from then on.',
        expect.stringMatching(/^NOT LOOKED INTO: .*before-restore-5, which a restore has put aside\./),
      ],
    });
    expect(textOf(data)).toContain('B. Example');
    expect(forget(data, 'B. Example', '--yes')).toMatchObject({
      status: 0,
      lines: ['Withdrawn: the account (supervisor). It opens nothing from now on.', expect.anything()],
    });
    expect(textOf(data)).not.toContain('B. Example');
  }, 60_000);
});
