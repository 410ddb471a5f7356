import { type Context, Hono } from 'hono';
import type * as z from 'zod/mini';
import type { Draft } from '../../src/model/entry.ts';
import type { JobId } from '../../src/model/ids.ts';
import { NO_VISIT } from '../../src/phrases/bad-requests.ts';
import {
  DESK_NEEDS_NEXT,
  NO_SUCH_KEY,
  ONLY_PANEL_OR_DESK,
  OWN_KEY,
  SEATS_HAVE_CODES,
} from '../../src/phrases/keys.ts';
import { TOO_MANY_CHANGES } from '../../src/phrases/limits.ts';
import type { Key, WithdrawKey } from '../../src/protocol/keys.ts';
import { ROUTES } from '../../src/protocol/routes.ts';
import type { Logged } from '../../src/protocol/site.ts';
import { Buckets } from '../guard/allowance.ts';
import type { LastSeen } from '../guard/last-seen.ts';
import type { Limits } from '../guard/limits.ts';
import { digest, keyIdOf } from '../guard/secrets.ts';
import {
  type Answer,
  addressOf,
  type Env,
  goodPass,
  read,
  readQuery,
  refuse,
  reply,
  tokenOf,
} from '../http/http.ts';
import { answer } from '../http/route.ts';
import { logged } from '../jobs/logged.ts';
import type { Outcome } from '../jobs/room.ts';
import type { Rooms } from '../jobs/rooms.ts';
import type { Sites } from '../site/sites.ts';
import type { Digest, HeldPass, Pass, Store } from '../store/store.ts';
import { keysOf } from './keys.ts';

interface KeysDeps {
  readonly rooms: Rooms;
  readonly sites: Sites;
  readonly store: Store;
  readonly seen: LastSeen;
  readonly limits: Limits;
}

type Withdrawal = z.output<typeof WithdrawKey>;
type Refusal = Extract<Answer<Logged>, { kind: 'refused' }>;

const badTarget = (text: string): Refusal => ({ kind: 'refused', reason: 'bad-target', text });

/** Who has a key, and taking one away: for the panel of a job, and for the desk of a site. */
export function keysApi({ rooms, sites, store, seen, limits }: KeysDeps): Hono<Env> {
  const app = new Hono<Env>();
  const changesOf = new Buckets(limits.siteWritesPerAddress);

  const list = async (job: JobId, own: Digest): Promise<{ keys: Key[] }> => {
    const room = await rooms.live(job);
    return { keys: await keysOf(store, job, { seen, members: room?.present ?? [], own }) };
  };

  answer(app, ROUTES.keys, (c) => asKeeper(c, async ({ job }, own) => c.json(await list(job, own))));
  answer(app, ROUTES.withdrawKey, (c) =>
    asKeeper(c, async ({ job, role }, own) => {
      const body = await read(c, ROUTES.withdrawKey.body);
      if (body.kind === 'refused') return reply(c, body, 200);
      const withdraw = role === 'desk' ? ofSite : ofJob('panel');
      return reply(c, await take(job, body.value, own, withdraw), 200);
    }),
  );
  answer(app, ROUTES.siteKeys, (c) =>
    asKeeper(c, async (pass, own) => {
      const wanted = await readQuery(c, ROUTES.siteKeys.query);
      if (wanted.kind === 'refused') return refuse(c, wanted.reason, wanted.text);
      if (!(await isVisit(pass, wanted.value.job))) return refuse(c, 'bad-target', NO_VISIT, 404);
      return c.json(await list(wanted.value.job, own));
    }),
  );
  answer(app, ROUTES.siteWithdrawKey, (c) =>
    asKeeper(c, async (pass, own) => {
      const body = await read(c, ROUTES.siteWithdrawKey.body);
      if (body.kind === 'refused') return reply(c, body, 200);
      if (!(await isVisit(pass, body.value.job))) return refuse(c, 'bad-target', NO_VISIT, 404);
      return reply(c, await take(body.value.job, body.value, own, ofJob('supervisor')), 200);
    }),
  );
  return app;

  /** Answers the panel's token, and the desk's. */
  async function asKeeper(
    c: Context<Env>,
    give: (pass: Pass, own: Digest) => Promise<Response>,
  ): Promise<Response> {
    const pass = await goodPass(c, store);
    if (pass instanceof Response) return pass;
    if (pass.role !== 'panel' && pass.role !== 'desk') return refuse(c, 'read-only', ONLY_PANEL_OR_DESK);
    const now = performance.now();
    if (!changesOf.of(addressOf(c), now).take(now)) return refuse(c, 'too-fast', TOO_MANY_CHANGES);
    return give(pass, digest(tokenOf(c) ?? ''));
  }

  async function isVisit({ job: log, role }: Pass, job: JobId): Promise<boolean> {
    const site = role === 'desk' ? await sites.get(log) : undefined;
    return site?.visits.includes(job) ?? false;
  }

  type Withdraw = (job: JobId, held: HeldPass, given: Withdrawal) => Promise<Outcome>;

  /** Said again, it gives the same answer: the key is gone then, but its entry is there. */
  async function take(
    job: JobId,
    given: Withdrawal,
    own: Digest,
    withdraw: Withdraw,
  ): Promise<Answer<Logged>> {
    const before = await store.seqOf(job, given.id);
    if (before !== undefined) return { kind: 'ok', value: { seq: before } };
    const held = (await store.passes(job)).find(({ token }) => keyIdOf(token) === given.key);
    if (!held) return badTarget(NO_SUCH_KEY);
    const isSeat = held.role === 'panel' || held.role === 'emitter';
    if (isSeat && held.token === own) return badTarget(OWN_KEY);
    if (isSeat && given.next !== undefined) return badTarget(SEATS_HAVE_CODES);
    if (held.role === 'desk' && given.next === undefined) return badTarget(DESK_NEEDS_NEXT);
    return logged(await withdraw(job, held, given));
  }

  function ofJob(by: 'panel' | 'supervisor'): Withdraw {
    return async (job, held, { id, next }) => {
      const room = await rooms.get(job);
      return room ? room.withdraw(by, held, next && digest(next), id) : badTarget(NO_VISIT);
    };
  }

  async function ofSite(log: JobId, { token, role }: HeldPass, { id, next }: Withdrawal): Promise<Outcome> {
    const site = await sites.get(log);
    const draft: Draft = { actor: 'supervisor', fact: { type: 'key-withdrawn', role } };
    const keys = { withdraw: token, ...(next && { issue: [{ token: digest(next), role }] }) };
    return site ? site.submit(id, () => ({ kind: 'facts', drafts: [draft] }), keys) : badTarget(NO_VISIT);
  }
}
