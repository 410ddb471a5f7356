import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it, vi } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { digest, newToken } from '../../server/guard/secrets.ts';
import { ABSOLUTE_MS, FRESH_MS, IDLE_MS } from '../../server/guard/sessions.ts';
import { INVITATION_MS, invite, requireAccounts, withdraw } from '../../server/store/account-book.ts';
import { ACCOUNTS_FILE, type AccountsFile, accountsOf } from '../../server/store/accounts.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import type { AccountRole } from '../../src/model/account.ts';
import { Accounts, InvitedHolder, OwnAccount } from '../../src/protocol/accounts.ts';
import { HttpRefusal } from '../../src/protocol/jobs.ts';
import { Authenticator } from './authenticator.ts';
import { Browser, holder, invited } from './browser.ts';
import { serve } from './house.ts';
import { ManualClock } from './manual-clock.ts';
import { newId, SETUP } from './phone.ts';
import { unsigned, visitTo } from './played-site.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-access-'));
afterAll(() => rmSync(root, { recursive: true }));

const reals = performance.now.bind(performance);
let passed = 0;
/** The clock of sessions and challenges goes on by so much. */
const wait = (ms: number): void => {
  passed += ms;
  vi.spyOn(performance, 'now').mockImplementation(() => reals() + passed);
};
afterEach(() => {
  vi.restoreAllMocks();
  passed = 0;
});

const refusal = async (answer: Response) => ({
  status: answer.status,
  ...HttpRefusal.parse(await answer.json()),
});

let folders = 0;
/** A server that asks for accounts, and its file. */
async function withAccounts(options: Parameters<typeof serve>[0] = {}) {
  const folder = mkdtempSync(join(root, `${folders++}-`));
  const accounts = accountsOf(folder);
  const first = newToken();
  const now = options.clock?.now() ?? Date.now();
  accounts.change((book) => invite(book, { name: 'Ada First', role: 'administrator' }, digest(first), now));
  accounts.change((book) => requireAccounts(book, now));
  const { url } = await serve({ accounts, ...options });
  return { url, accounts, first, folder };
}

const idOf = (accounts: AccountsFile, name: string): string =>
  accounts.read().accounts.find((one) => one.name === name)?.id ?? '';

describe('who may open sites and jobs', () => {
  it('R120: where accounts are needed, each role has its rights, and nobody without one has any', async () => {
    const house = await withAccounts();
    const nobody = new Browser(house.url);
    expect(await nobody.access()).toEqual({ kind: 'accounts', isIn: false });
    expect(await refusal(await nobody.openJob())).toMatchObject({ status: 401, reason: 'locked' });
    expect(await refusal(await nobody.openSite())).toMatchObject({ status: 401, reason: 'locked' });
    expect(await refusal(await nobody.send('/api/accounts'))).toMatchObject({
      status: 401,
      reason: 'locked',
    });
    const opens: [AccountRole, number, number, number][] = [
      ['technician', 201, 403, 403],
      ['supervisor', 201, 201, 403],
      ['administrator', 201, 201, 200],
    ];
    for (const [role, job, site, all] of opens) {
      const browser = await holder(house, `A ${role}`, role);
      expect(await browser.access()).toMatchObject({ isIn: true, holder: { name: `A ${role}`, role } });
      const statuses = [browser.openJob(), browser.openSite(), browser.send('/api/accounts')];
      expect((await Promise.all(statuses)).map(({ status }) => status)).toEqual([job, site, all]);
    }
    // Joining needs none: this code is only wrong.
    expect((await nobody.send('/api/join', { code: 'ABC234' })).status).toBe(403);
    expect((await nobody.send('/api/enter', { passphrase: 'three grey herons wade' })).status).toBe(401);
  });

  it('R120: says which of the three the owner has chosen; a session of one is none of another', async () => {
    const open = new Browser((await serve()).url);
    expect(await open.access()).toEqual({ kind: 'open', isIn: false });
    expect(await refusal(await open.send('/api/account/challenge', {}))).toMatchObject({ reason: 'not-now' });
    const { url, accounts, first } = await withAccounts({
      passphrase: { isSet: () => true, isRight: async () => true },
    });
    const browser = new Browser(url);
    await browser.accept(first);
    accounts.change((book) => ({ kind: 'changed', book: { ...book, required: false } }));
    expect(await browser.access()).toEqual({ kind: 'passphrase', isIn: false });
    expect((await browser.openJob()).status).toBe(401);
    await browser.send('/api/enter', { passphrase: 'any' });
    expect((await browser.openJob()).status).toBe(201);
    accounts.change((book) => requireAccounts(book, Date.now()));
    expect((await browser.openJob()).status).toBe(401);
  });
});

describe('an invitation', () => {
  it('R121: makes one account, once, and only its hash is kept', async () => {
    const { url, accounts, first, folder } = await withAccounts();
    expect(first).toMatch(/^[\w-]{22}$/);
    expect(readFileSync(join(folder, ACCOUNTS_FILE), 'utf8')).not.toContain(first);
    const browser = new Browser(url);
    const asked = await browser.asked('/api/account/invited', { invitation: first });
    expect(asked).toMatchObject({ rpId: 'localhost', user: { name: 'Ada First', role: 'administrator' } });
    expect((await browser.accept(first)).status).toBe(200);
    expect((await browser.openSite()).status).toBe(201);
    const other = new Browser(url);
    expect(await refusal(await other.send('/api/account/invited', { invitation: first }))).toMatchObject({
      status: 401,
      reason: 'locked',
      text: expect.stringContaining('no longer good'),
    });
    // Asked for before it was used up, and answered after.
    const passkey = other.device.make(asked);
    const late = { invitation: first, account: asked.user.id, passkey };
    expect((await other.send('/api/account/accept', late)).status).toBe(401);
    expect(accounts.read().accounts.length).toBe(1);
  });

  it.each([
    ['just before a day is over', INVITATION_MS - 1, 200],
    ['after a day', INVITATION_MS, 401],
  ])('R121: %s: %j', async (_, later, status) => {
    const clock = new ManualClock();
    const { url, first } = await withAccounts({ clock });
    clock.advance(later);
    const answer = await new Browser(url).send('/api/account/invited', { invitation: first });
    expect(answer.status).toBe(status);
  });

  it('R121: the account that it makes is the one whose passkey was asked for', async () => {
    const { url, accounts, first } = await withAccounts();
    const other = invited(accounts, 'Ben Other', 'technician');
    const browser = new Browser(url);
    const asked = await browser.asked('/api/account/invited', { invitation: other });
    const passkey = browser.device.make(asked);
    const sent = { invitation: first, account: asked.user.id, passkey };
    expect((await browser.send('/api/account/accept', sent)).status).toBe(401);
    expect(accounts.read().accounts).toEqual([]);
  });
});

describe('a passkey', () => {
  it('R122: is taken with the right challenge, origin, name and person, and with nothing else', async () => {
    const house = await withAccounts();
    const { url } = house;
    const browser = await holder(house, 'Ben Example', 'technician');
    const wrong: [string, () => Promise<Response>][] = [
      ['another name', () => browser.signIn({ rpId: 'elsewhere.example' })],
      ['nobody asked for a finger', () => browser.signIn({ isVerified: false })],
      ['another signature', () => browser.signIn({ isSigned: false })],
      ['the handle of another account', () => browser.signIn({ userHandle: newToken() })],
    ];
    for (const [what, work] of wrong) {
      expect({ what, ...(await refusal(await work())) }).toMatchObject({
        what,
        status: 401,
        reason: 'locked',
      });
    }
    // A page of another website, or of another port.
    for (const origin of ['https://elsewhere.example', 'http://localhost:1', `${url}.elsewhere.example`]) {
      const other = new Authenticator(origin);
      other.kept.push(...browser.device.kept);
      const shown = other.show(await browser.challenge());
      expect((await browser.send('/api/account/sign-in', shown)).status).toBe(401);
    }
    expect((await browser.signIn()).status).toBe(200);
  });

  it('R122: a challenge is good once, whatever came of it, for five minutes, and for what it was asked', async () => {
    const house = await withAccounts({ limits: { guessesPerAddress: { burst: 50, perSecond: 0 } } });
    const browser = await holder(house, 'Ben Example', 'technician');
    const signIn = (shown: unknown) => browser.send('/api/account/sign-in', shown);
    const challenge = await browser.challenge();
    expect((await signIn(browser.device.show(challenge))).status).toBe(200);
    expect((await signIn(browser.device.show(challenge))).status).toBe(401);
    const spoilt = await browser.challenge();
    expect((await signIn(browser.device.show(spoilt, { isSigned: false }))).status).toBe(401);
    expect((await signIn(browser.device.show(spoilt))).status).toBe(401);
    const late = await browser.challenge();
    wait(5 * 60_000);
    expect((await signIn(browser.device.show(late))).status).toBe(401);
    const toAdd = await browser.asked('/api/account/passkey/challenge');
    expect((await signIn(browser.device.show(toAdd))).status).toBe(401);
    expect((await signIn(browser.device.show(await browser.challenge()))).status).toBe(200);
  });

  it('R122: none is made without a person, or for another name', async () => {
    const { url, accounts, first } = await withAccounts();
    for (const other of [{ isVerified: false }, { rpId: 'elsewhere.example' }]) {
      expect((await new Browser(url).accept(first, other)).status).toBe(401);
    }
    expect((await new Browser(url, 'https://elsewhere.example').accept(first)).status).toBe(401);
    expect(accounts.read().accounts).toEqual([]);
    expect((await new Browser(url).accept(first)).status).toBe(200);
  });

  it('R122: an address of digits has no name for one, and the answer says what to do', async () => {
    const { url, first } = await withAccounts();
    const browser = new Browser(url.replace('localhost', '127.0.0.1'));
    for (const [path, body] of [
      ['/api/account/challenge', {}],
      ['/api/account/invited', { invitation: first }],
    ] as const) {
      const { reason, text } = await refusal(await browser.send(path, body));
      expect(reason).toBe('bad-target');
      expect(text).toContain('under the name of the server');
    }
  });

  // WebAuthn Level 2, 7.2, step 21: the counter must be above the stored one, unless both are 0; from memory.
  it.each([
    ['goes up', 5, 6, 200],
    ['stands', 5, 5, 401],
    ['goes back', 5, 4, 401],
    ['goes back to nothing', 5, 0, 401],
    ['is not kept by this authenticator', 0, 0, 200],
  ])('R123: its counter %s: %i, %i', async (_, before, after, status) => {
    const { url, first } = await withAccounts();
    const browser = new Browser(url);
    await browser.accept(first, { counter: before });
    expect((await browser.signIn({ counter: after })).status).toBe(status);
    if (status === 200 && after > 0) expect((await browser.signIn({ counter: after })).status).toBe(401);
  });
});

describe('a session', () => {
  it.each([
    ['just before half an hour without use', [IDLE_MS - 1_000], 201],
    ['after half an hour without use', [IDLE_MS], 401],
    ['in use all day, just before eight hours', [...Array(16).fill(IDLE_MS - 1_000), 10_000], 201],
    ['in use all day, after eight hours', [...Array(16).fill(IDLE_MS - 1_000), 16_000], 401],
  ])('R124: %s', async (_, steps, status) => {
    const { url, first } = await withAccounts();
    const browser = new Browser(url);
    await browser.accept(first);
    for (const step of steps.slice(0, -1)) {
      wait(step);
      expect((await browser.access()).isIn).toBe(true);
    }
    wait(steps.at(-1) ?? 0);
    expect((await browser.openJob()).status).toBe(status);
    expect(ABSOLUTE_MS).toBe(16 * IDLE_MS);
  });

  it('R124: is another one at each sign-in, of 128 bits, and the one before ends', async () => {
    const { url, first } = await withAccounts();
    const browser = new Browser(url);
    const answer = await browser.accept(first);
    expect(answer.headers.getSetCookie()).toEqual([
      expect.stringMatching(/^ladderline=[\w-]{22}; Max-Age=28800; Path=\/; HttpOnly; SameSite=Strict$/),
    ]);
    const before = browser.cookie;
    await browser.signIn();
    expect(browser.cookie).not.toBe(before);
    const old = new Browser(url);
    old.cookie = before;
    expect((await old.openJob()).status).toBe(401);
    expect((await browser.openJob()).status).toBe(201);
  });

  it('R124: over https, also that of a proxy, only a cookie counts that has come over https', async () => {
    const { url, first } = await withAccounts();
    const origin = url.replace('http:', 'https:');
    const browser = new Browser(url, origin);
    const asked = await browser.asked('/api/account/invited', { invitation: first });
    const body = { invitation: first, account: asked.user.id, passkey: browser.device.make(asked) };
    const answer = await browser.send('/api/account/accept', body, { origin });
    expect(answer.headers.getSetCookie()).toEqual([
      expect.stringMatching(
        /^__Host-ladderline=[\w-]{22}; Max-Age=28800; Path=\/; HttpOnly; Secure; SameSite=Strict$/,
      ),
    ]);
    expect((await browser.send('/api/jobs', { setup: SETUP }, { origin })).status).toBe(201);
    browser.cookie = browser.cookie.replace('__Host-', '');
    expect((await browser.send('/api/jobs', { setup: SETUP }, { origin })).status).toBe(401);
  });

  it('R124: ends at once when its account is withdrawn, at the command line too, and the passkey opens nothing', async () => {
    const house = await withAccounts();
    const ben = await holder(house, 'Ben Example', 'supervisor');
    expect((await ben.openSite()).status).toBe(201);
    house.accounts.change((book) => withdraw(book, idOf(house.accounts, 'Ben Example')));
    expect((await ben.openSite()).status).toBe(401);
    const { status, text } = await refusal(await ben.signIn());
    expect(status).toBe(401);
    expect(text).toContain('Its account was withdrawn');
  });

  it('R125: ends where its person signs out, and everywhere if they say so; each can be ended from another', async () => {
    const { url, first } = await withAccounts();
    const one = new Browser(url);
    await one.accept(first);
    const again = async () => {
      const other = new Browser(url);
      other.device.kept.push(...one.device.kept);
      await other.signIn();
      return other;
    };
    const two = await again();
    const three = await again();
    const own = OwnAccount.parse(await (await one.send('/api/account')).json());
    expect(own.sessions.map(({ own }) => own)).toEqual([true, false, false]);
    expect(JSON.stringify(own)).not.toContain(two.cookie.split('=')[1]);
    const session = own.sessions[1]?.id;
    expect((await one.send('/api/account/session/end', { session })).status).toBe(200);
    expect((await two.openJob()).status).toBe(401);
    expect((await refusal(await one.send('/api/account/session/end', { session }))).reason).toBe(
      'bad-target',
    );
    // Signed out here, the others go on.
    const kept = three.cookie;
    expect((await three.send('/api/leave', {})).headers.getSetCookie()).toEqual([
      expect.stringMatching(/^ladderline=; Max-Age=0; Path=\/; HttpOnly; SameSite=Strict$/),
    ]);
    three.cookie = kept;
    expect((await three.openJob()).status).toBe(401);
    expect((await one.openJob()).status).toBe(201);
    const four = await again();
    const left = one.cookie;
    await one.send('/api/leave', { everywhere: true });
    one.cookie = left;
    expect([(await one.openJob()).status, (await four.openJob()).status]).toEqual([401, 401]);
  });

  it('R125: of a passphrase ends too', async () => {
    const { url } = await serve({ passphrase: { isSet: () => true, isRight: async () => true } });
    const browser = new Browser(url);
    await browser.send('/api/enter', { passphrase: 'three grey herons wade' });
    expect(await browser.access()).toEqual({ kind: 'passphrase', isIn: true });
    const kept = browser.cookie;
    expect((await browser.send('/api/leave', {})).status).toBe(200);
    expect(browser.cookie).toBe('');
    browser.cookie = kept;
    expect(await browser.access()).toEqual({ kind: 'passphrase', isIn: false });
    expect((await browser.openJob()).status).toBe(401);
  });
});

describe('an administrator', () => {
  const inviteBen = { name: 'Ben Example', role: 'supervisor' };

  it('R126: invites, sees everybody and withdraws in the page; others may not', async () => {
    const house = await withAccounts();
    const ada = new Browser(house.url);
    await ada.accept(house.first);
    const { path } = InvitedHolder.parse(await (await ada.send('/api/accounts/invite', inviteBen)).json());
    const [, secret = ''] = /^\/invited#([\w-]{22})$/.exec(path) ?? [];
    expect((await refusal(await ada.send('/api/accounts/invite', inviteBen))).reason).toBe('not-now');
    const ben = new Browser(house.url);
    await ben.accept(secret);
    for (const [to, body] of [
      ['/api/accounts/invite', { name: 'Cy Example', role: 'administrator' }],
      ['/api/accounts/withdraw', { account: idOf(house.accounts, 'Ada First') }],
    ] as const) {
      expect(await refusal(await ben.send(to, body))).toMatchObject({ status: 403, reason: 'read-only' });
    }
    const all = Accounts.parse(await (await ada.send('/api/accounts')).json());
    expect(all.accounts).toMatchObject([
      { name: 'Ada First', role: 'administrator', own: true, sessions: 1 },
      { name: 'Ben Example', role: 'supervisor', own: false, sessions: 1, passkeys: 1 },
    ]);
    const account = idOf(house.accounts, 'Ben Example');
    expect((await ada.send('/api/accounts/withdraw', { account })).status).toBe(200);
    expect((await ben.openJob()).status).toBe(401);
    expect((await refusal(await ada.send('/api/accounts/withdraw', { account }))).reason).toBe('bad-target');
    await ada.send('/api/accounts/invite', inviteBen);
    const { invitations } = Accounts.parse(await (await ada.send('/api/accounts')).json());
    const invitation = invitations[0]?.id;
    expect((await ada.send('/api/accounts/withdraw', { invitation })).status).toBe(200);
    expect(house.accounts.read().invitations).toEqual([]);
  });

  it.each([
    ['a moment before fifteen minutes are over', FRESH_MS - 1_000, [201, 200]],
    ['after fifteen minutes', FRESH_MS, [401, 401]],
  ])('R126: may open ways for others %s since the sign-in', async (_, later, statuses) => {
    expect(FRESH_MS).toBe(15 * 60_000);
    const { url, first } = await withAccounts();
    const ada = new Browser(url);
    await ada.accept(first);
    wait(later);
    const add = await ada.send('/api/account/passkey/challenge', {});
    expect([(await ada.send('/api/accounts/invite', inviteBen)).status, add.status]).toEqual(statuses);
    // Seeing and opening go on.
    expect((await ada.send('/api/accounts')).status).toBe(200);
    await ada.signIn();
    expect((await ada.send('/api/accounts/invite', { ...inviteBen, name: 'Cy' })).status).toBe(201);
  });

  it('R127: who is the last one cannot be withdrawn, nor can the last passkey; a second one signs in too', async () => {
    const { url, accounts, first } = await withAccounts();
    const ada = new Browser(url);
    await ada.accept(first);
    const account = idOf(accounts, 'Ada First');
    expect((await refusal(await ada.send('/api/accounts/withdraw', { account }))).text).toContain(
      'last administrator',
    );
    const [passkey] = ada.device.kept;
    const remove = (id: string | undefined) => ada.send('/api/account/passkey/remove', { passkey: id });
    expect((await refusal(await remove(passkey?.id))).text).toContain('only passkey');
    const asked = await ada.asked('/api/account/passkey/challenge');
    expect(asked.has).toEqual([passkey?.id]);
    const made = ada.device.make(asked);
    expect((await ada.send('/api/account/passkey', { passkey: made })).status).toBe(200);
    expect((await remove(passkey?.id)).status).toBe(200);
    expect((await ada.signIn()).status).toBe(401);
    const shown = ada.device.show(await ada.challenge(), {}, 1);
    expect((await ada.send('/api/account/sign-in', shown)).status).toBe(200);
  });
});

describe('a signature where accounts are needed', () => {
  const { job } = visitTo('N2');
  const drawn = {
    kind: 'drawn',
    strokes: [
      [
        [10, 20],
        [30, 40],
      ],
    ],
  };

  async function atDesk() {
    const store = new MemoryStore();
    const { desk } = await layDown(store, unsigned('N2'));
    const house = await withAccounts({ store });
    const sign = async (by: Browser, more: object = {}) => {
      const { count, hash } = await store.head(job);
      const body = { id: newId(), job, name: 'Typed Name', role: 'Engineer', signature: drawn, ...more };
      return by.send(
        '/api/site/sign',
        { ...body, head: { count, hash } },
        { authorization: `Bearer ${desk}` },
      );
    };
    const last = async () =>
      (await store.read(job, -1, 10_000)).findLast(({ fact }) => fact.type === 'signed')?.fact;
    return { ...house, sign, last };
  }

  it('R128: has the name of the account, whatever was typed, and says so; a role without the right gives none', async () => {
    const house = await atDesk();
    expect((await house.sign(new Browser(house.url))).status).toBe(401);
    const tom = await holder(house, 'Tom Technician', 'technician');
    expect(await refusal(await house.sign(tom))).toMatchObject({ status: 403, reason: 'read-only' });
    const sue = await holder(house, 'Sue Supervisor', 'supervisor');
    // Typed, it has to be the name of the account.
    const typed = { signature: { kind: 'typed', text: 'Typed Name' } };
    expect((await refusal(await house.sign(sue, typed))).reason).toBe('not-signable');
    expect((await house.sign(sue)).status).toBe(200);
    expect(await house.last()).toMatchObject({ type: 'signed', name: 'Sue Supervisor', account: true });
  });

  it('R128: somebody without an account signs beside one that stands, never first, and nothing says that it was proven', async () => {
    const house = await atDesk();
    const sue = await holder(house, 'Sue Supervisor', 'supervisor');
    const beside = { name: 'W. Witness', beside: true };
    expect((await refusal(await house.sign(sue, beside))).text).toContain(
      'first signature comes from an account',
    );
    await house.sign(sue);
    expect((await house.sign(new Browser(house.url), beside)).status).toBe(401);
    expect((await house.sign(sue, beside)).status).toBe(200);
    const fact = await house.last();
    expect(fact).toMatchObject({ type: 'signed', name: 'W. Witness' });
    expect(fact).not.toHaveProperty('account');
    expect(fact).not.toHaveProperty('beside');
  });

  it('R128: without accounts the name is what was typed, and is not said to be proven', async () => {
    const store = new MemoryStore();
    const { desk } = await layDown(store, unsigned('N2'));
    const { url } = await serve({ store });
    const { count, hash } = await store.head(job);
    const body = { id: newId(), job, name: 'Typed Name', role: 'Engineer', signature: drawn };
    const answer = await new Browser(url).send(
      '/api/site/sign',
      { ...body, head: { count, hash } },
      { authorization: `Bearer ${desk}` },
    );
    expect(answer.status).toBe(200);
    const [entry] = await store.read(job, count - 1, 1);
    expect(entry?.fact).toMatchObject({ name: 'Typed Name' });
    expect(entry?.fact).not.toHaveProperty('account');
  });
});

describe('whoever tries', () => {
  it('R129: wrong passkeys and invitations stop their own block, also with a right one; right ones are not counted', async () => {
    const { url, first } = await withAccounts({ limits: { guessesPerAddress: { burst: 2, perSecond: 0 } } });
    const browser = new Browser(url);
    await browser.accept(first);
    for (let i = 0; i < 4; i++) expect((await browser.signIn()).status).toBe(200);
    expect((await browser.signIn({ isSigned: false })).status).toBe(401);
    expect((await browser.send('/api/account/invited', { invitation: newToken() })).status).toBe(401);
    const stopped = await browser.signIn();
    expect([stopped.status, stopped.headers.get('retry-after')]).toEqual([429, '60']);
    expect(
      (await refusal(await browser.send('/api/account/invited', { invitation: newToken() }))).reason,
    ).toBe('too-fast');
  });

  it('R129: from another website no page can do anything with the cookie', async () => {
    const { url, first } = await withAccounts();
    const browser = new Browser(url);
    await browser.accept(first);
    const origin = 'https://elsewhere.example';
    for (const [path, body] of [
      ['/api/leave', {}],
      ['/api/accounts/invite', { name: 'Ben', role: 'administrator' }],
      ['/api/jobs', { setup: SETUP }],
    ] as const) {
      expect((await browser.send(path, body, { origin })).status).toBe(403);
    }
    expect((await browser.access()).isIn).toBe(true);
  });
});
