import { createHash, createHmac } from 'node:crypto';
import type { Configuration, IDToken } from 'openid-client';
import { type AccountId, AccountName, AccountRole } from '../../src/model/account.ts';
import { StartFailure } from '../process/start-failure.ts';

/** How people sign in with the account that their firm gives them (OpenID Connect). */
export interface SsoSettings {
  /** The provider, as it calls itself. */
  readonly issuer: URL;
  readonly client: string;
  /** Without it, the provider knows us by PKCE alone. */
  readonly secret?: string | undefined;
  readonly scopes: string;
  /** Which claim of the ID token holds the roles, and which of its values stands for which of ours. */
  readonly claim: string;
  readonly roles: ReadonlyMap<string, AccountRole>;
  /** For people: "Sign in with …". */
  readonly name: string;
}

/** Who has signed in there. */
export interface SsoHolder {
  readonly id: AccountId;
  readonly name: string;
  readonly role: AccountRole;
  /** When they last proved there who they are, ms since 1970; undefined where the provider does not say. */
  readonly provenAt: number | undefined;
}

/** Why nobody was signed in: the provider does not answer, says no, or says something that is not to be believed; or no role. */
export class SsoFailure extends Error {
  override name = 'SsoFailure';

  constructor(
    readonly why: 'unreachable' | 'refused' | 'no-role' | 'no-name',
    message: string,
  ) {
    super(message);
  }
}

/** What a provider may change (its addresses) is asked for again after so long. */
const ASK_AGAIN_MS = 3600_000;
/** Clocks of two machines differ. Common practice, no source. */
const CLOCKS_DIFFER_S = 30;
const ANSWER_S = 10;
/** What passes there, nobody else hears. */
const ON_THIS_MACHINE: ReadonlySet<string> = new Set(['localhost', '127.0.0.1', '[::1]']);

/**
 * The sign-in of a provider: code flow with PKCE, state and nonce (OpenID Connect Core 3.1, RFC 7636). `openid-client` does it;
 * an ID token counts only with a signature by a key that the provider publishes, also where it came straight from it.
 */
export class Sso {
  private known: { at: number; configuration: Promise<Configuration> } | undefined;

  constructor(readonly settings: SsoSettings) {
    const { issuer } = settings;
    if (issuer.protocol !== 'https:' && !ON_THIS_MACHINE.has(issuer.hostname))
      throw new StartFailure(
        `the provider of --sso-from must be reached by https (it is ${issuer.href}): only on this machine itself is http enough.`,
      );
  }

  /**
   * Where a browser signs in. `secret`: what this browser alone keeps. `redirect`: where it comes back to. `within`: seconds; who has
   * proven longer ago who they are does it again. Rejects with `SsoFailure`.
   */
  async url(secret: string, state: string, redirect: string, within?: number): Promise<string> {
    const [client, configuration] = await this.provider();
    const url = client.buildAuthorizationUrl(configuration, {
      redirect_uri: redirect,
      scope: this.settings.scopes,
      state,
      nonce: nonceOf(secret),
      code_challenge: await client.calculatePKCECodeChallenge(verifierOf(secret)),
      code_challenge_method: 'S256',
      ...(within !== undefined && { max_age: String(within) }),
    });
    return url.href;
  }

  /** Who came back with this address, which has what the provider answered behind its "?". Rejects with `SsoFailure`. */
  async holder(secret: string, state: string, came: URL, within?: number): Promise<SsoHolder> {
    const [client, configuration] = await this.provider();
    const tokens = await client
      .authorizationCodeGrant(configuration, came, {
        expectedState: state,
        expectedNonce: nonceOf(secret),
        pkceCodeVerifier: verifierOf(secret),
        idTokenExpected: true,
        ...(within !== undefined && { maxAge: within }),
      })
      .catch((error: Error) => {
        throw new SsoFailure('refused', textOf(error));
      });
    return this.holderOf(tokens.claims() as IDToken);
  }

  private holderOf(claims: IDToken): SsoHolder {
    const { claim, roles } = this.settings;
    const given = [claims[claim]].flat().filter((value) => typeof value === 'string');
    const role = AccountRole.options.findLast((each) => given.some((value) => roles.get(value) === each));
    if (!role) throw new SsoFailure('no-role', `the claim ${claim} names no role (${given.join(', ')})`);
    const names = [claims.name, claims.preferred_username, claims.email];
    const name = names.find((each) => AccountName.safeParse(each).success);
    if (name === undefined) throw new SsoFailure('no-name', 'no claim has a name');
    const { auth_time: proven } = claims;
    return {
      id: idOf(claims.iss, claims.sub),
      name: AccountName.parse(name),
      role,
      provenAt: typeof proven === 'number' ? proven * 1000 : undefined,
    };
  }

  private async provider() {
    const client = await library();
    if (!this.known || performance.now() - this.known.at > ASK_AGAIN_MS) {
      const { issuer, client: id, secret, name } = this.settings;
      const configuration = client
        .discovery(
          issuer,
          id,
          { [client.clockTolerance]: CLOCKS_DIFFER_S },
          secret === undefined ? client.None() : client.ClientSecretPost(secret),
          {
            timeout: ANSWER_S,
            execute: [
              client.enableNonRepudiationChecks,
              ...(issuer.protocol === 'http:' ? [client.allowInsecureRequests] : []),
            ],
          },
        )
        .catch((error: Error) => {
          throw new SsoFailure('unreachable', `${name} does not answer as it should: ${textOf(error)}`);
        });
      const known = { at: performance.now(), configuration };
      this.known = known;
      // After a failure, the next one asks again.
      configuration.catch(() => {
        if (this.known === known) this.known = undefined;
      });
    }
    return [client, await this.known.configuration] as const;
  }
}

/** Both are worked out from what the browser keeps: so nothing of a sign-in that waits lies here. */
const derived = (secret: string, purpose: string): string =>
  createHmac('sha256', secret).update(purpose).digest('base64url');
const nonceOf = (secret: string): string => derived(secret, 'nonce');
const verifierOf = (secret: string): string => derived(secret, 'PKCE');

const ID_LETTERS = 22;

/** The same person at the same provider is the same account. */
const idOf = (issuer: string, subject: string): AccountId =>
  createHash('sha256').update(`${issuer}\n${subject}`).digest('base64url').slice(0, ID_LETTERS);

/** For the log of the server: the reason lies in what caused it. */
function textOf(error: Error): string {
  const { cause } = error;
  return cause instanceof Error ? `${error.message}: ${cause.message}` : error.message;
}

/** Loaded only for who has a provider. */
async function library() {
  try {
    return await import('openid-client');
  } catch (error) {
    throw new SsoFailure(
      'unreachable',
      `--sso-from needs the package openid-client (${(error as Error).message}): npm install openid-client`,
    );
  }
}
