import { type Context, Hono } from 'hono';
import type { Logger } from 'pino';
import type * as z from 'zod/mini';
import type { Input } from '../../src/conversation/input.ts';
import type { Stamping } from '../../src/log/time-stamp.ts';
import type { JobId } from '../../src/model/ids.ts';
import { NO_VISIT } from '../../src/phrases/bad-requests.ts';
import { LOST_LOG, lostUnsignable } from '../../src/phrases/damage.ts';
import {
  DAY_OF_JOBS_FULL,
  DAY_OF_LOG_FULL,
  DAY_OF_SITES_FULL,
  TOO_MANY_CHANGES,
  TOO_MANY_SITES,
  TOO_MUCH_TO_READ,
} from '../../src/phrases/limits.ts';
import { NO_SITE_LINK, ONLY_READING, revokedText } from '../../src/phrases/links.ts';
import { SITE_HAS_CHANGED } from '../../src/phrases/refusals.ts';
import { brokenUnsignable } from '../../src/phrases/signature.ts';
import { ROUTES, type Route } from '../../src/protocol/routes.ts';
import type { Logged, SiteRole, SiteView } from '../../src/protocol/site.ts';
import { chooseUnits, defineSteps, dropPair, planPairs } from '../../src/site/respond.ts';
import { Buckets, type DailyAllowances } from '../guard/allowance.ts';
import { blockOf } from '../guard/guesses.ts';
import type { Limits } from '../guard/limits.ts';
import type { HeavyWork, Turns } from '../guard/turns.ts';
import type { Entrance } from '../http/entrance.ts';
import { type Answer, addressOf, type Env, passOf, read, readQuery, refuse, reply } from '../http/http.ts';
import { answer } from '../http/route.ts';
import { logged } from '../jobs/logged.ts';
import type { Outcome, Room } from '../jobs/room.ts';
import type { Rooms } from '../jobs/rooms.ts';
import type { Notary } from '../notary/notary.ts';
import { give, picture, removePhoto, takePhoto } from '../photos/photos.ts';
import type { Clock } from '../process/clock.ts';
import { RECORDS } from '../record/files.ts';
import type { Summaries } from '../record/summaries.ts';
import { give as giveSound, sound } from '../sounds/sounds.ts';
import type { Store } from '../store/store.ts';
import { Board } from './board.ts';
import { PlanNews } from './plan-news.ts';
import type { Site } from './site.ts';
import type { Sites } from './sites.ts';

export interface SiteApiDeps {
  sites: Sites;
  summaries: Summaries;
  notary: Notary;
  stamping: () => Stamping | undefined;
  rooms: Rooms;
  store: Store;
  clock: Clock;
  limits: Limits;
  daily: DailyAllowances;
  heavy: HeavyWork;
  log: Logger;
  /** One allowance for opening jobs and sites together. */
  opensOf: Buckets;
  entrance: Entrance;
}

/** A route whose command the desk alone may give. */
type ToDesk<R> = Route & { readonly answer: { readonly status: 200 | 201; readonly is: R } };

/** Sites over HTTP: planning, the board, the visits' records, signing. */
export function siteApi({
  sites,
  summaries,
  notary,
  stamping,
  rooms,
  store,
  clock,
  limits,
  daily,
  heavy,
  opensOf,
  entrance,
  log,
}: SiteApiDeps): Hono<Env> {
  const app = new Hono<Env>();
  const board = new Board(summaries, rooms);
  const news = new PlanNews(rooms, summaries, log);
  const writesOf = new Buckets(limits.siteWritesPerAddress);

  answer(app, ROUTES.openSite, async (c) => {
    const locked = entrance.refusal(c, 'open-site');
    if (locked) return locked;
    const now = performance.now();
    if (!opensOf.of(addressOf(c), now).take(now)) {
      return refuse(c, 'too-fast', TOO_MANY_SITES);
    }
    if (!daily.sites.of(blockOf(addressOf(c)), now).take(now)) {
      return refuse(c, 'too-fast', DAY_OF_SITES_FULL);
    }
    const body = await read(c, ROUTES.openSite.body);
    return body.kind === 'ok' ? reply(c, await sites.open(body.value), 201) : reply(c, body, 400);
  });

  answer(app, ROUTES.site, (c) =>
    asReaderOf(c, (site, role, job) =>
      inTurn(c, heavy.boards, site, async () =>
        c.json({ ...(await board.view(site, role, job)), stamping: stamping() } satisfies z.input<
          typeof SiteView
        >),
      ),
    ),
  );
  answer(app, ROUTES.siteFindings, (c) =>
    asReaderOf(c, (site, _, job) =>
      inTurn(c, heavy.boards, site, async () => c.json(await board.findings(site, job))),
    ),
  );
  for (const { ofVisit, proof, give } of RECORDS) {
    answer(app, ofVisit, (c) =>
      asReader(c, async (site) => {
        const job = c.req.query('job') ?? '';
        if (!hasVisit(site, job)) return refuse(c, 'bad-target', NO_VISIT, 404);
        return inTurn(c, heavy.records, site, async () => {
          if ((await store.head(job)).count === 0) return refuse(c, 'log-broken', LOST_LOG);
          // First, because the log may grow meanwhile, and every signed head must be one of what is given.
          const signed = await notary[proof](job);
          return give(c, store, job, signed);
        });
      }),
    );
  }

  onDesk(ROUTES.planPairs, async (site, { id, pairs }) => {
    const outcome = await site.submit(id, (state) => planPairs(state, pairs));
    // The desk does not wait until every crew is told: there may be thousands of pairs.
    if (outcome.kind === 'taken')
      void news.tell(
        site,
        pairs.map((plan) => plan.id),
      );
    return logged(outcome);
  });
  onDesk(ROUTES.chooseUnits, async (site, { id, units }) =>
    logged(await site.submit(id, () => chooseUnits(units))),
  );
  onDesk(ROUTES.defineSteps, async (site, { id, steps }) =>
    logged(await site.submit(id, () => defineSteps(steps))),
  );
  onDesk(ROUTES.dropPair, async (site, { id, pair, reason }) =>
    logged(await site.submit(id, (state) => dropPair(state, pair, reason))),
  );
  onDesk(ROUTES.beginVisit, async (site, command, c) => {
    const now = performance.now();
    if (!daily.jobs.of(blockOf(addressOf(c)), now).take(now)) {
      return { kind: 'refused', reason: 'too-fast', text: DAY_OF_JOBS_FULL };
    }
    return sites.begin(site, command);
  });
  onDesk(ROUTES.signRecord, async (site, { id, job, head, ofSite, beside, ...typed }, c) => {
    const lack = entrance.kind === 'accounts' ? entrance.lacks(c, 'sign') : undefined;
    if (lack) return { kind: 'refused', ...lack };
    // The name is the account's, whatever was typed; somebody without one signs beside a signature that stands.
    const account = beside ? undefined : entrance.visitor(c)?.account;
    const proven = account && ({ name: account.name, account: true } as const);
    // A signature stands under a whole log only, with all its pictures: both are checked here once more, whatever was found earlier.
    const result = hasVisit(site, job) ? await summaries.check(job) : undefined;
    if (result?.kind === 'broken')
      return { kind: 'refused', reason: 'log-broken', text: brokenUnsignable(result.fault.seq) };
    if (result && result.lost.length > 0)
      return { kind: 'refused', reason: 'not-signable', text: lostUnsignable(result.lost) };
    const findings = (result?.summary.findings ?? []).map((finding) => finding.id);
    const across = (await board.findings(site, job)).site.map((finding) => finding.id);
    if (ofSite && ofSite.join() !== across.join()) {
      return { kind: 'refused', reason: 'not-signable', text: SITE_HAS_CHANGED };
    }
    // If the findings are of a later head, the record has grown, and the job refuses.
    const input: Input = {
      kind: 'sign',
      ...typed,
      ...proven,
      ...(beside && entrance.kind === 'accounts' && { beside }),
      head: { job, ...head },
      findings,
      ofSite: { head: site.head, findings: across },
    };
    return toVisit(site, job, input, id);
  });
  onDesk(ROUTES.closeIssue, (site, { id, job, issue, how }) =>
    toVisit(site, job, { kind: 'close-issue', by: 'supervisor', issue, how }, id),
  );
  answer(app, ROUTES.sitePhoto, (c) =>
    asReader(c, async (site) => {
      const wanted = await readQuery(c, ROUTES.sitePhoto.query);
      if (wanted.kind === 'refused') return refuse(c, wanted.reason, wanted.text);
      const { job = '', seq } = wanted.value;
      if (!hasVisit(site, job)) return refuse(c, 'bad-target', NO_VISIT, 404);
      return give(c, await picture(store, job, seq));
    }),
  );
  answer(app, ROUTES.siteSound, (c) =>
    asReader(c, async (site) => {
      const wanted = await readQuery(c, ROUTES.siteSound.query);
      if (wanted.kind === 'refused') return refuse(c, wanted.reason, wanted.text);
      const { job = '', seq } = wanted.value;
      if (!hasVisit(site, job)) return refuse(c, 'bad-target', NO_VISIT, 404);
      return giveSound(c, await sound(store, job, seq, clock.now()));
    }),
  );
  onDeskTaking(
    ROUTES.siteTakePhoto,
    (c) => readQuery(c, ROUTES.siteTakePhoto.query),
    async (site, taken, c) => {
      const content = new Uint8Array(await c.req.arrayBuffer());
      return inVisit(site, taken.job, (room) => takePhoto(room, 'supervisor', taken, content));
    },
  );
  onDesk(ROUTES.siteRemovePhoto, (site, removed) =>
    inVisit(site, removed.job, (room) => removePhoto(room, 'supervisor', removed)),
  );
  onDesk(ROUTES.handOver, (site, { id, job, fact }) =>
    toVisit(site, job, { kind: 'hand-over', by: 'supervisor', fact }, id),
  );
  return app;

  /** Answers both tokens of a site. */
  async function asReader(
    c: Context<Env>,
    give: (site: Site, role: SiteRole) => Promise<Response>,
  ): Promise<Response> {
    const pass = await passOf(c, store);
    const site = pass && (await sites.get(pass.job));
    if (!site) return refuse(c, 'bad-token', NO_SITE_LINK);
    if (pass.revoked) return refuse(c, pass.revoked, revokedText(pass.revoked, pass.role));
    return give(site, pass.role === 'desk' ? 'desk' : 'watcher');
  }

  /** The same, with the visit in `?job=`, if there is one. */
  function asReaderOf(
    c: Context<Env>,
    give: (site: Site, role: SiteRole, job: JobId | undefined) => Promise<Response>,
  ): Promise<Response> {
    return asReader(c, async (site, role) => {
      const job = c.req.query('job');
      if (job !== undefined && !hasVisit(site, job)) return refuse(c, 'bad-target', NO_VISIT, 404);
      return give(site, role, job);
    });
  }

  /** Heavy work for a site, in its turn. */
  async function inTurn(
    c: Context<Env>,
    turns: Turns,
    site: Site,
    work: () => Promise<Response>,
  ): Promise<Response> {
    const asker = { key: site.log, place: blockOf(addressOf(c)) };
    return turns.take(asker, work) ?? refuse(c, 'too-fast', TOO_MUCH_TO_READ);
  }

  /** Answers only the desk's token. The body goes into the log. */
  function onDesk<T extends z.ZodMiniType, R extends z.ZodMiniType>(
    route: ToDesk<R> & { readonly body: T },
    give: (site: Site, command: z.output<T>, c: Context<Env>) => Promise<Answer<z.output<R> & object>>,
  ): void {
    onDeskTaking(route, (c) => read(c, route.body), give);
  }

  /** The same, with the command in another part of the request. */
  function onDeskTaking<T, R extends z.ZodMiniType>(
    route: ToDesk<R>,
    take: (c: Context<Env>) => Promise<Answer<T>>,
    give: (site: Site, command: T, c: Context<Env>) => Promise<Answer<z.output<R> & object>>,
  ): void {
    answer(app, route, (c) =>
      asReader(c, async (site, role) => {
        if (role !== 'desk') return refuse(c, 'read-only', ONLY_READING);
        const now = performance.now();
        if (!writesOf.of(addressOf(c), now).take(now)) {
          return refuse(c, 'too-fast', TOO_MANY_CHANGES);
        }
        const command = await take(c);
        const bytes = Number(c.req.header('content-length') ?? limits.maxSiteBodyBytes);
        if (command.kind === 'ok' && !daily.logBytes.of(site.log, now).take(now, bytes)) {
          return refuse(c, 'too-fast', DAY_OF_LOG_FULL);
        }
        return reply(
          c,
          command.kind === 'ok' ? await give(site, command.value, c) : command,
          route.answer.status,
        );
      }),
    );
  }

  /** Gives an input to the job of a visit. */
  function toVisit(site: Site, job: JobId, input: Input, id: string): Promise<Answer<Logged>> {
    return inVisit(site, job, (room) => room.submit(input, id));
  }

  async function inVisit(
    site: Site,
    job: JobId | undefined,
    act: (room: Room) => Promise<Outcome>,
  ): Promise<Answer<Logged>> {
    const room = job !== undefined && hasVisit(site, job) ? await rooms.get(job) : undefined;
    return room ? logged(await act(room)) : { kind: 'refused', reason: 'bad-target', text: NO_VISIT };
  }
}

const hasVisit = ({ visits }: Site, job: string): boolean => visits.includes(job);
