import { describe, expect, it } from 'vitest';
import { LIMITS } from '../../server/guard/limits.ts';
import { HeavyWork, Turns } from '../../server/guard/turns.ts';
import { ReportThread } from '../../server/report/thread.ts';
import type { SpeechEngine } from '../../server/speech/service.ts';
import { TOO_MANY_REPORTS, TOO_MANY_TALKS, TOO_MUCH_TO_READ } from '../../src/phrases/limits.ts';
import { demo, logOf } from '../report/demo.ts';
import { Desk } from './desk.ts';
import { serve } from './house.ts';
import { House } from './in-memory.ts';
import { settle } from './manual-clock.ts';
import { get, openJob } from './phone.ts';

const MANY = { atOnce: 1, perKey: 100, perPlace: 100, all: 100 };

/** Pieces of work that end when they are told to, by name. */
function rig(limits: Partial<typeof MANY> = {}) {
  const turns = new Turns({ ...MANY, ...limits });
  const begun: string[] = [];
  const ends = new Map<string, { well(): void; ill(): void }>();
  const ask = (name: string, key: string, place = 'anywhere') => {
    const done = turns.take({ key, place }, () => {
      begun.push(name);
      return new Promise<void>((well, ill) => ends.set(name, { well, ill: () => ill(new Error(name)) }));
    });
    done?.catch(() => {});
    return done !== undefined;
  };
  const end = async (name: string, how: 'well' | 'ill' = 'well') => {
    ends.get(name)?.[how]();
    await settle();
  };
  return { begun, ask, end };
}

describe('heavy work', () => {
  it('is done for each job in turn, however much one of them asks for', async () => {
    const { begun, ask, end } = rig();
    for (const name of ['a1', 'a2', 'a3', 'a4']) ask(name, 'a');
    ask('b1', 'b');
    ask('c1', 'c');
    ask('b2', 'b');
    await settle();
    for (const name of ['a1', 'a2', 'b1', 'c1', 'a3', 'b2']) await end(name);
    expect(begun).toEqual(['a1', 'a2', 'b1', 'c1', 'a3', 'b2', 'a4']);
  });

  it('goes on after a piece that failed', async () => {
    const { begun, ask, end } = rig();
    ask('a1', 'a');
    ask('b1', 'b');
    await settle();
    await end('a1', 'ill');
    expect(begun).toEqual(['a1', 'b1']);
  });

  it.each([1, 2, 3])('is done %i at once', async (atOnce) => {
    const { begun, ask } = rig({ atOnce });
    for (const key of ['a', 'b', 'c', 'd']) ask(key, key);
    await settle();
    expect(begun).toHaveLength(atOnce);
  });

  it.each([
    ['of one job', { perKey: 2 }, ['a', 'a'], ['a'], ['b']],
    ['from one block of addresses', { perPlace: 2 }, ['a', 'b'], ['c'], []],
    ['in all', { all: 2 }, ['a', 'b'], ['c'], []],
  ])(
    'is refused beyond what may wait %s, and taken again when one is done',
    async (_, limits, taken, refused, others) => {
      const { ask, end } = rig(limits);
      expect(taken.map((key, i) => ask(`taken ${i}`, key))).toEqual([true, true]);
      expect(refused.map((key) => ask('refused', key))).toEqual([false]);
      for (const key of others) expect(ask('other', key, 'elsewhere')).toBe(true);
      await settle();
      await end('taken 0');
      expect(refused.map((key) => ask('again', key))).toEqual([true]);
    },
  );

  it('of one kind does not wait for another', async () => {
    const heavy = new HeavyWork(LIMITS);
    const asker = { key: 'job', place: 'here' };
    const never = () => new Promise<void>(() => {});
    for (const turns of [
      heavy.siteReports,
      heavy.spoken,
      heavy.talks,
      heavy.records,
      heavy.brought,
      heavy.boards,
    ])
      for (let i = 0; i < 1_000; i++) turns.take({ key: `${i}`, place: `${i}` }, never);
    expect(await heavy.jobReports.take(asker, async () => 'done')).toBe('done');
  });
});

const NONE = { atOnce: 1, perKey: 0, perPlace: 0, all: 0 };

describe('R73: what waits for one job', () => {
  const refusalTo = async (answer: Promise<Response>) => {
    const response = await answer;
    return [response.status, await response.json()];
  };

  it('R73: a report, a record and a board beyond the limit are refused in words', async () => {
    const { url } = await serve({
      limits: { jobReports: NONE, siteReports: NONE, records: NONE, boards: NONE },
    });
    const { token } = await openJob(url);
    const { desk } = await Desk.open(url);
    const reports = [429, { reason: 'too-fast', text: TOO_MANY_REPORTS }];
    const reading = [429, { reason: 'too-fast', text: TOO_MUCH_TO_READ }];
    expect(await refusalTo(get(url, '/api/report.pdf', token))).toEqual(reports);
    expect(await refusalTo(desk.post('/api/site/report', {}))).toEqual(reports);
    expect(await refusalTo(get(url, '/api/record', token))).toEqual(reading);
    expect(await refusalTo(desk.get('/api/site'))).toEqual(reading);
  });

  /** A speech engine that hears when it is told to. */
  const slow = () => {
    const hearing: (() => void)[] = [];
    const engine: SpeechEngine = {
      name: 'slow',
      transcribe: () =>
        new Promise((resolve) => {
          hearing.push(() =>
            resolve({
              text: 'forty two',
              confidence: 0.95,
              alternatives: [{ text: 'forty two', confidence: 0.95 }],
              ms: 1,
            }),
          );
        }),
      close: async () => {},
    };
    return { engine, hearing };
  };

  it('R73: sentences of one job do not keep those of another from being heard', async () => {
    const { engine, hearing } = slow();
    const house = new House({ speech: engine });
    const talk = async (line: Awaited<ReturnType<House['phone']>>, id: string) => {
      await line.send({ t: 'talk', id });
      await line.sound(100);
      await line.send({ t: 'talk-end', id });
    };
    const many = await house.phone((await house.open()).token);
    const one = await house.phone((await house.open()).token);
    for (let i = 0; i < LIMITS.talks.perKey; i++) await talk(many, `many-000${i}`);
    expect(many.all('refused')).toEqual([]);
    await talk(many, 'one-too-many');
    expect(many.all('refused')).toEqual([
      { t: 'refused', id: 'one-too-many', reason: 'too-fast', text: TOO_MANY_TALKS },
    ]);
    await talk(one, 'one-0001');
    for (let i = 0; i < 3; i++) {
      hearing[i]?.();
      await settle();
    }
    expect(one.all('ack').map(({ id }) => id)).toEqual(['one-0001']);
    expect(many.all('ack').map(({ id }) => id)).toEqual(['many-0000', 'many-0001']);
  });
});

describe('the thread that makes reports', { timeout: 120_000 }, () => {
  const [visit] = demo.visits;
  if (!visit) throw new Error('the demo has no visit');
  const job = logOf(visit.entries);
  const ways = { readLog: async () => job, pictureOf: async () => undefined };
  const wanted = { job, zone: 'UTC', at: Date.UTC(2026, 2, 6, 8) };

  it('fails alone when it takes too long or a report cannot be made, and makes the next one', async () => {
    const thread = new ReportThread();
    const make = async () => (await thread.make(wanted, 60_000, ways)).subarray(0, 5).toString();
    await expect(thread.make({ ...wanted, zone: 'Nowhere/Land' }, 60_000, ways)).rejects.toThrow(
      /time zone/i,
    );
    expect(await make()).toBe('%PDF-');
    await expect(thread.make(wanted, 1, ways)).rejects.toThrow('more than 0.001 s');
    expect(await make()).toBe('%PDF-');
    await thread.close();
    await expect(thread.make(wanted, 60_000, ways)).rejects.toThrow('stopping');
  });

  it('says why a log of a site could not be read', async () => {
    const thread = new ReportThread();
    const site = logOf(demo.site);
    const readLog = async () => {
      throw new Error('the disk is gone');
    };
    const making = thread.make({ site, options: { zone: 'UTC', at: 0 } }, 60_000, { ...ways, readLog });
    await expect(making).rejects.toThrow('the disk is gone');
    await thread.close();
  });
});
