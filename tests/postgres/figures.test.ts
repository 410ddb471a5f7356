import { pino } from 'pino';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { layDown } from '../../server/demo/site-fixture.ts';
import { LIMITS } from '../../server/guard/limits.ts';
import { digest } from '../../server/guard/secrets.ts';
import { Rooms } from '../../server/jobs/rooms.ts';
import { openPostgres } from '../../server/postgres/open.ts';
import type { PostgresStore } from '../../server/postgres/postgres.ts';
import { systemClock } from '../../server/process/clock.ts';
import { Summaries } from '../../server/record/summaries.ts';
import { Board } from '../../server/site/board.ts';
import { FigureKeeper } from '../../server/site/figure-keeper.ts';
import { Sites } from '../../server/site/sites.ts';
import { newSummaryKey } from '../../server/store/summary-key.ts';
import { Telemetry } from '../../server/telemetry/telemetry.ts';
import { emptyHead, headAfter } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import { Figures, SOON_MS } from '../../src/protocol/figures.ts';
import type { PairFigures } from '../../src/record/pair-figures.ts';
import { createRng } from '../../src/simulator/rng.ts';
import { demo } from '../server/played-site.ts';
import { sealRemarks } from '../store/contract.ts';
import { Cluster, POSTGRES } from './cluster.ts';
import { pairOf } from './pair-of.ts';

const NOW = Date.UTC(2026, 5, 1);
const DAY = 24 * 3600_000;
const SITE = 'site-one-0001';

describe.runIf(POSTGRES)('figures over all sites', () => {
  let cluster: Cluster;
  beforeAll(async () => {
    cluster = await Cluster.start();
  }, 60_000);
  afterAll(() => cluster?.remove());

  async function open(place = cluster.newPlace()) {
    const store = await openPostgres(place, newSummaryKey());
    onTestFinished(() => store.close());
    return store;
  }

  /** What counts them in a server. */
  function counting(store: PostgresStore) {
    const log = pino({ enabled: false });
    const telemetry = new Telemetry(log);
    const deps = { store, clock: systemClock, log, telemetry, rules: undefined, graceMs: 0 };
    const rooms = new Rooms({ ...deps, onStored: () => {} } as never, LIMITS, new Uint8Array(32) as never);
    const summaries = new Summaries(store, log, telemetry);
    const sites = new Sites({ store, leases: store.leases, clock: systemClock, telemetry }, rooms, summaries);
    const board = new Board(summaries, rooms);
    return { board, sites, keeper: new FigureKeeper({ figures: store.figures, sites, board, log }) };
  }

  /** A log with a desk, so that it can be found, and this many entries. */
  async function siteLog(store: PostgresStore, count = 1) {
    const entries = sealRemarks(
      emptyHead(SITE),
      Array.from({ length: count }, (_, i) => `remark ${i}`),
    );
    await store.append(SITE, entries, { issue: [{ token: 'a'.repeat(64), role: 'desk' }] });
    return headAfter(entries.at(-1) as Entry);
  }

  it('are counted from every log of a played site, and agree with its logs and its board', async () => {
    const store = await open();
    await layDown(store, demo);
    const { keeper, board, sites } = counting(store);
    await keeper.round();
    const counted = Figures.parse(await store.figures.over(NOW));
    const site = await sites.get(demo.site[0]?.job ?? '');
    if (!site) throw new Error('the site is gone');
    const view = await board.view(site, 'watcher');
    const pairs = view.pairs.filter(({ dropped }) => !dropped);
    expect(counted).toMatchObject({ sites: 1, pairs: pairs.length, behind: 0, damaged: 0 });
    // What somebody wrote down as the next date, in the latest log of each pair.
    const dates = pairs.flatMap(({ visits }) => {
      const { entries } = demo.visits.find(({ entries: [first] }) => first?.job === visits.at(-1)?.job) ?? {};
      const noted = (entries ?? []).flatMap(({ fact }) =>
        fact.type === 'next-due' ? [Date.parse(`${fact.on}T00:00:00Z`)] : [],
      );
      return noted.slice(-1);
    });
    const { due } = counted;
    expect([due.over + due.soon + due.later, due.none]).toEqual([dates.length, pairs.length - dates.length]);
    expect(due.next.map((each) => each.due)).toEqual([...dates].sort((a, b) => a - b).slice(0, 20));
    // A pair is in the figure of a kind once, whatever number of findings of that kind it has.
    const { perPair, site: across } = await board.findings(site);
    const last = new Map(pairs.map(({ plan, visits }) => [plan.id, visits.at(-1)?.job]));
    const kinds = [
      ...perPair
        .filter(({ pair, job }) => last.get(pair) === job)
        .flatMap(({ pair, findings }) => findings.map(({ id }) => `${id} ${pair}`)),
      ...across.map(({ id, pair }) => `${id} ${pair}`),
    ];
    const sum = counted.findings.reduce((all, each) => all + each.pairs, 0);
    expect(sum).toBe(new Set(kinds).size);
    expect(sum).toBeGreaterThan(0);
    const drifts = across.filter(({ id }) => ['weaker-since', 'signal-limit', 'signal-falling'].includes(id));
    expect(counted.drifting.pairs).toBe(new Set(drifts.map(({ pair }) => pair)).size);
    expect(counted.ladder.pairs).toBeGreaterThan(0);
  });

  it('are counted again only where a log has changed, and not while somebody works on it', async () => {
    const store = await open();
    const head = await siteLog(store);
    expect(await store.figures.claim(10)).toEqual([SITE]);
    // Whoever claimed it works on it.
    expect(await store.figures.claim(10)).toEqual([]);
    const job = 'job-one-0001';
    const [entry] = sealRemarks(emptyHead(job), ['one']);
    await store.append(job, [entry as Entry]);
    const of = headAfter(entry as Entry);
    await store.figures.keep({ head, name: 'Hall A', pairs: [pairOf('A-1', of)] });
    expect(await store.figures.claim(10)).toEqual([]);
    expect(await store.figures.over(NOW)).toMatchObject({ pairs: 1, behind: 0 });
    await store.leases.begin('http://127.0.0.1:1');
    await store.leases.take(job);
    await store.append(job, sealRemarks(of, ['two']));
    expect(await store.figures.claim(10)).toEqual([]);
    expect(await store.figures.over(NOW)).toMatchObject({ pairs: 1, behind: 0 });
    await store.leases.giveUp(job);
    expect(await store.figures.over(NOW)).toMatchObject({ pairs: 1, behind: 1 });
    expect(await store.figures.claim(10)).toEqual([SITE]);
    await store.leases.close();
  });

  it('stay to be counted again where a log has grown while they were counted', async () => {
    const store = await open();
    const head = await siteLog(store);
    const job = 'job-one-0001';
    const [first] = sealRemarks(emptyHead(job), ['one']);
    await store.append(job, [first as Entry]);
    const counted = headAfter(first as Entry);
    await store.figures.keep({ head, name: 'Hall A', pairs: [pairOf('A-1', counted)] });
    expect(await store.figures.claim(10)).toEqual([]);
    for (const grows of [job, SITE]) {
      await store.append(grows, sealRemarks(await store.head(grows), ['more']));
      // Whoever had begun before keeps what they have read.
      await store.figures.keep({ head, name: 'Hall A', pairs: [pairOf('A-1', counted)] });
      expect(await store.figures.claim(10), grows).toEqual([SITE]);
      const now = await store.head(grows);
      const pair = pairOf('A-1', grows === job ? now : await store.head(job));
      await store.figures.keep({ head: grows === SITE ? now : head, name: 'Hall A', pairs: [pair] });
      expect(await store.figures.claim(10), grows).toEqual([]);
    }
  });

  it('are the same, added up by sites, as counted pair by pair', async () => {
    const store = await open();
    const random = createRng(7);
    const all: PairFigures[] = [];
    for (let n = 0; n < 12; n++) {
      const site = `site-number-${n}`;
      const [entry] = sealRemarks(emptyHead(site), ['one']);
      await store.append(site, [entry as Entry], { issue: [{ token: digest(site), role: 'desk' }] });
      const pairs = Array.from({ length: 1 + Math.floor(random() * 9) }, (_, i) => {
        const damaged = random() < 0.1;
        const maybe = (value: number) => (damaged || random() < 0.3 ? undefined : value);
        return pairOf(`P${i}`, undefined, {
          ...{ damaged, drifting: !damaged && random() < 0.3, lost: maybe(random() * 3) },
          ...{
            ladder: maybe(Math.floor(random() * 9) * 60_000),
            due: maybe(NOW + Math.floor((random() - 0.5) * 80) * DAY),
          },
          findings: damaged || random() < 0.4 ? [] : [{ id: 'corrections', severity: 'note' }],
        });
      });
      // Twice: what is kept takes the place of what was there.
      await store.figures.keep({ head: headAfter(entry as Entry), name: site, pairs: pairs.slice(0, 1) });
      await store.figures.keep({ head: headAfter(entry as Entry), name: site, pairs });
      all.push(...pairs);
    }
    const many = (is: (pair: PairFigures) => boolean) => all.filter(is).length;
    const times = all.flatMap(({ ladder }) => ladder ?? []).sort((a, b) => a - b);
    const dueIn = (from: number, to: number) =>
      many(({ due }) => due !== undefined && due >= from && due < to);
    expect(await store.figures.over(NOW)).toMatchObject({
      ...{ sites: 12, pairs: all.length, damaged: many(({ damaged }) => damaged) },
      drifting: { pairs: many(({ drifting }) => drifting), compared: many(({ lost }) => lost !== undefined) },
      // PostgreSQL, percentile_disc: the first value whose place reaches the share.
      ladder: {
        pairs: times.length,
        half: times[Math.ceil(0.5 * times.length) - 1],
        most: times[Math.ceil(0.9 * times.length) - 1],
      },
      findings: [{ id: 'corrections', severity: 'note', pairs: many(({ findings }) => findings.length > 0) }],
      due: {
        over: dueIn(-Infinity, NOW),
        soon: dueIn(NOW, NOW + SOON_MS),
        later: dueIn(NOW + SOON_MS, Infinity),
        none: many(({ due, damaged }) => due === undefined && !damaged),
      },
    });
  });

  it('of an older head do not take the place of newer ones', async () => {
    const store = await open();
    const newer = await siteLog(store, 3);
    const [older] = await store.read(SITE, 0, 1);
    await store.figures.keep({ head: newer, name: 'Hall A', pairs: [pairOf('A-1', undefined)] });
    await store.figures.keep({ head: headAfter(older as Entry), name: 'Hall A', pairs: [] });
    expect((await store.figures.over(NOW)).pairs).toBe(1);
    await store.figures.keep({ head: newer, name: 'Hall B', pairs: [] });
    expect((await store.figures.over(NOW)).pairs).toBe(0);
  });

  it('name what is due and what has lost most first, and count at the thresholds', async () => {
    const store = await open();
    const head = await siteLog(store);
    const due = [NOW - 1, NOW, NOW + SOON_MS - 1, NOW + SOON_MS, undefined];
    const lost = [0.5, undefined, 3, -0.2, 1];
    const ladder = [60_000, 120_000, 180_000, undefined, 240_000];
    await store.figures.keep({
      ...{ head, name: 'Hall A' },
      pairs: [
        ...due.map((each, i) =>
          pairOf(`A-${i}`, undefined, {
            ...{ due: each, lost: lost[i], ladder: ladder[i], drifting: i !== 3 },
            findings: [{ id: i < 2 ? 'override' : 'corrections', severity: i < 2 ? 'serious' : 'note' }],
          }),
        ),
        pairOf('A-5', undefined, { damaged: true, findings: [] }),
      ],
    });
    const counted = Figures.parse(await store.figures.over(NOW));
    const named = { site: 'Hall A', log: SITE };
    expect(counted).toEqual({
      ...{ sites: 1, pairs: 6, behind: 0, damaged: 1 },
      drifting: {
        ...{ pairs: 4, compared: 4 },
        most: [
          { ...named, pair: 'A-2', lost: 3 },
          { ...named, pair: 'A-4', lost: 1 },
          { ...named, pair: 'A-0', lost: 0.5 },
          { ...named, pair: 'A-1' },
        ],
      },
      // Of four times the half is the second, nine tenths the fourth (PostgreSQL, percentile_disc: the first value that reaches it).
      ladder: { pairs: 4, half: 120_000, most: 240_000 },
      findings: [
        { id: 'override', severity: 'serious', pairs: 2 },
        { id: 'corrections', severity: 'note', pairs: 3 },
      ],
      due: {
        ...{ over: 1, soon: 2, later: 1, none: 1 },
        next: [0, 1, 2, 3].map((i) => ({ ...named, pair: `A-${i}`, due: due[i] })),
      },
    });
    expect(DAY * 30).toBe(SOON_MS);
  });
});
