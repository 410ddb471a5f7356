import { describe, expect, it } from 'vitest';
import type { JobOpened } from '../../src/protocol/jobs.ts';
import { PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import { House, type Line } from './in-memory.ts';

const refusals = (line: Line) => line.all('refused').map(({ reason, text }) => [reason, text]);
const watching = (line: Line) => line.all('presence').at(-1)?.presence;
const receipts = (line: Line) => line.all('receipt').map(({ instruction, how }) => [instruction, how]);

interface Crew {
  house: House;
  job: JobOpened;
  panel: Line;
  emitter: Line;
  token: string;
}

const crew = async (): Promise<Crew> => {
  const house = new House();
  const job = await house.open();
  const panel = await house.phone(job.token);
  const token = await house.join(job);
  return { house, job, panel, emitter: await house.phone(token), token };
};

describe('R13: a watcher with a name', () => {
  it('talks to the crew by remark, and the log names who it was', async () => {
    const { house, job, panel, emitter } = await crew();
    const line = await house.phone(job.watch);
    await line.send({ t: 'remark', text: 'Mind the crane.', by: 'S. Example' });
    expect(line.all('ack')).toHaveLength(1);
    const fact = { type: 'watcher-remark', by: 'S. Example', text: 'Mind the crane.' };
    expect((await house.entries(job.job)).at(-1)).toMatchObject({ actor: 'supervisor', fact });
    for (const seat of [panel, emitter])
      expect(seat.all('entries').at(-1)?.entries.at(-1)).toMatchObject({ fact });
  });

  it('is named to the crew from the first remark on, or from its hello', async () => {
    const { house, job, panel } = await crew();
    const line = await house.phone(job.watch);
    expect(watching(panel)).toEqual({ panel: 'online', emitter: 'online', watchers: 1 });
    await line.send({ t: 'remark', text: 'Mind the crane.', by: 'S. Example' });
    expect(watching(panel)).toMatchObject({ watchers: 1, watching: ['S. Example'] });
    const other = house.line();
    const hello = { t: 'hello', v: PROTOCOL_VERSION, token: job.watch, after: -1, name: 'T. Sample' };
    await other.raw(JSON.stringify(hello));
    expect(watching(panel)).toMatchObject({ watchers: 2, watching: ['S. Example', 'T. Sample'] });
    await line.hangUp();
    expect(watching(panel)).toMatchObject({ watchers: 1, watching: ['T. Sample'] });
  });

  it('moves nothing: the order that stands still stands, and no new one comes', async () => {
    const { house, job } = await crew();
    const before = await house.entries(job.job);
    const line = await house.phone(job.watch);
    await line.send({ t: 'remark', text: 'done', by: 'S. Example' });
    const added = (await house.entries(job.job)).slice(before.length);
    expect(added.map(({ fact }) => fact.type)).toEqual(['watcher-remark']);
  });

  it('without a name writes nothing; and no seat writes under a name of a watcher', async () => {
    const { house, job, panel } = await crew();
    const line = await house.phone(job.watch);
    const { length } = await house.entries(job.job);
    await line.send({ t: 'remark', text: 'Mind the crane.' });
    expect(refusals(line)).toEqual([
      ['read-only', 'This link is for watching. It can write remarks with a name, and nothing else.'],
    ]);
    await panel.send({ t: 'remark', text: 'Mind the crane.', by: 'S. Example' });
    expect(refusals(panel)).toEqual([
      ['bad-message', 'Only who watches puts a name to a remark. The name of a seat is given with "person".'],
    ]);
    expect(await house.entries(job.job)).toHaveLength(length);
  });
});

describe('R82: whether an order has reached the ladder', () => {
  const current = async ({ house, job }: Crew): Promise<number> => {
    const order = (await house.entries(job.job)).findLast(({ fact }) => fact.type === 'instruction');
    if (!order) throw new Error('there is an order');
    return order.seq;
  };
  const tell = (line: Line, instruction: number, how: 'shown' | 'spoken') =>
    line.raw(JSON.stringify({ t: 'receipt', instruction, how }));

  it('is told to everyone: shown, then spoken, each once, and never back', async () => {
    const all = await crew();
    const seq = await current(all);
    for (const how of ['shown', 'shown', 'spoken', 'shown', 'spoken'] as const)
      await tell(all.emitter, seq, how);
    expect(receipts(all.panel)).toEqual([
      [seq, 'shown'],
      [seq, 'spoken'],
    ]);
  });

  it('is told to a phone that comes back, and is not in the log', async () => {
    const all = await crew();
    const seq = await current(all);
    const { length } = await all.house.entries(all.job.job);
    await tell(all.emitter, seq, 'spoken');
    await all.panel.hangUp();
    const again = await all.house.phone(all.job.token);
    expect(receipts(again)).toEqual([[seq, 'spoken']]);
    const types = (await all.house.entries(all.job.job)).slice(length).map(({ fact }) => fact.type);
    expect(types).toEqual(['link', 'link']);
  });

  it.each([
    ['an order that is not the current one', -1],
    ['an order that is none', 1],
  ])('says nothing of %s', async (_, off) => {
    const all = await crew();
    await tell(all.emitter, (await current(all)) + off, 'spoken');
    expect(receipts(all.panel)).toEqual([]);
  });

  it('is said by the emitter alone', async () => {
    const all = await crew();
    const seq = await current(all);
    const watcher = await all.house.phone(all.job.watch);
    for (const line of [all.panel, watcher]) {
      await tell(line, seq, 'spoken');
      expect(refusals(line)).toEqual([['read-only', 'Only the emitter phone says what it has shown.']]);
    }
    expect(receipts(all.panel)).toEqual([]);
  });

  it('counts for the phone that showed it, and for none that takes its seat', async () => {
    const all = await crew();
    const seq = await current(all);
    await tell(all.emitter, seq, 'spoken');
    await all.emitter.hangUp();
    await all.panel.send({ t: 'invite', seat: 'emitter' });
    const invite = all.panel.all('invite').at(-1)?.invite;
    if (!invite) throw new Error('a code was given');
    await all.house.join({ ...all.job, invite });
    const again = await all.house.phone(all.job.token);
    expect(receipts(again)).toEqual([]);
  });
});

describe('R83: how the unit hangs', () => {
  it('is a fact of the log, and moves nothing', async () => {
    const { house, job, emitter } = await crew();
    const { length } = await house.entries(job.job);
    await emitter.send({ t: 'mounted', mounting: 'top-left' });
    const added = (await house.entries(job.job)).slice(length);
    expect(added.map(({ actor, fact }) => [actor, fact])).toEqual([
      ['emitter', { type: 'mounted', mounting: 'top-left' }],
    ]);
  });
});
