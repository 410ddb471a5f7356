import { timingSafeEqual } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';
import { digest } from './secrets.ts';

const PROOF = 'x-ladderline-process';
const CALLER = 'x-ladderline-caller';
const READER = 'x-ladderline-reader';

/**
 * What one process of a server writes on a request that it carries to another: that it is one of them, who called, and who is
 * signed in there, for only that process knows. `proof`: known only to who has the server's key.
 */
export class Carriage {
  constructor(private readonly proof: string) {}

  /** `reader`: the name of who is signed in. */
  headersFor(caller: string, reader?: string): Record<string, string> {
    // A header takes no letters but those of English.
    const named = reader !== undefined && { [READER]: encodeURIComponent(reader) };
    return { [PROOF]: this.proof, [CALLER]: caller, ...named };
  }

  /** Who called, where another process carried it here; undefined where it comes from outside. */
  callerIn(headers: IncomingHttpHeaders): string | undefined {
    const given = headers[PROOF];
    if (given === undefined) return undefined;
    const isOurs = timingSafeEqual(Buffer.from(digest(String(given))), Buffer.from(digest(this.proof)));
    return isOurs ? String(headers[CALLER]) : undefined;
  }

  /** Who is signed in where it was carried from. */
  readerIn(headers: IncomingHttpHeaders): string | undefined {
    const given = this.callerIn(headers) === undefined ? undefined : headers[READER];
    return given === undefined ? undefined : decodeURIComponent(String(given));
  }
}
