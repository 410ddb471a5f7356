import type { Digest } from '../store/store.ts';

/** At most so many tokens are remembered; the longest unused are forgotten first. */
const MOST_REMEMBERED = 50_000;

/** When each token was last used, since this server started. Digests only, and in memory alone. */
export class LastSeen {
  private readonly at = new Map<Digest, number>();

  saw(token: Digest, now: number): void {
    this.at.delete(token);
    this.at.set(token, now);
    const [oldest] = this.at.keys();
    if (this.at.size > MOST_REMEMBERED && oldest !== undefined) this.at.delete(oldest);
  }

  of(token: Digest): number | undefined {
    return this.at.get(token);
  }
}
