import { randomBytes } from 'node:crypto';
import { PASSKEY_WITHIN_MS } from '../../src/model/account.ts';

/** WebAuthn Level 2, 13.4.3, asks for 16 bytes or more. */
const BYTES = 32;
/** Of one block of addresses: its oldest is forgotten, and nobody else's. */
export const MOST_OF_PLACE = 20;
/** Of all together. */
const MOST = 20_000;

interface Waiting {
  readonly purpose: string;
  readonly place: string;
  readonly until: number;
}

/** What authenticators were asked and have not answered. In memory alone. Times: ms of a clock that never goes back. */
export class Challenges {
  private readonly waiting = new Map<string, Waiting>();

  /** `purpose`: what the answer is good for, and for whom. `place`: the block of addresses that asked. */
  give(purpose: string, place: string, now: number): string {
    for (const [old, { until }] of this.waiting) {
      if (now < until) break;
      this.waiting.delete(old);
    }
    const ofPlace = [...this.waiting].filter(([, one]) => one.place === place);
    const [first] = ofPlace.length >= MOST_OF_PLACE ? ofPlace : this.waiting.size >= MOST ? this.waiting : [];
    if (first) this.waiting.delete(first[0]);
    const challenge = randomBytes(BYTES).toString('base64url');
    this.waiting.set(challenge, { purpose, place, until: now + PASSKEY_WITHIN_MS });
    return challenge;
  }

  /** Whether it was given for this and still waits. It is used up, whatever comes of it. */
  take(challenge: string, purpose: string, now: number): boolean {
    const waiting = this.waiting.get(challenge);
    this.waiting.delete(challenge);
    return waiting !== undefined && waiting.purpose === purpose && now < waiting.until;
  }
}
