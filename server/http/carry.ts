import type { Context } from 'hono';
import type { Carriage } from '../guard/carriage.ts';
import { traceparentOf } from '../guard/span.ts';
import type { Leases } from '../store/leases.ts';
import { addressOf, type Env } from './http.ts';

const ASKED = ['authorization', 'content-type', 'cookie'];
const ANSWERED = ['content-type', 'content-disposition', 'retry-after', 'set-cookie'];
const WITHIN_MS = 20_000;

/**
 * Gives a request to another process of this server, and its answer back. Undefined where it was carried here already: it could go
 * round in a ring. Rejects where that process does not answer.
 */
export async function carry(
  c: Context<Env>,
  url: string,
  carriage: Carriage | undefined,
): Promise<Response | undefined> {
  if (!carriage || carriage.callerIn(c.env.incoming.headers) !== undefined) return undefined;
  const { method } = c.req;
  const { pathname, search } = new URL(c.req.url);
  const answer = await fetch(url + pathname + search, {
    method,
    headers: {
      ...headersIn((name) => c.req.header(name), ASKED),
      ...carriage.headersFor(addressOf(c)),
      traceparent: traceparentOf(c.get('span')),
    },
    signal: AbortSignal.timeout(WITHIN_MS),
    ...(method !== 'GET' && { body: await c.req.arrayBuffer() }),
  });
  const { status, body } = answer;
  return new Response(body, { status, headers: headersIn((name) => answer.headers.get(name), ANSWERED) });
}

/** The other processes, for what only the memory of one of them knows. */
export class Others {
  constructor(
    private readonly leases: Pick<Leases, 'others'> | undefined,
    private readonly carriage: Carriage | undefined,
  ) {}

  /** The answer of the first that knows one; undefined where none does. */
  async answerTo(c: Context<Env>): Promise<Response | undefined> {
    for (const url of (await this.leases?.others()) ?? []) {
      const answer = await carry(c, url, this.carriage).catch(() => undefined);
      if (answer?.ok) return answer;
    }
    return undefined;
  }
}

function headersIn(
  headerOf: (name: string) => string | null | undefined,
  names: readonly string[],
): Record<string, string> {
  return Object.fromEntries(
    names.flatMap((name) => [[name, headerOf(name) ?? '']]).filter(([, value]) => value),
  );
}
