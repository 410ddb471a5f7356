import { scryptSync } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { ABSOLUTE_MS, IDLE_MS, Sessions } from '../../server/guard/sessions.ts';
import { ownCertificate } from '../../server/network/certificate.ts';
import {
  isLongEnough,
  PASSPHRASE_FILE,
  type PassphraseCheck,
  passphraseOf,
  removePassphrase,
  setPassphrase,
} from '../../server/store/passphrase.ts';
import { HttpRefusal } from '../../src/protocol/jobs.ts';
import { serve } from './house.ts';
import { SETUP } from './phone.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-entrance-'));
afterAll(() => rmSync(root, { recursive: true }));

const RIGHT = 'three grey herons wade';

describe('a passphrase', () => {
  it('is kept as scrypt by OWASP’s figures, for its owner alone, and holds at once', async () => {
    const check = passphraseOf(root);
    expect(check.isSet()).toBe(false);
    await setPassphrase(root, RIGHT);
    expect(check.isSet()).toBe(true);
    const file = join(root, PASSPHRASE_FILE);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    // OWASP Password Storage Cheat Sheet: N = 2^17, r = 8, p = 1; from memory. Node's scrypt is the other side here.
    const [, kind, n, r, p, salt = '', hash] =
      /^(scrypt)\$(17)\$(8)\$(1)\$([\w-]+)\$([\w-]+)\n$/.exec(readFileSync(file, 'utf8')) ?? [];
    expect([kind, n, r, p]).toEqual(['scrypt', '17', '8', '1']);
    const again = scryptSync(RIGHT, Buffer.from(salt, 'base64url'), 32, {
      N: 2 ** 17,
      r: 8,
      p: 1,
      maxmem: 2 ** 28,
    });
    expect(again.toString('base64url')).toBe(hash);
    expect(await check.isRight(RIGHT)).toBe(true);
    expect(await check.isRight(`${RIGHT}s`)).toBe(false);
    expect(await check.isRight('')).toBe(false);
    // NFKC: a ligature, as some keyboards make it.
    await setPassphrase(root, 'a long and ﬁne passphrase');
    expect(await check.isRight('a long and fine passphrase')).toBe(true);
    expect(await check.isRight(RIGHT)).toBe(false);
    writeFileSync(file, 'scribble');
    await expect(check.isRight(RIGHT)).rejects.toThrow('npm run passphrase');
    expect(check.isSet()).toBe(true);
    removePassphrase(root);
    expect(check.isSet()).toBe(false);
    // It is slow on purpose.
  }, 240_000);

  // NIST SP 800-63B: fifteen where nothing else is asked; from memory.
  it.each([
    ['fourteen letter', true],
    ['fourteen lette', false],
    ['  fourteen lette  ', false],
  ])('%j is long enough: %j', (text, enough) => {
    expect(isLongEnough(text)).toBe(enough);
  });
});

describe('a session', () => {
  it.each([
    ['just before half an hour without use', [IDLE_MS - 1], true],
    ['after half an hour without use', [IDLE_MS], false],
    ['in use all day, just before eight hours', [...Array(16).fill(IDLE_MS - 1), 15], true],
    ['after eight hours, in use all day', [...Array(16).fill(IDLE_MS - 1), 16], false],
  ])('%s: %j is good: %j', (_, steps, good) => {
    const sessions = new Sessions();
    let now = 5;
    const secret = sessions.begin(now);
    let isGood = true;
    for (const step of steps) {
      now += step;
      isGood = sessions.use(secret, now) !== undefined;
      if (step !== steps.at(-1)) expect(isGood).toBe(true);
    }
    expect(isGood).toBe(good);
    expect(ABSOLUTE_MS).toBe(16 * IDLE_MS);
  });

  it('is another one each time, and ends the one before', () => {
    const sessions = new Sessions();
    const first = sessions.begin(0);
    const second = sessions.begin(1, first);
    expect(second).not.toBe(first);
    expect([sessions.use(first, 2) !== undefined, sessions.use(second, 2) !== undefined]).toEqual([
      false,
      true,
    ]);
    sessions.end(second);
    expect(sessions.use(second, 3)).toBeUndefined();
    expect(sessions.use(undefined, 3)).toBeUndefined();
  });
});

describe('a server with a passphrase', () => {
  const passphrase: PassphraseCheck = { isSet: () => true, isRight: async (given) => given === RIGHT };
  const send = (url: string, path: string, body: unknown, cookie = '') =>
    fetch(url + path, { method: 'POST', body: JSON.stringify(body), headers: { cookie } });
  const cookieOf = (answer: Response) => answer.headers.getSetCookie()[0]?.split(';')[0] ?? '';

  it('R64: opens jobs and sites only for who has shown it; joining goes on without', async () => {
    const { url } = await serve({ passphrase });
    const opens: [string, unknown][] = [
      ['/api/jobs', { setup: SETUP }],
      ['/api/sites', { site: 'Hall' }],
    ];
    for (const [path, body] of opens) {
      const locked = await send(url, path, body, 'ladderline=AAAAAAAAAAAAAAAAAAAAAA');
      expect(locked.status).toBe(401);
      expect(HttpRefusal.parse(await locked.json()).reason).toBe('locked');
    }
    const wrong = await send(url, '/api/enter', { passphrase: 'wrong' });
    expect(wrong.status).toBe(401);
    expect(wrong.headers.getSetCookie()).toEqual([]);
    const right = await send(url, '/api/enter', { passphrase: RIGHT });
    expect(right.status).toBe(200);
    const cookie = cookieOf(right);
    for (const [path, body] of opens) expect((await send(url, path, body, cookie)).status).toBe(201);
    expect((await send(url, '/api/join', { code: 'ABC234' })).status).toBe(403);
    // Shown again: another cookie, and the first is no longer good.
    const again = cookieOf(await send(url, '/api/enter', { passphrase: RIGHT }, cookie));
    expect(again).not.toBe(cookie);
    expect((await send(url, '/api/jobs', { setup: SETUP }, cookie)).status).toBe(401);
    expect((await send(url, '/api/jobs', { setup: SETUP }, again)).status).toBe(201);
  });

  it('R64: guessing stops the block that guesses, also with the right one; right ones are not counted', async () => {
    const { url } = await serve({ passphrase, limits: { guessesPerAddress: { burst: 2, perSecond: 0 } } });
    const enter = async (given: string) => (await send(url, '/api/enter', { passphrase: given })).status;
    for (let i = 0; i < 4; i++) expect(await enter(RIGHT)).toBe(200);
    expect(await enter('wrong')).toBe(401);
    expect(await enter('wrong')).toBe(401);
    expect(await enter('wrong')).toBe(429);
    expect(await enter(RIGHT)).toBe(429);
  });

  it('R64: the cookie is for this server, for no script and no other website, and over https for https alone', async () => {
    const { pair: tls } = await ownCertificate(root, { names: ['localhost'], addresses: [] }, Date.now());
    const { url } = await serve({ passphrase, tls });
    // RFC 6265bis, 4.1.3.2: the prefix __Host- wants Secure, Path=/ and no Domain.
    expect((await send(url, '/api/enter', { passphrase: RIGHT })).headers.getSetCookie()).toEqual([
      expect.stringMatching(/^ladderline=[\w-]{22}; Max-Age=28800; Path=\/; HttpOnly; SameSite=Strict$/),
    ]);
    const overTls = await new Promise<string[] | undefined>((resolve, reject) => {
      const options = { method: 'POST', rejectUnauthorized: false };
      request(`${url.replace('http:', 'https:')}/api/enter`, options, ({ headers }) =>
        resolve(headers['set-cookie']),
      )
        .on('error', reject)
        .end(JSON.stringify({ passphrase: RIGHT }));
    });
    expect(overTls).toEqual([
      expect.stringMatching(
        /^__Host-ladderline=[\w-]{22}; Max-Age=28800; Path=\/; HttpOnly; Secure; SameSite=Strict$/,
      ),
    ]);
  });

  it('R64: anybody opens a job where none is set', async () => {
    const { url } = await serve({ passphrase: passphraseOf(join(root, 'none')) });
    expect((await send(url, '/api/enter', { passphrase: 'whatever' })).status).toBe(200);
    expect((await send(url, '/api/jobs', { setup: SETUP })).status).toBe(201);
  });
});
