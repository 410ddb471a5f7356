import { digest, newToken } from './secrets.ts';

/** OWASP Session Management Cheat Sheet: half an hour without use, a working day in any case; from memory. */
export const IDLE_MS = 30 * 60_000;
export const ABSOLUTE_MS = 8 * 3600_000;
/** Beyond it the oldest ends. */
const MOST = 1_000;

interface Session {
  begun: number;
  used: number;
}

/**
 * Who has shown that they may open sites and jobs. Only digests are kept, and in memory alone: when the server ends,
 * every session does. Times: milliseconds of any clock that never goes back.
 */
export class Sessions {
  private readonly open = new Map<string, Session>();

  /** A new secret for each proof (so none that was put into a browser before is ever raised); `old` ends. */
  begin(now: number, old?: string): string {
    this.end(old);
    this.sweep(now);
    const [oldest] = this.open.keys();
    if (this.open.size >= MOST && oldest !== undefined) this.open.delete(oldest);
    const secret = newToken();
    this.open.set(digest(secret), { begun: now, used: now });
    return secret;
  }

  /** Whether a session is good; that it was used counts. */
  isGood(secret: string | undefined, now: number): boolean {
    const session = secret === undefined ? undefined : this.open.get(digest(secret));
    if (!session || isOver(session, now)) return false;
    session.used = now;
    return true;
  }

  end(secret: string | undefined): void {
    if (secret !== undefined) this.open.delete(digest(secret));
  }

  endAll(): void {
    this.open.clear();
  }

  private sweep(now: number): void {
    for (const [key, session] of this.open) if (isOver(session, now)) this.open.delete(key);
  }
}

const isOver = ({ begun, used }: Session, now: number): boolean =>
  now - used >= IDLE_MS || now - begun >= ABSOLUTE_MS;
