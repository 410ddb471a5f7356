import type { AccountId } from '../../src/model/account.ts';
import type { Holder } from '../../src/protocol/accounts.ts';
import { digest, newToken } from './secrets.ts';

/** OWASP Session Management Cheat Sheet: half an hour without use, a working day in any case; from memory. */
export const IDLE_MS = 30 * 60_000;
export const ABSOLUTE_MS = 8 * 3600_000;
/** What opens ways for others (an invitation, a passkey) asks for a proof that is not older. */
export const FRESH_MS = 15 * 60_000;
/** Beyond it the oldest ends. */
const MOST = 1_000;
const ID_LETTERS = 12;

/** Who a session belongs to, and on what kind of phone. */
export interface SessionOf {
  /** Left out where a passphrase was shown: nobody knows by whom. */
  readonly account?: AccountId;
  readonly device: string;
  /** Of somebody whose account is not ours: who they are, and how long ago they proved it there, ms; undefined where it was not said. */
  readonly of?: { readonly holder: Holder; readonly provenAgo: number | undefined };
}

export interface Session extends SessionOf {
  /** The beginning of its digest: names it, and opens nothing. */
  readonly id: string;
  /** ms of a clock that never goes back. */
  readonly begun: number;
  readonly used: number;
}

/**
 * Who has shown that they may open sites and jobs. Only digests are kept, and in memory alone: when the server ends,
 * every session does. Times: milliseconds of any clock that never goes back.
 */
export class Sessions {
  private readonly open = new Map<string, Session>();

  /** A new secret for each proof (so none that was put into a browser before is ever raised); `old` ends. */
  begin(now: number, old?: string, of: SessionOf = { device: '' }): string {
    this.end(old);
    this.sweep(now);
    const [oldest] = this.open.keys();
    if (this.open.size >= MOST && oldest !== undefined) this.open.delete(oldest);
    const secret = newToken();
    const key = digest(secret);
    this.open.set(key, { ...of, id: key.slice(0, ID_LETTERS), begun: now, used: now });
    return secret;
  }

  /** The session of this secret, if it is good; that it was used counts. */
  use(secret: string | undefined, now: number): Session | undefined {
    const session = this.look(secret, now);
    if (!session || secret === undefined) return undefined;
    const used = { ...session, used: now };
    this.open.set(digest(secret), used);
    return used;
  }

  /** The same; it does not count as use. */
  look(secret: string | undefined, now: number): Session | undefined {
    const session = secret === undefined ? undefined : this.open.get(digest(secret));
    return session && !isOver(session, now) ? session : undefined;
  }

  /** The good sessions of an account, the oldest first. */
  of(account: AccountId, now: number): Session[] {
    return [...this.open.values()].filter((one) => one.account === account && !isOver(one, now));
  }

  end(secret: string | undefined): void {
    if (secret !== undefined) this.open.delete(digest(secret));
  }

  /** Ends those of an account, or the one that is named. False: there was none. */
  endOf(account: AccountId, id?: string): boolean {
    const ended = [...this.open].filter(
      ([, one]) => one.account === account && (id === undefined || one.id === id),
    );
    for (const [key] of ended) this.open.delete(key);
    return ended.length > 0;
  }

  private sweep(now: number): void {
    for (const [key, session] of this.open) if (isOver(session, now)) this.open.delete(key);
  }
}

const isOver = ({ begun, used }: Session, now: number): boolean =>
  now - used >= IDLE_MS || now - begun >= ABSOLUTE_MS;

/** Whether its person has proven lately who they are. */
export const isFresh = ({ begun, of }: Session, now: number): boolean =>
  now - begun + (of ? (of.provenAgo ?? FRESH_MS) : 0) < FRESH_MS;
