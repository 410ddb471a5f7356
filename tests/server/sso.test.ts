import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { Sso, type SsoSettings } from '../../server/accounts/sso.ts';
import { ABSOLUTE_MS, FRESH_MS } from '../../server/guard/sessions.ts';
import { type RunningServer, startServer } from '../../server/start.ts';
import { EMPTY_BOOK } from '../../server/store/account-book.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import type { AccountRole } from '../../src/model/account.ts';
import { PASSKEY_WITHIN_MS } from '../../src/model/account.ts';
import { Access, OwnAccount } from '../../src/protocol/accounts.ts';
import type { Figures } from '../../src/protocol/figures.ts';
import { SsoBegun } from '../../src/protocol/sso.ts';
import { CLIENT, SECRET, type Spoil, STRANGE_KEY, TestBrowser, TestProvider } from './provider.ts';

const ROLES = new Map<string, AccountRole>([
  ['fitters', 'technician'],
  ['leads', 'supervisor'],
  ['it', 'administrator'],
]);

/** The clock of sessions and sign-ins goes on by so much. */
const reals = performance.now.bind(performance);
const wait = (ms: number): void => {
  vi.spyOn(performance, 'now').mockImplementation(() => reals() + ms);
};

let server: RunningServer;
let provider: TestProvider;
let settings: SsoSettings;

const NO_FIGURES: Figures = {
  ...{ sites: 0, pairs: 0, behind: 0, damaged: 0, findings: [] },
  drifting: { pairs: 0, compared: 0, most: [] },
  ladder: { pairs: 0 },
  due: { over: 0, soon: 0, later: 0, none: 0, next: [] },
};

const start = (sso: SsoSettings) =>
  startServer({
    figures: { claim: async () => [], keep: async () => undefined, over: async () => NO_FIGURES },
    store: new MemoryStore(),
    sso: new Sso(sso),
    accounts: { read: () => EMPTY_BOOK, change: (to) => to(EMPTY_BOOK) },
  });

beforeAll(async () => {
  const redirects: string[] = [];
  provider = await TestProvider.start(() => redirects);
  settings = {
    ...{ issuer: new URL(provider.issuer), client: CLIENT, secret: SECRET, name: 'Example ID' },
    ...{ scopes: 'openid profile', claim: 'roles', roles: ROLES },
  };
  server = await start(settings);
  redirects.push(`${server.url}/signed-in`);
});
afterEach(() => {
  vi.restoreAllMocks();
  provider.spoil = undefined;
  provider.person = { name: 'S. Example', roles: ['leads'] };
});
afterAll(async () => {
  await server.close();
  provider.close();
});

/** One browser: at our server it keeps cookies as the page there would, and at the provider it signs in. */
class Device {
  cookies = new Map<string, string>();
  readonly browser = new TestBrowser();

  async send(path: string, body?: unknown, origin = server.url): Promise<Response> {
    const response = await fetch(server.url + path, {
      headers: { cookie: [...this.cookies].map(([name, value]) => `${name}=${value}`).join('; '), origin },
      ...(body !== undefined && { method: 'POST', body: JSON.stringify(body) }),
    });
    for (const line of response.headers.getSetCookie()) {
      const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(line) ?? [];
      if (line.includes('Max-Age=0')) this.cookies.delete(name);
      else this.cookies.set(name, value);
    }
    return response;
  }

  /** To the provider and back: with what the page then has behind its "?". */
  async comeBack(again = false, login = 's.example'): Promise<string> {
    const { url } = SsoBegun.parse(await (await this.send('/api/account/sso', { again })).json());
    return (await this.browser.signIn(url, `${server.url}/signed-in`, login)).search;
  }

  finish(query: string, again = false): Promise<Response> {
    return this.send('/api/account/sso/finish', { query, again, device: 'Linux computer' });
  }

  async signIn(again = false, login?: string): Promise<Response> {
    return this.finish(await this.comeBack(again, login), again);
  }

  async access(): Promise<Access> {
    return Access.parse(await (await this.send('/api/access')).json());
  }
}

const said = async (response: Response) => ({
  status: response.status,
  ...((await response.json()) as { reason?: string; text?: string }),
});

describe('signing in with the account of the firm', () => {
  it('R175: code flow with PKCE, state and nonce leads to a session with the name and role of the provider', async () => {
    const device = new Device();
    expect(await device.access()).toEqual({ kind: 'accounts', isIn: false, sso: 'Example ID' });
    const site = () => device.send('/api/sites', { site: 'Hall A' });
    expect((await site()).status).toBe(401);
    const response = await device.signIn();
    expect(await response.json()).toEqual({ holder: { name: 'S. Example', role: 'supervisor' } });
    // OpenID Connect Core 3.1.2.1; RFC 7636, 4.2 and 4.3: the challenge is 43 letters of a SHA-256.
    const asked = Object.fromEntries(provider.asked.at(-1) ?? []);
    expect(asked).toMatchObject({ response_type: 'code', client_id: CLIENT, code_challenge_method: 'S256' });
    expect(asked.code_challenge).toMatch(/^[\w-]{43}$/);
    expect(asked.state).toMatch(/^[\w-]{43}$/);
    expect(asked.nonce).toMatch(/^[\w-]{43}$/);
    expect(await device.access()).toMatchObject({ isIn: true, holder: { role: 'supervisor' } });
    expect((await site()).status).toBe(201);
  });

  it('R175: the secret of the sign-in and the session are cookies that no script and no other website gets', async () => {
    const device = new Device();
    const begun = await device.send('/api/account/sso', {});
    expect(begun.headers.getSetCookie()).toEqual([
      expect.stringMatching(/^ladderline-sso=[\w-]{44}; Max-Age=300; Path=\/; HttpOnly; SameSite=Strict$/),
    ]);
    const elsewhere = await device.send('/api/account/sso', {}, 'https://other.example');
    expect(elsewhere.status).toBe(403);
  });

  const withRoles: [unknown, AccountRole | 'none'][] = [
    ['fitters', 'technician'],
    [['fitters'], 'technician'],
    [['fitters', 'it', 'leads'], 'administrator'],
    [['leads', 'others'], 'supervisor'],
    [['administrator'], 'none'],
    [['others'], 'none'],
    [[], 'none'],
    [undefined, 'none'],
    [{ it: true }, 'none'],
    [7, 'none'],
  ];
  it.each(withRoles)('R176: of the roles %j the highest that is set up counts: %s', async (roles, role) => {
    provider.person = { name: 'S. Example', roles };
    const answer = await (await new Device().signIn()).json();
    if (role === 'none')
      expect(answer).toEqual({ reason: 'locked', text: expect.stringMatching(/gives you no role here/) });
    else expect(answer).toEqual({ holder: { name: 'S. Example', role } });
  });

  it.each([
    [{ name: 'S. Example', preferred_username: 's' }, 'S. Example'],
    [{ name: '', preferred_username: 'sam' }, 'sam'],
    [{ name: 7, preferred_username: 'sam' }, 'sam'],
    [{ name: 'a\u202eb', preferred_username: 'sam' }, 'sam'],
  ])('the name %j is %s', async (person, name) => {
    provider.person = { ...person, roles: 'it' };
    expect(await (await new Device().signIn()).json()).toMatchObject({ holder: { name } });
  });

  it('nobody comes in without a name, which signatures need', async () => {
    provider.person = { roles: 'it' };
    expect(await said(await new Device().signIn())).toMatchObject({
      text: expect.stringMatching(/not say your name/),
    });
  });

  const now = () => Math.floor(Date.now() / 1000);
  /** OpenID Connect Core 3.1.3.7 numbers what must be checked of an ID token. Thirty seconds are for clocks that differ. */
  const tokens: [string, Spoil, boolean][] = [
    ['as it came', (claims) => ({ claims }), true],
    ['of another issuer (2.)', (claims) => ({ claims: { ...claims, iss: 'https://other.example' } }), false],
    ['for another client (3.)', (claims) => ({ claims: { ...claims, aud: 'another' } }), false],
    [
      'for us and a client of theirs (3., 4.)',
      (claims) => ({ claims: { ...claims, aud: [CLIENT, 'x'], azp: 'x' } }),
      false,
    ],
    ['signed by another key (6.)', () => ({ key: STRANGE_KEY }), false],
    ['not signed (7.)', () => ({ alg: 'none' }), false],
    ['that ended 20 s ago (9.)', (claims) => ({ claims: { ...claims, exp: now() - 20 } }), true],
    ['that ended 40 s ago (9.)', (claims) => ({ claims: { ...claims, exp: now() - 40 } }), false],
    ['that never ends', ({ exp: _, ...claims }) => ({ claims }), false],
    ['begun elsewhere (11.)', (claims) => ({ claims: { ...claims, nonce: 'another' } }), false],
    ['without a nonce (11.)', ({ nonce: _, ...claims }) => ({ claims }), false],
    ['of nobody', ({ sub: _, ...claims }) => ({ claims }), false],
  ];
  it.each(tokens)('R177: an ID token %s', async (_name, spoil, isTaken) => {
    provider.spoil = spoil;
    const device = new Device();
    const response = await device.signIn();
    if (isTaken) expect(response.status).toBe(200);
    else {
      expect(await said(response)).toEqual({
        ...{ status: 401, reason: 'locked' },
        text: 'Example ID did not sign you in. Begin again. If it goes on, tell whoever runs this server.',
      });
      expect((await device.access()).isIn).toBe(false);
    }
  });

  describe('R178: a sign-in ends in the browser where it began, once, within five minutes:', () => {
    it('not in another browser', async () => {
      const [mine, theirs] = [new Device(), new Device()];
      const query = await theirs.comeBack();
      await mine.send('/api/account/sso', {});
      expect(await said(await mine.finish(query))).toMatchObject({
        status: 401,
        text: expect.stringMatching(/not begun on this device/),
      });
      expect((await mine.access()).isIn).toBe(false);
    });

    it('not twice', async () => {
      const device = new Device();
      const query = await device.comeBack();
      const cookies = new Map(device.cookies);
      expect((await device.finish(query)).status).toBe(200);
      const other = new Device();
      other.cookies = cookies;
      expect((await other.finish(query)).status).toBe(401);
    });

    it.each([
      [PASSKEY_WITHIN_MS - 1_000, 200],
      [PASSKEY_WITHIN_MS, 401],
    ])('after %i ms: %i', async (ms, status) => {
      const device = new Device();
      const query = await device.comeBack();
      wait(ms);
      expect((await device.finish(query)).status).toBe(status);
    });

    it.each([
      ['without a state', (query: string) => query.replace(/state=[^&]+/, 'state=')],
      ['with another code', (query: string) => query.replace(/code=[^&]+/, 'code=another')],
      [
        'from another issuer (RFC 9207)',
        (query: string) => query.replace(/iss=[^&]+/, 'iss=https%3A%2F%2Fother.example'),
      ],
      ['with a refusal', (query: string) => query.replace(/code=[^&]+/, 'error=access_denied')],
      ['with nothing', () => ''],
    ])('not %s', async (_name, spoil) => {
      const device = new Device();
      const query = await device.comeBack();
      expect((await device.finish(spoil(query))).status).toBe(401);
      expect((await device.access()).isIn).toBe(false);
    });
  });

  it('R179: what opens ways for others needs a proof at the provider that is not older than a quarter of an hour', async () => {
    provider.person = { name: 'A. Example', roles: 'it' };
    const device = new Device();
    const invite = async () =>
      (await device.send('/api/accounts/invite', { name: `Guest ${Math.random()}`, role: 'technician' }))
        .status;
    await device.signIn();
    // The provider did not say how long ago the person proved who they are.
    expect(await invite()).toBe(401);
    const again = await device.signIn(true);
    expect(again.status).toBe(200);
    expect(provider.asked.at(-1)?.get('max_age')).toBe(String(FRESH_MS / 1000));
    expect(await invite()).toBe(201);
    wait(FRESH_MS + 60_000);
    expect(await invite()).toBe(401);
  });

  it('R179: a proof that is older than was asked for is refused', async () => {
    provider.spoil = (claims) => ({ claims: { ...claims, auth_time: now() - FRESH_MS / 1000 - 60 } });
    expect((await new Device().signIn(true)).status).toBe(401);
    provider.spoil = ({ auth_time: _, ...claims }) => ({ claims });
    expect((await new Device().signIn(true)).status).toBe(401);
  });

  it.each([
    ['fitters', 403],
    ['leads', 200],
    ['it', 200],
  ])('R180: the figures over all sites are for supervisors: of %s %i', async (roles, status) => {
    provider.person = { name: 'S. Example', roles };
    const device = new Device();
    expect((await device.send('/api/figures')).status).toBe(401);
    await device.signIn();
    expect((await device.send('/api/figures')).status).toBe(status);
  });

  it('R180: without accounts nobody sees them', async () => {
    const open = await startServer({ store: new MemoryStore() });
    expect(await said(await fetch(`${open.url}/api/figures`))).toMatchObject({
      status: 409,
      text: expect.stringMatching(/no accounts/),
    });
    await open.close();
  });

  it('the account is the same at each sign-in, has no passkeys here, and ends with the session', async () => {
    const device = new Device();
    const own = async () => (await device.send('/api/account')).json();
    await device.signIn(false, 't.example');
    const other = new Device();
    await other.signIn(false, 't.example');
    expect(OwnAccount.parse(await own())).toMatchObject({
      ...{ holder: { name: 'S. Example', role: 'supervisor' }, sso: true, passkeys: [] },
      sessions: [{ device: 'Linux computer', own: true }, { own: false }],
    });
    await other.send('/api/leave', { everywhere: true });
    expect((await device.access()).isIn).toBe(false);
    await device.signIn(false, 't.example');
    wait(ABSOLUTE_MS);
    expect((await device.access()).isIn).toBe(false);
  });

  it('a provider that does not answer is said, and asked again the next time', async () => {
    const lone = await start({ ...settings, issuer: new URL('http://127.0.0.1:9') });
    const begin = async () =>
      said(
        await fetch(`${lone.url}/api/account/sso`, {
          method: 'POST',
          body: '{}',
          headers: { origin: lone.url },
        }),
      );
    const words = {
      status: 409,
      reason: 'not-now',
      text: expect.stringMatching(/Example ID does not answer now/),
    };
    expect([await begin(), await begin()]).toEqual(
      [words, words].map((each) => expect.objectContaining(each)),
    );
    await lone.close();
  });

  it('a provider is reached by https, but on this machine itself', () => {
    const at = (issuer: string) => () => new Sso({ ...settings, issuer: new URL(issuer) });
    for (const issuer of ['https://id.firm.example', 'http://localhost:1', 'http://[::1]:1']) at(issuer)();
    for (const issuer of [
      'http://id.firm.example',
      'http://localhost.firm.example',
      'http://127.firm.example',
    ])
      expect(at(issuer)).toThrow(/must be reached by https/);
  });
});
