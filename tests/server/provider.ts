import { generateKeyPairSync, type KeyObject, sign } from 'node:crypto';
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import Provider, { type Configuration } from 'oidc-provider';

type Claims = Record<string, unknown>;

/** What the provider's token is made into before it is sent. */
export type Spoil = (claims: Claims) => { claims?: Claims; key?: KeyObject; alg?: 'RS256' | 'none' };

const newKey = (): KeyObject => generateKeyPairSync('rsa', { modulusLength: 2048 }).privateKey;

/** One that no provider has. */
export const STRANGE_KEY = newKey();

export const CLIENT = 'ladderline';
export const SECRET = 'a-secret-of-the-tests-that-is-long-enough';

/** A provider of OpenID Connect on this machine (`oidc-provider`), with one person who has signed in there. */
export class TestProvider {
  /** What it says of the person. */
  person: Claims = { name: 'S. Example', roles: ['leads'] };
  /** Between the provider and us: what a provider that is broken, or not ours, would send. */
  spoil: Spoil | undefined;
  /** What it was asked. */
  readonly asked: URLSearchParams[] = [];

  private constructor(
    readonly issuer: string,
    private readonly key: KeyObject,
    private readonly stop: () => void,
  ) {}

  /** `redirects`: where it may lead people back to. */
  static async start(redirects: () => string[]): Promise<TestProvider> {
    const key = newKey();
    const server = createServer();
    server.listen(0, '127.0.0.1');
    await once(server, 'listening');
    const issuer = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const test = new TestProvider(issuer, key, () => server.close().closeAllConnections());
    let answer: ReturnType<Provider['callback']> | undefined;
    server.on('request', (request, response) => {
      // Not before it is asked: by then it is known where our server is.
      answer ??= test.provider(redirects()).callback();
      void answer(request, response);
    });
    return test;
  }

  private provider(redirects: string[]): Provider {
    const settings: Configuration = {
      clients: [
        {
          client_id: CLIENT,
          client_secret: SECRET,
          redirect_uris: redirects,
          token_endpoint_auth_method: 'client_secret_post',
        },
      ],
      jwks: {
        keys: [{ ...this.key.export({ format: 'jwk' }), alg: 'RS256', use: 'sig', kid: 'ours' }],
      } as never,
      cookies: { keys: ['of the tests'] },
      claims: { openid: ['sub'], profile: ['name', 'preferred_username', 'roles'] },
      conformIdTokenClaims: false,
      pkce: { required: () => true },
      findAccount: (_ctx, id) => ({ accountId: id, claims: () => ({ sub: id, ...this.person }) }),
    };
    const provider = new Provider(this.issuer, settings);
    provider.use(async (ctx, next) => {
      await next();
      if (ctx.path === '/auth') this.asked.push(new URLSearchParams(ctx.querystring));
      const body = ctx.body as { id_token?: string } | undefined;
      if (ctx.path === '/token' && body?.id_token && this.spoil) body.id_token = this.spoilt(body.id_token);
    });
    return provider;
  }

  close(): void {
    this.stop();
  }

  private spoilt(token: string): string {
    const given = JSON.parse(Buffer.from(token.split('.')[1] ?? '', 'base64url').toString()) as Claims;
    const { claims = given, key = this.key, alg = 'RS256' } = this.spoil?.(given) ?? {};
    const part = (value: unknown) => Buffer.from(JSON.stringify(value)).toString('base64url');
    const text = `${part({ alg, typ: 'JWT', kid: 'ours' })}.${part(claims)}`;
    const signature = alg === 'none' ? '' : sign('RSA-SHA256', Buffer.from(text), key).toString('base64url');
    return `${text}.${signature}`;
  }
}

/** A browser as far as signing in goes: it keeps cookies, follows where it is led, and fills in the forms of the provider. */
export class TestBrowser {
  private readonly jar = new Map<string, string>();

  /** Follows from the provider's address until it is led to `end`, signing in as `login` where it is asked. */
  async signIn(start: string, end: string, login: string): Promise<URL> {
    let url = new URL(start);
    for (let steps = 0; steps < 12; steps++) {
      const response = await this.get(url);
      const location = response.headers.get('location');
      if (location !== null) {
        url = new URL(location, url);
        if (url.href.startsWith(end)) return url;
        continue;
      }
      const page = await response.text();
      const action = /<form[^>]* action="([^"]+)"/.exec(page)?.[1];
      if (action === undefined) throw new Error(`the provider shows ${response.status}: ${page}`);
      const prompt = /name="prompt" value="(\w+)"/.exec(page)?.[1] ?? '';
      const answered = await this.get(new URL(action, url), { prompt, login, password: 'any' });
      url = new URL(answered.headers.get('location') ?? '', url);
    }
    throw new Error('the provider leads nowhere');
  }

  private async get(url: URL, form?: Record<string, string>): Promise<Response> {
    const response = await fetch(url, {
      redirect: 'manual',
      headers: {
        cookie: [...this.jar].map(([name, value]) => `${name}=${value}`).join('; '),
        accept: 'text/html',
      },
      ...(form && { method: 'POST', body: new URLSearchParams(form) }),
    });
    for (const set of response.headers.getSetCookie()) {
      const [, name = '', value = ''] = /^([^=]+)=([^;]*)/.exec(set) ?? [];
      this.jar.set(name, value);
    }
    return response;
  }
}
