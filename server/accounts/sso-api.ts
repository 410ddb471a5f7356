import { type Context, Hono } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import type { Logger } from 'pino';
import { PASSKEY_WITHIN_MS } from '../../src/model/account.ts';
import { NO_SSO, SSO_BEGIN_AGAIN, ssoFailedText } from '../../src/phrases/sso.ts';
import { ROUTES } from '../../src/protocol/routes.ts';
import { SIGNED_IN_PATH } from '../../src/protocol/sso.ts';
import { Challenges } from '../guard/challenges.ts';
import { blockOf } from '../guard/guesses.ts';
import { digest, newToken } from '../guard/secrets.ts';
import { FRESH_MS } from '../guard/sessions.ts';
import { type Entrance, isSecure } from '../http/entrance.ts';
import { addressOf, type Env, read, refuse } from '../http/http.ts';
import { answer } from '../http/route.ts';
import type { Clock } from '../process/clock.ts';
import { type Sso, SsoFailure, type SsoHolder } from './sso.ts';

interface SsoDeps {
  readonly entrance: Entrance;
  readonly sso: Sso | undefined;
  readonly clock: Clock;
  readonly log: Logger;
}

const COOKIES = { secure: '__Host-ladderline-sso', plain: 'ladderline-sso' };

/**
 * Signing in at the provider of the firm. What begins in a browser ends in that browser: only it has the secret from which the proof
 * for the provider is made, and each sign-in is good once, for five minutes.
 */
export function ssoApi({ entrance, sso, clock, log }: SsoDeps): Hono<Env> {
  const app = new Hono<Env>();
  const challenges = new Challenges();

  answer(app, ROUTES.beginSso, async (c) => {
    const body = await read(c, ROUTES.beginSso.body);
    if (body.kind === 'refused') return refuse(c, body.reason, body.text);
    const page = pageOf(c);
    if (!sso || !page) return refuse(c, 'not-now', NO_SSO);
    const secret = newToken() + newToken();
    const { again } = body.value;
    const state = challenges.give(purposeOf(secret, again), blockOf(addressOf(c)), performance.now());
    try {
      const url = await sso.url(secret, state, page.href, withinOf(again));
      const name = isSecure(c) ? COOKIES.secure : COOKIES.plain;
      setCookie(c, name, secret, { ...cookie(name), maxAge: PASSKEY_WITHIN_MS / 1000 });
      return c.json({ url });
    } catch (error) {
      return failed(c, error);
    }
  });

  answer(app, ROUTES.finishSso, async (c) => {
    const body = await read(c, ROUTES.finishSso.body);
    if (body.kind === 'refused') return refuse(c, body.reason, body.text);
    const page = pageOf(c);
    if (!sso || !page) return refuse(c, 'not-now', NO_SSO);
    const { query, again, device } = body.value;
    const secret = getCookie(c, COOKIES.secure) ?? (isSecure(c) ? undefined : getCookie(c, COOKIES.plain));
    for (const name of Object.values(COOKIES))
      if (getCookie(c, name) !== undefined) setCookie(c, name, '', { ...cookie(name), maxAge: 0 });
    page.search = query;
    const state = page.searchParams.get('state') ?? '';
    // Nothing here can be guessed, so nothing is counted as a guess.
    const isOurs =
      secret !== undefined && challenges.take(state, purposeOf(secret, again), performance.now());
    if (!isOurs) return refuse(c, 'locked', SSO_BEGIN_AGAIN);
    let holder: SsoHolder;
    try {
      holder = await sso.holder(secret, state, page, withinOf(again));
    } catch (error) {
      return failed(c, error);
    }
    const { id, provenAt, ...of } = holder;
    // The server's clock may have been set meanwhile: the age counts, and not the time.
    const provenAgo = provenAt === undefined ? undefined : Math.max(0, clock.now() - provenAt);
    entrance.signInFrom(c, { account: id, device, of: { holder: of, provenAgo } });
    log.info({ account: id, role: of.role }, 'somebody has signed in at the provider');
    return c.json({ holder: of });
  });

  return app;

  function failed(c: Context<Env>, error: unknown): Response {
    if (!(error instanceof SsoFailure) || !sso) throw error;
    // Nothing of it is told to the caller: it could have come from anybody.
    log.warn({ why: error.why, reason: error.message }, 'nobody was signed in by the provider');
    const reason = error.why === 'unreachable' ? 'not-now' : 'locked';
    return refuse(c, reason, ssoFailedText(error.why, sso.settings.name));
  }
}

/** Where the provider leads back to; a browser says itself from which of our names it came. Undefined for a program. */
function pageOf(c: Context<Env>): URL | undefined {
  const origin = c.req.header('origin');
  return origin === undefined ? undefined : new URL(SIGNED_IN_PATH, origin);
}

const purposeOf = (secret: string, again: boolean): string =>
  `${again ? 'again' : 'sign-in'} ${digest(secret)}`;

const withinOf = (again: boolean): number | undefined => (again ? FRESH_MS / 1000 : undefined);

const cookie = (name: string) =>
  ({ httpOnly: true, sameSite: 'Strict', path: '/', secure: name === COOKIES.secure }) as const;
