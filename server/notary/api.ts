import { type Context, Hono } from 'hono';
import type * as z from 'zod/mini';
import { NO_SUCH_TREE } from '../../src/phrases/bad-requests.ts';
import type { HeadsConsistency, ServerKey } from '../../src/protocol/heads.ts';
import { ROUTES } from '../../src/protocol/routes.ts';
import { type Env, refuse } from '../http/http.ts';
import { answer } from '../http/route.ts';
import type { Notary } from './notary.ts';

/** The server's public key, and the tree over the heads that it signed. Only hashes, so open to all. */
export function headsApi(notary: Notary): Hono<Env> {
  const app = new Hono<Env>();
  answer(app, ROUTES.serverKey, (c) => c.json(notary.key satisfies z.input<typeof ServerKey>));
  answer(app, ROUTES.heads, (c) => c.json(notary.treeHead()));
  answer(app, ROUTES.headsConsistency, (c) => {
    const [from, to] = [numberIn(c, 'from'), numberIn(c, 'to')];
    if (!(from >= 0 && from <= to && to <= notary.size)) return refuse(c, 'bad-target', NO_SUCH_TREE, 404);
    return c.json({ from, to, path: notary.consistency(from, to) } satisfies z.input<
      typeof HeadsConsistency
    >);
  });
  return app;
}

const numberIn = (c: Context<Env>, name: string): number => {
  const text = c.req.query(name) ?? '';
  return /^\d{1,15}$/.test(text) ? Number(text) : Number.NaN;
};
