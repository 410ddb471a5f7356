import { timingSafeEqual } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';
import { digest } from './secrets.ts';

const PROOF = 'x-ladderline-process';
const CALLER = 'x-ladderline-caller';

/**
 * What one process of a server writes on a request that it carries to another: that it is one of them, and who called. `proof`:
 * known only to who has the server's key.
 */
export class Carriage {
  constructor(private readonly proof: string) {}

  headersFor(caller: string): Record<string, string> {
    return { [PROOF]: this.proof, [CALLER]: caller };
  }

  /** Who called, where another process carried it here; undefined where it comes from outside. */
  callerIn(headers: IncomingHttpHeaders): string | undefined {
    const given = headers[PROOF];
    if (given === undefined) return undefined;
    const isOurs = timingSafeEqual(Buffer.from(digest(String(given))), Buffer.from(digest(this.proof)));
    return isOurs ? String(headers[CALLER]) : undefined;
  }
}
