import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { digest } from '../../server/guard/secrets.ts';
import { accept, invitationOf } from '../../server/store/account-book.ts';
import { ACCOUNTS_FILE, accountsOf } from '../../server/store/accounts.ts';
import { passphraseOf, setPassphrase } from '../../server/store/passphrase.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-account-'));
afterAll(() => rmSync(root, { recursive: true }));
const accounts = accountsOf(root);

/** The program itself, from its sources. */
function account(...args: string[]): { code: number | null; out: string; err: string } {
  const program = ['--import', 'tsx', 'server/backup/account-main.ts', '--data', root, ...args];
  const { status, stdout, stderr } = spawnSync(process.execPath, program, { encoding: 'utf8' });
  return { code: status, out: stdout, err: stderr };
}

const AT = 'https://ladder.firm.example';
const secretIn = (out: string): string => /\/invited#([\w-]{22})\n/.exec(out)?.[1] ?? '';
/** The person behind a link makes a passkey. */
const used = (secret: string): void => {
  const passkey = { id: secret, publicKey: 'AA', counter: 0, rpId: 'ladder.firm.example', madeAt: 1 };
  accounts.change((book) => accept(book, digest(secret), secret, passkey, Date.now()));
};

describe('npm run account', () => {
  it('asks for accounts only once there is an administrator, and prints a link that is kept as a hash', () => {
    expect(account('mode', 'accounts')).toMatchObject({
      code: 1,
      err: expect.stringContaining('no administrator'),
    });
    const { out } = account('invite', 'Ada First', '--role', 'administrator', '--at', `${AT}/`);
    expect(out).toContain(`${AT}/invited#`);
    const secret = secretIn(out);
    expect(readFileSync(join(root, ACCOUNTS_FILE), 'utf8')).not.toContain(secret);
    expect(invitationOf(accounts.read(), digest(secret), Date.now())).toMatchObject({
      role: 'administrator',
    });
    expect(account('mode', 'accounts').out).toContain('Who has an account');
    expect(accounts.read().required).toBe(true);
    used(secret);
  }, 60_000);

  it('lists and withdraws, but not the last administrator; that one is renewed', () => {
    expect(account('withdraw', 'ada first')).toMatchObject({
      code: 1,
      err: expect.stringContaining('last administrator'),
    });
    account('invite', 'Ben Example');
    expect(account('list').out).toMatch(
      /^Ada First, administrator, 1 passkey, not signed in again yet\nBen Example, technician, invited until .* UTC\n$/,
    );
    expect(account('withdraw', 'Ben Example').out).toBe('Ben Example is withdrawn.\n');
    const renewed = secretIn(account('renew', 'Ada First', '--at', AT).out);
    expect(accounts.read()).toMatchObject({ accounts: [], invitations: [{ name: 'Ada First' }] });
    used(renewed);
    expect(account('withdraw', 'Nobody Here')).toMatchObject({
      code: 1,
      err: expect.stringContaining('no account'),
    });
  }, 60_000);

  it.each([
    ['https://192.168.1.20:8470', 'not an address of digits'],
    ['https://[fd00::1]', 'not an address of digits'],
    ['http://ladder.firm.example', 'https only'],
    ['ladder.firm.example', 'https://'],
  ])(
    'prints no link that cannot work: --at %s',
    (at, why) => {
      expect(account('invite', 'Cy Example', '--at', at)).toMatchObject({
        err: expect.stringContaining(why),
        out: '',
      });
      expect(accounts.read().invitations).toEqual([]);
    },
    60_000,
  );

  it('chooses again: a passphrase that is set, or anybody', async () => {
    expect(account('mode', 'passphrase').err).toContain('set one first');
    await setPassphrase(root, 'three grey herons wade');
    expect(account('mode').out).toContain('Who has an account');
    account('mode', 'passphrase');
    expect([accounts.read().required, passphraseOf(root).isSet()]).toEqual([false, true]);
    account('mode', 'open');
    expect([accounts.read().required, passphraseOf(root).isSet()]).toEqual([false, false]);
    // Who had an account has it still.
    expect(accounts.read().accounts.length).toBe(1);
  }, 120_000);
});
