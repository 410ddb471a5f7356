import type { TLSSocket } from 'node:tls';
import { type Context, Hono } from 'hono';
import { getCookie, setCookie } from 'hono/cookie';
import { PASSPHRASE_NEEDED, WRONG_PASSPHRASE } from '../../src/phrases/access.ts';
import { TOO_MANY_CODES } from '../../src/phrases/limits.ts';
import { ROUTES } from '../../src/protocol/routes.ts';
import { Guesses } from '../guard/guesses.ts';
import type { Limits } from '../guard/limits.ts';
import { ABSOLUTE_MS, Sessions } from '../guard/sessions.ts';
import type { PassphraseCheck } from '../store/passphrase.ts';
import { addressOf, type Env, read, refuse } from './http.ts';
import { answer } from './route.ts';

/** Over https the browser holds the name to what it promises: from this server, over https, for the whole site. */
const NAMES = { secure: '__Host-ladderline', plain: 'ladderline' };

/** Lets in who knows the passphrase, and says whether a caller is in. Without a passphrase everybody is. */
export class Entrance {
  private readonly sessions = new Sessions();
  private readonly guesses: Guesses;

  constructor(
    limits: Limits,
    private readonly passphrase: PassphraseCheck | undefined,
  ) {
    this.guesses = new Guesses(limits, performance.now());
  }

  /** The refusal for who may not open sites and jobs. */
  refusal(c: Context<Env>): Response | undefined {
    if (!this.passphrase?.isSet()) return undefined;
    const isIn = this.sessions.isGood(getCookie(c, nameFor(c)), performance.now());
    return isIn ? undefined : refuse(c, 'locked', PASSPHRASE_NEEDED);
  }

  api(): Hono<Env> {
    const app = new Hono<Env>();
    answer(app, ROUTES.enter, async (c) => {
      const now = performance.now();
      if (!this.passphrase?.isSet()) return c.json({ ok: true });
      if (!this.guesses.may(addressOf(c), now)) {
        c.header('Retry-After', '60');
        return refuse(c, 'too-fast', TOO_MANY_CODES);
      }
      const body = await read(c, ROUTES.enter.body);
      if (body.kind === 'refused') return refuse(c, body.reason, body.text);
      // Before the slow check, so that many at once are no way round the limit.
      this.guesses.wrong(addressOf(c), now);
      if (!(await this.passphrase.isRight(body.value.passphrase)))
        return refuse(c, 'locked', WRONG_PASSPHRASE);
      this.guesses.forgive(addressOf(c), performance.now());
      const name = nameFor(c);
      setCookie(c, name, this.sessions.begin(performance.now(), getCookie(c, name)), {
        httpOnly: true,
        sameSite: 'Strict',
        path: '/',
        secure: isSecure(c),
        maxAge: ABSOLUTE_MS / 1000,
      });
      return c.json({ ok: true });
    });
    return app;
  }
}

const isSecure = (c: Context<Env>): boolean => (c.env.incoming.socket as TLSSocket).encrypted === true;
const nameFor = (c: Context<Env>): string => (isSecure(c) ? NAMES.secure : NAMES.plain);
