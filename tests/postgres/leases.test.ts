import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { openPostgres } from '../../server/postgres/open.ts';
import type { PostgresStore } from '../../server/postgres/postgres.ts';
import { HeldElsewhere } from '../../server/store/leases.ts';
import { StoreFailure } from '../../server/store/store.ts';
import { newSummaryKey } from '../../server/store/summary-key.ts';
import { emptyHead } from '../../src/log/chain.ts';
import { sealRemarks } from '../store/contract.ts';
import { Cluster, POSTGRES } from './cluster.ts';

const JOB = 'job-one-0001';

describe.runIf(POSTGRES)('the lease of a job', () => {
  let cluster: Cluster;
  beforeAll(async () => {
    cluster = await Cluster.start();
  }, 60_000);
  afterAll(() => cluster?.remove(), 30_000);

  /** Processes of one server, each with its own connections, and a job that is open. */
  const processes = async <N extends string>(...urls: N[]) => {
    const place = cluster.newPlace();
    const stores = {} as Record<N, PostgresStore>;
    for (const url of urls) {
      const store = await openPostgres(place, newSummaryKey());
      onTestFinished(async () => {
        await store.leases.close();
        await store.close();
      });
      await store.leases.begin(url);
      stores[url] = store;
    }
    const [first] = Object.values<PostgresStore>(stores);
    await first?.append(JOB, sealRemarks(emptyHead(JOB), ['opened']));
    return { ...stores, schema: place.schema };
  };
  const more = async (store: PostgresStore, text: string) =>
    store.append(JOB, sealRemarks(await store.head(JOB), [text]));
  /** As if a process had not been heard of for longer than its lease. */
  const silence = (schema: string, url: string) =>
    cluster.sql(`UPDATE processes SET alive_until = now() - interval '1 s' WHERE url = '${url}'`, schema);

  it('is with one process, and the others are told where', async () => {
    const { a, b } = await processes('a', 'b');
    await a.leases.take(JOB);
    await a.leases.take(JOB);
    await expect(b.leases.take(JOB)).rejects.toEqual(new HeldElsewhere(JOB, 'a'));
    expect(await b.leases.others()).toEqual(['a']);
    expect(await more(a, 'of a')).toEqual({ kind: 'stored' });
    await expect(more(b, 'of b')).rejects.toThrow(/another process/);
    expect((await a.head(JOB)).count).toBe(2);
  });

  it('is with one of many that ask at the same time, also of a log that nobody has begun', async () => {
    const { schema: _, ...stores } = await processes('a', 'b', 'c');
    for (const job of [JOB, 'job-never-begun', 'job-never-begun-2']) {
      const outcomes = await Promise.all(
        Object.values(stores).map((store) =>
          store.leases.take(job).then(
            () => 'here',
            (error) => (error instanceof HeldElsewhere ? 'elsewhere' : error),
          ),
        ),
      );
      expect(outcomes.sort()).toEqual(['elsewhere', 'elsewhere', 'here']);
    }
  });

  it('that is given up is anybody’s, and so are all of a process that ends', async () => {
    const { a, b } = await processes('a', 'b');
    await a.leases.take(JOB);
    await a.leases.giveUp(JOB);
    await b.leases.take(JOB);
    await b.leases.close();
    await a.leases.take(JOB);
    expect(await more(a, 'of a')).toEqual({ kind: 'stored' });
  });

  // The transaction has one time, so the threshold itself can be looked at.
  it.each([
    ["+ interval '1 microsecond'", 'url'],
    ['', 'fence'],
    ["- interval '1 microsecond'", 'fence'],
  ])('of a process that is alive until now %s: the other gets its %s', async (until, key) => {
    const { a, schema } = await processes('a', 'b');
    await a.leases.take(JOB);
    const rows = await cluster.sql(
      `BEGIN; UPDATE processes SET alive_until = now() ${until} WHERE url = 'a';
       SELECT take_lease('${JOB}', number) AS taken FROM processes WHERE url = 'b'`,
      schema,
    );
    expect(Object.keys(rows[0]?.taken as object)).toEqual([key]);
  });

  it.each([
    ['just before its lease is over', false, false, 'stored'],
    ['after it is over, while nobody has asked for the job', true, false, 'stored'],
    ['after another has taken the job', true, true, 'refused'],
  ])('a process that was silent appends %s: %s %s: it is %s', async (_, isOver, isTaken, became) => {
    const { a, b, schema } = await processes('a', 'b');
    await a.leases.take(JOB);
    const lost: string[] = [];
    a.leases.onLost = (job) => lost.push(job);
    if (isOver) await silence(schema, 'a');
    if (isTaken) await b.leases.take(JOB);
    else if (!isOver) await expect(b.leases.take(JOB)).rejects.toThrow(HeldElsewhere);
    const kind = await more(a, 'late').then(
      ({ kind }) => kind,
      (error) => (error instanceof StoreFailure ? 'refused' : error),
    );
    expect(kind).toBe(became);
    expect(lost).toEqual(isTaken ? [JOB] : []);
    expect((await a.head(JOB)).count).toBe(became === 'stored' ? 2 : 1);
    if (isTaken) expect(await more(b, 'of b')).toEqual({ kind: 'stored' });
    expect(await b.audit(JOB)).toBeUndefined();
  });

  it('an append that waits while another takes the job over comes before it or not at all', async () => {
    const { a, b, schema } = await processes('a', 'b');
    await a.leases.take(JOB);
    await silence(schema, 'a');
    const [late, taken] = await Promise.allSettled([more(a, 'late'), b.leases.take(JOB)]);
    expect(taken.status).toBe('fulfilled');
    expect((await b.head(JOB)).count).toBe(late.status === 'fulfilled' ? 2 : 1);
    await expect(more(a, 'later')).rejects.toThrow(StoreFailure);
  });

  it('with the fence of before, nothing is stored even when nobody has the job any more', async () => {
    const { a, b, schema } = await processes('a', 'b');
    await a.leases.take(JOB);
    await silence(schema, 'a');
    await b.leases.take(JOB);
    await b.leases.giveUp(JOB);
    await expect(more(a, 'late')).rejects.toThrow(/another process/);
    expect((await a.head(JOB)).count).toBe(1);
  });

  it('two processes that say they are at the same address are told so', async () => {
    const { a } = await processes('a');
    await a.leases.take(JOB);
    const twin = await openPostgres({ ...cluster.newPlace(), schema: a.database.schema }, newSummaryKey());
    onTestFinished(async () => {
      await twin.leases.close();
      await twin.close();
    });
    await twin.leases.begin('a');
    await expect(twin.leases.take(JOB)).rejects.toThrow(/give each its own address with --peer/);
  });

  it('is kept by a process that answers, for longer than it lasts', async () => {
    const { a, b } = await processes('a', 'b');
    await a.leases.take(JOB);
    await setTimeout(5_500);
    await expect(b.leases.take(JOB)).rejects.toThrow(HeldElsewhere);
  });
});
