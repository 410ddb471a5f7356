import { describe, expect, it, vi } from 'vitest';
import { layDown, type PlayedSite } from '../../server/demo/site-fixture.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { StoreFailure } from '../../server/store/store.ts';
import { findFault } from '../../src/log/chain.ts';
import { fromJsonLines } from '../../src/log/json-lines.ts';
import { MAX_PAIRS, type PairPlan } from '../../src/model/pair-plan.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { HttpRefusal, JobOpened, JobRecord } from '../../src/protocol/jobs.ts';
import { Logged, SiteFindings, SiteOpened, SiteView } from '../../src/protocol/site.ts';
import { PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { DEMO_PAIRS, type DemoVisit } from '../../src/simulator/demo-site.ts';
import { PLANTS } from '../../src/simulator/plants.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { Desk } from './desk.ts';
import { serve } from './house.ts';
import { ManualClock } from './manual-clock.ts';
import { get, join, newId, openJob, Phone, post } from './phone.ts';
import { demo, unsigned, visitTo } from './played-site.ts';

const [meter] = NEUTRAL_METERS;
const plan = (id: string): PairPlan => ({ id, name: `Pair ${id}`, pathLength: 40, ...(meter && { meter }) });

const refusal = async (response: Response) => ({
  status: response.status,
  ...HttpRefusal.parse(await response.json()),
});
const seqOf = async (response: Response): Promise<number> => {
  expect(response.status).toBe(200);
  return Logged.parse(await response.json()).seq;
};

/** The played site on a server, or what a test made of it. */
async function served(played: PlayedSite = demo, store = new MemoryStore()) {
  const { desk, watch } = await layDown(store, played);
  const { url } = await serve({ store });
  return { url, store, desk: new Desk(url, desk), reader: new Desk(url, watch) };
}

const drawn = {
  kind: 'drawn',
  strokes: [
    [
      [10, 20],
      [30, 40],
    ],
  ],
} as const;
const signer = { name: 'S. Example', role: 'Supervisor', signature: drawn };

describe('a site over HTTP', () => {
  it('R34: has a token for its desk, and one for readers, who cannot change it', async () => {
    const { url } = await serve();
    const { desk, reader } = await Desk.open(url);
    expect(await desk.board()).toMatchObject({ site: 'Hollin Bridge sorting hall', role: 'desk', pairs: [] });
    expect((await reader.board()).role).toBe('watcher');
    for (const path of ['pairs', 'drop', 'jobs', 'sign', 'close-issue', 'hand-over', 'steps']) {
      expect(await refusal(await reader.post(`/api/site/${path}`, {}))).toMatchObject({
        status: 403,
        reason: 'read-only',
      });
    }
  });

  it('R34: a job’s token opens no site, and a site’s token no job', async () => {
    const { url } = await serve();
    const { desk, watch } = await Desk.open(url);
    const job = await openJob(url);
    for (const token of [job.token, job.watch, 'A'.repeat(22), undefined]) {
      expect(await refusal(await get(url, '/api/site', token))).toMatchObject({
        status: 401,
        reason: 'bad-token',
      });
    }
    for (const token of [desk.token, watch]) {
      const phone = new Phone(url);
      await phone.opened();
      phone.send({ t: 'hello', v: PROTOCOL_VERSION, token, after: -1 });
      expect(await phone.next('refused')).toMatchObject({ reason: 'bad-token' });
    }
  });

  it('R35: takes a table of 500 pairs in one body, all or none, and says which one is wrong and why', async () => {
    const { url } = await serve();
    const { desk } = await Desk.open(url);
    const pairs = Array.from({ length: 500 }, (_, i) => plan(`P${i}`));
    const oneBad = await refusal(
      await desk.post('/api/site/pairs', { pairs: pairs.with(321, { ...plan('P321'), pathLength: -1 }) }),
    );
    expect(oneBad).toMatchObject({ status: 400, reason: 'bad-message' });
    expect(oneBad.text).toContain('pairs.321.pathLength');
    const twice = await refusal(await desk.post('/api/site/pairs', { pairs: [plan('A'), plan('A')] }));
    expect(twice.text).toContain('Two of these pairs have the id');
    expect((await desk.board()).pairs).toEqual([]);
    await seqOf(await desk.post('/api/site/pairs', { pairs }));
    expect((await desk.board()).pairs.map((row) => row.plan)).toEqual(pairs);
  });

  it('R35: takes as many pairs as a site may have, with their profiles and the longest texts', async () => {
    const { url } = await serve();
    const { desk } = await Desk.open(url);
    const meter = { ...(NEUTRAL_METERS[3] as MeterProfile), name: 'ß'.repeat(60), unit: 'ß'.repeat(20) };
    const adjusters = { ...NEUTRAL_ADJUSTERS, name: 'ß'.repeat(60), degreesPerTurn: 0.7 };
    const figures = { pathLength: 62.5, emitterHeight: 9.25, receiverHeight: 9.25, ceilingHeight: 9.75 };
    const delays = { alarmDelay: 10, faultDelay: 10, rangeMin: 5, rangeMax: 100, beamAngle: 0.75 };
    const texts = { name: '🛠'.repeat(40), zone: '🛠'.repeat(30), meter, adjusters };
    const pairs = Array.from({ length: MAX_PAIRS }, (_, i) => {
      const id = `${i}`.padStart(32, 'P');
      return {
        id,
        ...texts,
        ...figures,
        ...delays,
        filters: Array.from({ length: 12 }, (_, n) => 11.25 + n),
      };
    });
    await seqOf(await desk.post('/api/site/pairs', { pairs }));
    const oneMore = await refusal(await desk.post('/api/site/pairs', { pairs: [plan('Q')] }));
    expect(oneMore).toMatchObject({ reason: 'bad-target', text: expect.stringContaining('at most 2000') });
  });

  it('R35: ids that differ in case only are refused by name, among each other and from those of the site', async () => {
    const { url } = await serve();
    const { desk } = await Desk.open(url);
    const both = await refusal(await desk.post('/api/site/pairs', { pairs: [plan('b2'), plan('B2')] }));
    expect(both.text).toContain('The ids b2 and B2 differ only in capital letters');
    await seqOf(await desk.post('/api/site/pairs', { pairs: [plan('B2'), plan('C3')] }));
    await seqOf(await desk.post('/api/site/drop', { pair: 'C3', reason: 'Wall moved' }));
    for (const [id, known] of [
      ['b2', 'B2'],
      ['c3', 'C3'],
    ] as const) {
      const answer = await refusal(await desk.post('/api/site/pairs', { pairs: [plan('D4'), plan(id)] }));
      expect(answer.text).toContain(`The ids ${known} and ${id} differ only in capital letters`);
    }
    await seqOf(await desk.post('/api/site/pairs', { pairs: [plan('B2')] }));
    expect((await desk.board()).pairs.map((row) => row.plan.id)).toEqual(['B2', 'C3']);
  });

  it.each([
    [
      '/api/site/pairs',
      { pairs: [{ ...plan('A'), pathLenght: 62 }] },
      'pairs.0.pathLenght: there is no such field.',
    ],
    ['/api/site/pairs', { pairs: [plan('A')], comment: 'x' }, 'comment: there is no such field.'],
    [
      '/api/site/pairs',
      { pairs: [{ ...plan('A'), meter: { ...NEUTRAL_METERS[0], offset: 1 } }] },
      'pairs.0.meter.offset: there is no such field.',
    ],
    [
      '/api/site/pairs',
      { pairs: [{ ...plan('A'), adjusters: { ...NEUTRAL_ADJUSTERS, constructor: 1 } }] },
      'pairs.0.adjusters.constructor: there is no such field.',
    ],
    [
      '/api/site/pairs',
      { pairs: [{ ...plan('A'), alarmThreshold: { unit: 'dB', value: 2, tolerance: 1 } }] },
      'pairs.0.alarmThreshold.tolerance: there is no such field.',
    ],
    ['/api/site/drop', { pair: 'A', reason: 'Wall moved', by: 'me' }, 'by: there is no such field.'],
    [
      '/api/site/pairs',
      { pairs: [{ ...plan('A'), name: 'x\u202ey' }] },
      'pairs.0.name: it holds a character that nobody sees (U+202E)',
    ],
    [
      '/api/site/pairs',
      { pairs: [{ ...plan('A'), zone: '\u00007' }] },
      'pairs.0.zone: it holds a character that nobody sees (U+0000)',
    ],
    [
      '/api/site/pairs',
      { pairs: [{ ...plan('A'), zone: '7\n8' }] },
      'pairs.0.zone: it holds a character that nobody sees (U+000A)',
    ],
    [
      '/api/site/pairs',
      { pairs: [{ ...plan('A'), meter: { ...NEUTRAL_METERS[0], unit: '\u200fdB' } }] },
      'pairs.0.meter.unit: it holds a character that nobody sees (U+200F)',
    ],
    [
      '/api/site/drop',
      { pair: 'A', reason: 'Wall\u2066 moved' },
      'reason: it holds a character that nobody sees (U+2066)',
    ],
    [
      '/api/site/pairs',
      { pairs: [{ ...plan('A'), rangeMin: 100.1, rangeMax: 100 }] },
      'pairs.0.rangeMax: rangeMin must not be above rangeMax.',
    ],
    [
      '/api/site/pairs',
      { pairs: [{ ...plan('A'), receiverHeight: 10.1, ceilingHeight: 10 }] },
      'pairs.0.ceilingHeight: receiverHeight must not be above ceilingHeight.',
    ],
  ])('R32: %s with %j is refused by name, and nothing is taken', async (path, body, text) => {
    const { url } = await serve();
    const { desk } = await Desk.open(url);
    await seqOf(await desk.post('/api/site/pairs', { pairs: [plan('A')] }));
    const before = (await desk.board()).head.count;
    const answer = await refusal(await desk.post(path, body));
    expect(answer).toMatchObject({ status: 400, reason: 'bad-message', text: expect.stringContaining(text) });
    expect((await desk.board()).head.count).toBe(before);
  });

  it('R32: guidance whose limits are swapped, or with a field that nobody knows, opens no site', async () => {
    const { url } = await serve();
    const code = { name: 'House rule', source: 'none', wallLeast: 0.5, wallMost: 0.5 };
    expect((await post(url, '/api/sites', { site: 'Hall', code })).status).toBe(201);
    for (const [wrong, text] of [
      [{ ...code, wallLeast: 0.6 }, 'code.wallMost: wallLeast must not be above wallMost.'],
      [{ ...code, wallFar: 1 }, 'code.wallFar: there is no such field.'],
      [{ ...code, name: 'a\u202eb' }, 'code.name: it holds a character'],
    ] as const) {
      const answer = await refusal(await post(url, '/api/sites', { site: 'Hall', code: wrong }));
      expect(answer.text).toContain(text);
    }
  });

  it('R32: a reason may have several lines', async () => {
    const { url } = await serve();
    const { desk } = await Desk.open(url);
    await seqOf(await desk.post('/api/site/pairs', { pairs: [plan('A')] }));
    await seqOf(await desk.post('/api/site/drop', { pair: 'A', reason: 'Wall moved.\n\tNew pair: B.' }));
  });

  it('R35: a command with the same id is logged once and gets the first answer, even among others at the same time', async () => {
    const { url } = await serve();
    const { desk } = await Desk.open(url);
    const id = newId();
    const commands = [0, 1, 2, 3, 4].map((i) =>
      desk.post(
        '/api/site/pairs',
        i % 2 ? { pairs: [plan(`Q${i}`)] } : { id, pairs: [plan('A'), plan('B')] },
      ),
    );
    const seqs = await Promise.all((await Promise.all(commands)).map(seqOf));
    expect(new Set([seqs[0], seqs[2], seqs[4]]).size).toBe(1);
    const { head, pairs } = await desk.board();
    expect(pairs.map((row) => row.plan.id).sort()).toEqual(['A', 'B', 'Q1', 'Q3']);
    const log = JobRecord.parse(await (await desk.get('/api/record')).json());
    expect(log.head).toEqual(head);
    expect(head.count).toBe(5);
    expect(findFault(log.entries, log.head)).toBeUndefined();
  });

  it('R35: a dropped pair stays on the board, marked as dropped; a pair that does not exist is named', async () => {
    const { url } = await serve();
    const { desk } = await Desk.open(url);
    await seqOf(await desk.post('/api/site/pairs', { pairs: [plan('A')] }));
    await seqOf(await desk.post('/api/site/drop', { pair: 'A', reason: 'Wall was built' }));
    expect((await desk.board()).pairs[0]?.dropped?.reason).toBe('Wall was built');
    await seqOf(await desk.post('/api/site/pairs', { pairs: [plan('B')] }));
    for (const pair of ['A', 'Z']) {
      const answer = await refusal(await desk.post('/api/site/drop', { pair, reason: 'No longer there' }));
      expect(answer).toMatchObject({ status: 400, reason: 'bad-target' });
      expect(answer.text).toContain(`no pair ${pair}`);
    }
    await seqOf(await desk.post('/api/site/pairs', { pairs: [plan('A')] }));
    expect((await desk.board()).pairs.map(({ plan: { id }, dropped }) => [id, dropped])).toEqual([
      ['A', undefined],
      ['B', undefined],
    ]);
  });

  it('R35: the desk chooses the units; the board and later visits have them, earlier visits keep theirs', async () => {
    const { url } = await serve();
    const { desk, reader } = await Desk.open(url);
    await seqOf(await desk.post('/api/site/pairs', { pairs: [plan('B1')] }));
    const setupOf = async () => {
      const { token } = JobOpened.parse(await (await desk.post('/api/site/jobs', { pair: 'B1' })).json());
      const { entries } = JobRecord.parse(await (await get(url, '/api/record', token)).json());
      const fact = entries[0]?.fact;
      return fact?.type === 'opened' ? fact.setup : undefined;
    };
    expect((await desk.board()).units).toBeUndefined();
    expect((await setupOf())?.units).toBeUndefined();
    const units = { length: 'ft', loss: 'percent/ft' };
    expect((await refusal(await reader.post('/api/site/units', { units }))).reason).toBe('read-only');
    expect((await refusal(await desk.post('/api/site/units', { units: { length: 'yd' } }))).reason).toBe(
      'bad-message',
    );
    await seqOf(await desk.post('/api/site/units', { units }));
    expect((await reader.board()).units).toEqual(units);
    expect((await setupOf())?.units).toEqual(units);
    const opened = SiteOpened.parse(await (await post(url, '/api/sites', { site: 'Hall', units })).json());
    expect((await new Desk(url, opened.watch).board()).units).toEqual(units);
  });

  it('R36: a visit is a commissioning of the pair as planned, and the site’s log names it', async () => {
    const { url } = await serve();
    const { desk } = await Desk.open(url);
    await seqOf(await desk.post('/api/site/pairs', { pairs: [plan('A')] }));
    const answer = await desk.post('/api/site/jobs', { pair: 'A', device: 'panel phone' });
    expect(answer.status).toBe(201);
    const opened = JobOpened.parse(await answer.json());
    const joined = await join(url, opened.invite.code);
    const panel = await Phone.at(url, opened.token);
    await Phone.at(url, joined.token);
    expect(panel.entries[0]?.fact).toMatchObject({
      type: 'opened',
      setup: { site: 'Hollin Bridge sorting hall', pair: 'Pair A', scope: 'commissioning', plan: plan('A') },
    });
    await panel.presence((p) => p.emitter === 'online');
    expect((await desk.board()).pairs[0]).toMatchObject({
      visits: [{ job: opened.job }],
      status: 'aligning',
      online: { panel: true, emitter: true },
    });
  });

  it.each([
    ['a signed pair', 'N1', true],
    ['a pair whose latest visit is not signed', 'D1', false],
  ])('R36: a periodic visit to %s knows what the latest signed visit left', async (_, pair, known) => {
    const { url, desk } = await served();
    const before = demo.visits.findLast((visit) => visit.pair === pair);
    const body = { pair, scope: 'periodic' };
    const opened = JobOpened.parse(await (await desk.post('/api/site/jobs', body)).json());
    const [first] = (await Phone.at(url, opened.token)).entries;
    const setup = first?.fact.type === 'opened' ? first.fact.setup : undefined;
    expect(setup?.scope).toBe('periodic');
    const last = before?.entries.findLast(
      ({ fact }) => fact.type === 'reading' && fact.reading.kind === 'value',
    );
    const left = last?.fact.type === 'reading' && last.fact.reading;
    expect(setup?.lastLeft).toEqual(
      known && left && left.kind === 'value'
        ? { job: before?.job, at: last?.at, value: left.value }
        : undefined,
    );
  });

  it('R47: both phones of an open visit are told what the desk has changed in its plan, once', async () => {
    const { url } = await serve();
    const { desk } = await Desk.open(url);
    await seqOf(await desk.post('/api/site/pairs', { pairs: [plan('A'), plan('B')] }));
    const opened = JobOpened.parse(await (await desk.post('/api/site/jobs', { pair: 'A' })).json());
    const joined = await join(url, opened.invite.code);
    const phones = [await Phone.at(url, opened.token), await Phone.at(url, joined.token)];
    const command = {
      id: newId(),
      pairs: [
        { ...plan('A'), alarmDelay: 25 },
        { ...plan('B'), zone: '8' },
      ],
    };
    await seqOf(await desk.post('/api/site/pairs', command));
    await seqOf(await desk.post('/api/site/pairs', command));
    const told = ({ entries }: Phone) =>
      entries.flatMap(({ fact }) =>
        fact.type === 'notice' && fact.code === 'plan-changed' ? [fact.text] : [],
      );
    await vi.waitFor(() => {
      for (const phone of phones) {
        expect(told(phone)).toEqual([expect.stringMatching(/alarm delay from .+ to 25 s/)]);
      }
    });
    expect(phones[0]?.entries.filter(({ fact }) => fact.type === 'plan-changed')).toHaveLength(1);
  });

  it('R36: the same id again gives the same visit, with valid keys', async () => {
    const { url } = await serve();
    const { desk } = await Desk.open(url);
    await seqOf(await desk.post('/api/site/pairs', { pairs: [plan('A')] }));
    const command = { id: newId(), pair: 'A' };
    const answers = await Promise.all([0, 1, 2].map(() => desk.post('/api/site/jobs', command)));
    const opened = await Promise.all(answers.map(async (answer) => JobOpened.parse(await answer.json())));
    expect(new Set(opened.map(({ job }) => job)).size).toBe(1);
    for (const { token } of opened) await Phone.at(url, token);
    expect((await desk.board()).pairs[0]?.visits).toHaveLength(1);
  });

  it('R36: no visit can begin for a pair that does not exist or has no meter', async () => {
    const { url } = await serve();
    const { desk } = await Desk.open(url);
    const { meter: _, ...bare } = plan('A');
    await seqOf(await desk.post('/api/site/pairs', { pairs: [bare] }));
    expect(await refusal(await desk.post('/api/site/jobs', { pair: 'B' }))).toMatchObject({
      reason: 'bad-target',
    });
    const noMeter = await refusal(await desk.post('/api/site/jobs', { pair: 'A' }));
    expect(noMeter.text).toContain('no meter');
    expect((await desk.post('/api/site/jobs', { pair: 'A', meter })).status).toBe(201);
  });

  it('R37: both tokens get the record of any visit of the site, and of no other job', async () => {
    const { url, desk, reader } = await served();
    const { job, entries } = visitTo('N2');
    for (const who of [desk, reader]) {
      const record = JobRecord.parse(await (await who.get(`/api/site/record?job=${job}`)).json());
      expect(record.entries).toEqual(entries);
      expect(findFault(record.entries, record.head)).toBeUndefined();
    }
    const lines = await (await reader.get(`/api/site/export.jsonl?job=${job}`)).text();
    expect(fromJsonLines(lines)).toMatchObject({ ok: true, head: { job } });
    const other = await openJob(url);
    for (const path of ['record', 'export.jsonl', 'export.csv']) {
      for (const query of [`?job=${other.job}`, '?job=', '']) {
        expect(await refusal(await desk.get(`/api/site/${path}${query}`))).toMatchObject({ status: 404 });
      }
    }
  });

  it('R38: a signature names the head that was read and its findings, and is logged once', async () => {
    const { desk } = await served(unsigned('N2'));
    const { job } = visitTo('N2');
    const before = (await desk.board()).pairs.find((row) => row.plan.id === 'N2');
    expect(before).toMatchObject({ status: 'proven' });
    const command = { id: newId(), job, head: before?.head, ...signer };
    const seq = await seqOf(await desk.post('/api/site/sign', command));
    expect(seq).toBe(before?.head?.count);
    expect(await seqOf(await desk.post('/api/site/sign', command))).toBe(seq);
    const { entries } = JobRecord.parse(await (await desk.get(`/api/site/record?job=${job}`)).json());
    expect(entries[seq]).toMatchObject({
      actor: 'supervisor',
      fact: { type: 'signed', head: { job, ...before?.head }, findings: ['corrections'], signature: drawn },
    });
    expect((await desk.board()).pairs.find((row) => row.plan.id === 'N2')).toMatchObject({
      status: 'signed',
      signed: { name: 'S. Example', role: 'Supervisor' },
    });
  });

  it('R38: a record that lacks something, has grown, or is not the one that was read cannot be signed', async () => {
    const { desk } = await served(unsigned('N2'));
    const board = await desk.board();
    const row = (id: string) => board.pairs.find(({ plan }) => plan.id === id);
    const sign = async (pair: string, head: object | undefined) =>
      refusal(await desk.post('/api/site/sign', { job: row(pair)?.visits.at(-1)?.job, head, ...signer }));
    const head = row('N2')?.head;
    const refused = { status: 409, reason: 'not-signable' };
    const lacking = await sign('D3', row('D3')?.head);
    expect(lacking).toMatchObject(refused);
    expect(lacking.text).toContain('Missing');
    expect(await sign('N2', { ...head, hash: 'f'.repeat(64) })).toMatchObject(refused);
    expect(await sign('N2', { ...head, count: (head?.count ?? 0) - 1 })).toMatchObject(refused);
    expect((await desk.board()).pairs).toEqual(board.pairs);
  });

  it('R38: a record whose log no longer verifies cannot be signed, though it did when it was read', async () => {
    let broken = false;
    class Tampered extends MemoryStore {
      override async audit(job: string) {
        return broken ? ({ seq: 7, fault: 'hash' } as const) : super.audit(job);
      }
    }
    const { desk } = await served(unsigned('N2'), new Tampered());
    const row = async () => (await desk.board()).pairs.find(({ plan }) => plan.id === 'N2');
    const before = await row();
    expect(before).toMatchObject({ status: 'proven' });
    broken = true;
    const command = { job: visitTo('N2').job, head: before?.head, ...signer };
    const refused = await refusal(await desk.post('/api/site/sign', command));
    expect(refused).toMatchObject({ reason: 'log-broken' });
    expect(refused.text).toContain('entry #7');
    broken = false;
    expect((await row())?.head).toEqual(before?.head);
  });

  it('R44: a second person signs beside the first, on the head with it; the first does not sign again', async () => {
    const { desk } = await served(unsigned('N2'));
    const { job } = visitTo('N2');
    const row = async () => (await desk.board()).pairs.find(({ plan }) => plan.id === 'N2');
    const typed = (name: string, text = name) => ({
      name,
      role: 'Witness',
      signature: { kind: 'typed', text },
    });
    const { head } = (await row()) ?? {};
    const wrong = await refusal(
      await desk.post('/api/site/sign', { job, head, ...typed('W. Example', 'W Example') }),
    );
    expect(wrong).toMatchObject({ reason: 'not-signable' });
    expect(wrong.text).toContain('not the name of the signer');
    await seqOf(await desk.post('/api/site/sign', { job, head, ...signer, ofSite: [] }));
    const grown = (await row())?.head;
    const twice = await refusal(await desk.post('/api/site/sign', { job, head: grown, ...signer }));
    expect(twice.text).toContain('has signed this record already');
    const seq = await seqOf(
      await desk.post('/api/site/sign', { job, head: grown, ...typed('W. Example', 'w.example') }),
    );
    const { entries } = JobRecord.parse(await (await desk.get(`/api/site/record?job=${job}`)).json());
    expect(entries[seq]?.fact).toMatchObject({ name: 'W. Example', head: { job, ...grown } });
    expect(await row()).toMatchObject({ status: 'signed', signed: { name: 'S. Example' } });
  });

  it('R38: a signature holds what the site found about the pair, and is refused if that was not what was shown', async () => {
    const { desk } = await served(unsigned('N4'));
    const { job } = visitTo('N4');
    const head = (await desk.board()).pairs.find(({ plan }) => plan.id === 'N4')?.head;
    const sign = (ofSite: string[]) => desk.post('/api/site/sign', { job, head, ...signer, ofSite });
    expect((await refusal(await sign([]))).text).toContain('findings of the site have changed');
    const seq = await seqOf(await sign(['weak-neighbour']));
    const { entries } = JobRecord.parse(await (await desk.get(`/api/site/record?job=${job}`)).json());
    const site = JobRecord.parse(await (await desk.get('/api/record')).json()).head;
    expect(entries[seq]?.fact).toMatchObject({ ofSite: { head: site, findings: ['weak-neighbour'] } });
  });

  it('R38: the desk answers an open issue, in words that stay in the record', async () => {
    const played: PlayedSite = {
      site: demo.site,
      visits: demo.visits.map(({ job, entries }) => {
        const opened = entries.findIndex(({ fact }) => fact.type === 'issue-opened');
        return { job, entries: job === visitTo('S3').job ? entries.slice(0, opened + 1) : entries };
      }),
    };
    const { desk } = await served(played);
    const { job, entries } = visitTo('S3');
    const issue = entries.findIndex(({ fact }) => fact.type === 'issue-opened');
    const how = 'Verification delay of the panel, see its configuration';
    expect((await desk.board()).pairs.find((row) => row.plan.id === 'S3')?.status).toBe('needs-attention');
    const seq = await seqOf(await desk.post('/api/site/close-issue', { job, issue, how }));
    const record = JobRecord.parse(await (await desk.get(`/api/site/record?job=${job}`)).json());
    expect(record.entries[seq]).toMatchObject({
      actor: 'supervisor',
      fact: { type: 'issue-closed', issue, how },
    });
    const again = await refusal(await desk.post('/api/site/close-issue', { job, issue, how }));
    expect(again).toMatchObject({ status: 400, reason: 'bad-target' });
  });

  it('R45: the desk writes the hand-over of an accepted pair down, and every value stays in the log', async () => {
    const { desk } = await served();
    const { job } = visitTo('S3');
    const write = (fact: unknown) => desk.post('/api/site/hand-over', { job, fact });
    const [first, second] = [
      await seqOf(await write({ type: 'as-left', values: { gain: '3', firmware: '1.2' } })),
      await seqOf(await write({ type: 'as-left', values: { gain: '4' } })),
    ];
    const record = JobRecord.parse(await (await desk.get(`/api/site/record?job=${job}`)).json());
    expect(record.entries[first]?.fact).toMatchObject({ values: { gain: '3' } });
    expect(record.entries[second]).toMatchObject({ actor: 'supervisor', fact: { values: { gain: '4' } } });
    const { handOver } = record.entries.reduce(fold, EMPTY);
    expect(handOver.asLeft).toEqual({ gain: '4', firmware: '1.2' });
    expect(handOver.leftBy).toEqual({ gain: second, firmware: first });
    const strike = { type: 'struck-out', entry: second, field: 'gain', why: 'Read from the wrong unit' };
    // Of a value that was replaced, and of one that stands no more.
    expect(await refusal(await write({ ...strike, entry: first }))).toMatchObject({ reason: 'bad-target' });
    await seqOf(await write(strike));
    expect(await refusal(await write(strike))).toMatchObject({ reason: 'bad-target' });
    for (const empty of [
      { type: 'as-left', values: {} },
      { type: 'conditions', building: [] },
      { type: 'next-due', what: 'Clean it', on: '2027-02-30' },
    ]) {
      expect(await refusal(await write(empty))).toMatchObject({ status: 400, reason: 'bad-message' });
    }
  });

  it('R45: before the acceptance nothing is handed over', async () => {
    const played: PlayedSite = {
      site: demo.site,
      visits: demo.visits.map(({ job, entries }) => ({ job, entries: entries.slice(0, 4) })),
    };
    const { desk } = await served(played);
    const { job } = visitTo('S3');
    const fact = { type: 'variation', what: 'No cover at hand', agreedWith: 'W. Example' };
    expect(await refusal(await desk.post('/api/site/hand-over', { job, fact }))).toMatchObject({
      reason: 'bad-target',
    });
  });

  it('R38: the desk can sign or close nothing in a job that is not a visit of its site', async () => {
    const { url, desk } = await served();
    const { job } = await openJob(url);
    const head = { count: 1, hash: 'f'.repeat(64) };
    for (const answer of [
      await desk.post('/api/site/sign', { job, head, ...signer }),
      await desk.post('/api/site/close-issue', { job, issue: 1, how: 'no reason' }),
    ]) {
      expect(await refusal(answer)).toMatchObject({ reason: 'bad-target' });
    }
  });

  it('R39: the findings of each visit are its planted faults, and nothing else', async () => {
    const { reader } = await served();
    const { perPair, site } = SiteFindings.parse(await (await reader.get('/api/site/findings')).json());
    const found = perPair.map(({ pair, findings }) => [pair, findings.map(({ id }) => id).sort()]);
    const planted = DEMO_PAIRS.flatMap(({ id, visits }) =>
      visits.map((plants) => [id, plants.flatMap((plant): string[] => [...PLANTS[plant]]).sort()]),
    );
    expect(found).toEqual(planted);
    expect(site.map(({ id, pair }) => [id, pair])).toEqual([
      ['weak-neighbour', 'N4'],
      ['undone', 'D1'],
    ]);
  });

  it('R39: a pair whose plan is changed after it was signed must be proven anew, until the plan is as it was', async () => {
    const { desk } = await served();
    const row = async () => (await desk.board()).pairs.find(({ plan: { id } }) => id === 'N2');
    const before = await row();
    expect(before).toMatchObject({ status: 'signed' });
    const planned = before?.plan as PairPlan;
    await seqOf(await desk.post('/api/site/pairs', { pairs: [{ ...planned, alarmDelay: 31 }] }));
    expect(await row()).toMatchObject({
      status: 'needs-attention',
      next: 'The plan was changed after it was signed. Begin a new visit and prove it anew',
      findings: { serious: (before?.findings.serious ?? 0) + 1 },
    });
    const { site } = SiteFindings.parse(await (await desk.get('/api/site/findings')).json());
    expect(site.find(({ id }) => id === 'plan-changed')).toMatchObject({
      pair: 'N2',
      plans: { from: { alarmDelay: planned.alarmDelay }, to: { alarmDelay: 31 } },
    });
    await seqOf(await desk.post('/api/site/pairs', { pairs: [planned] }));
    expect(await row()).toMatchObject({ status: 'signed', findings: before?.findings });
  });

  it('R39: the board counts the findings of the latest visit and of the site, and names the head they belong to', async () => {
    const { store, reader } = await served();
    const { pairs } = await reader.board();
    expect(pairs.map(({ plan: { id }, status }) => [id, status])).toMatchObject([
      ['N1', 'signed'],
      ['N2', 'signed'],
      ['N3', 'signed'],
      ['N4', 'signed'],
      ['S1', 'signed'],
      ['S2', 'signed'],
      ['S3', 'signed'],
      ['S4', 'signed-not-proven'],
      ['D1', 'needs-attention'],
      ['D2', 'needs-attention'],
      ['D3', 'needs-attention'],
      ['D4', 'needs-attention'],
    ]);
    for (const {
      plan: { id },
      findings,
      visits,
      head,
    } of pairs) {
      const job = visits.at(-1)?.job ?? '';
      const { entries } = demo.visits.find((visit) => visit.job === job) as DemoVisit;
      expect(head).toMatchObject({ count: entries.length, hash: entries.at(-1)?.hash });
      const ofSite = id === 'N4' || id === 'D1' ? 1 : 0;
      expect(findings.serious + findings.question + findings.note).toBe(
        new VisitRecord({ entries }).findings.length + ofSite,
      );
      expect((await store.summary(job))?.hash).toBe(head?.hash);
    }
  });

  it('R39: a stored summary is used only while the log still has the same head', async () => {
    const { store, desk } = await served(unsigned('N2'));
    const { job } = visitTo('N2');
    const board = await desk.board();
    const kept = await store.summary(job);
    const head = board.pairs.find((row) => row.plan.id === 'N2')?.head;
    await seqOf(await desk.post('/api/site/sign', { job, head, ...signer }));
    await desk.board();
    // A server that starts with an older summary, and one that starts with no valid summary at all.
    for (const body of [kept?.body ?? '', 'scribble']) {
      const { count, hash } = await store.head(job);
      await store.keepSummary(job, { count, hash, body });
      const other = await serve({ store: Object.assign(Object.create(store), { close: async () => {} }) });
      const row = (await new Desk(other.url, desk.token).board()).pairs.find(({ plan }) => plan.id === 'N2');
      expect(row).toMatchObject({ status: 'signed', head: { hash } });
    }
  });

  it('R39: when everyone has left a visit, its summary for the board is worked out', async () => {
    const store = new MemoryStore();
    const clock = new ManualClock();
    const { url } = await serve({ store, clock, limits: { roomIdleMs: 40, deadAfterMs: 40 } });
    const { job, token } = await openJob(url);
    const panel = await Phone.at(url, token);
    expect(await store.summary(job)).toBeUndefined();
    await panel.hangUp();
    await vi.waitFor(
      async () => {
        // All work that waits for an answer ends here.
        clock.advance(3_600_000);
        expect((await store.summary(job))?.hash).toBe((await store.head(job)).hash);
      },
      { timeout: 5_000 },
    );
  });

  it('R39: a visit whose log fails its check needs attention, and the board says nothing else about it', async () => {
    class Tampered extends MemoryStore {
      override async audit(job: string) {
        return job === visitTo('S1').job ? ({ seq: 7, fault: 'hash' } as const) : super.audit(job);
      }
    }
    const { reader } = await served(demo, new Tampered());
    const row = (await reader.board()).pairs.find(({ plan }) => plan.id === 'S1');
    expect(row).toMatchObject({ status: 'needs-attention', next: expect.stringContaining('do not sign') });
    expect(row?.final).toBeUndefined();
  });

  it.each([
    ['one that stands for itself', 'S1', 'signed'],
    ['the first of two', 'D1', 'needs-attention'],
  ])(
    'R39: the board does not wait for a log that takes long to read, and says so of its row: %s',
    async (_, pair, status) => {
      let read = () => {};
      const reading = new Promise<void>((resolve) => {
        read = resolve;
      });
      class Slow extends MemoryStore {
        override async audit(job: string) {
          if (job === visitTo(pair).job) await reading;
          return super.audit(job);
        }
      }
      const { reader } = await served(demo, new Slow());
      const rowOf = (board: SiteView) => board.pairs.find(({ plan }) => plan.id === pair);
      const early = rowOf(await reader.boardAtOnce());
      expect(early?.next).toBe('Its record is being read');
      expect(early?.status).toBeUndefined();
      read();
      expect(rowOf(await reader.board())?.status).toBe(status);
    },
  );

  it('R39: when a visit is named, board and findings show only its pair', async () => {
    const { reader } = await served();
    const { job, pair } = visitTo('S1');
    const whole = await reader.board();
    const one = SiteView.parse(await (await reader.get(`/api/site?job=${job}`)).json());
    expect(one).toEqual({ ...whole, pairs: whole.pairs.filter(({ plan }) => plan.id === pair) });
    const read = async (path: string) => SiteFindings.parse(await (await reader.get(path)).json());
    const all = await read('/api/site/findings');
    expect(await read(`/api/site/findings?job=${job}`)).toEqual({
      perPair: all.perPair.filter((each) => each.job === job),
      site: all.site.filter((each) => each.pair === pair),
    });
    expect(await refusal(await reader.get('/api/site?job=elsewhere1'))).toMatchObject({ status: 404 });
  });

  it('R29: when the site’s log cannot be written, nothing is taken; the same command works later', async () => {
    class Failing extends MemoryStore {
      failing = false;
      override async append(...args: Parameters<MemoryStore['append']>) {
        if (this.failing) throw new StoreFailure('the disk is full');
        return super.append(...args);
      }
    }
    const store = new Failing();
    const { url } = await serve({ store });
    const { desk } = await Desk.open(url);
    const command = { id: newId(), pairs: [plan('A')] };
    store.failing = true;
    expect(await refusal(await desk.post('/api/site/pairs', command))).toMatchObject({
      status: 503,
      reason: 'store-failed',
    });
    store.failing = false;
    await seqOf(await desk.post('/api/site/pairs', command));
    expect((await desk.board()).pairs).toHaveLength(1);
  });

  it('R32: changes and new sites are limited for each address, and so is the size of a body', async () => {
    const limits = {
      siteWritesPerAddress: { burst: 1, perSecond: 0 },
      opensPerAddress: { burst: 1, perSecond: 0 },
    };
    const { url } = await serve({ limits });
    const { desk } = await Desk.open(url);
    expect((await post(url, '/api/sites', { site: 'Another' })).status).toBe(429);
    await seqOf(await desk.post('/api/site/pairs', { pairs: [plan('A')] }));
    expect(await refusal(await desk.post('/api/site/pairs', { pairs: [plan('B')] }))).toMatchObject({
      status: 429,
      reason: 'too-fast',
    });
    expect((await desk.post('/api/site/pairs', { pairs: 'x'.repeat(4 * 1024 * 1024) })).status).toBe(413);
  });
});
