import { describe, expect, it, vi } from 'vitest';
import type { Member, Room } from '../../server/jobs/room.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { StoreFailure } from '../../server/store/store.ts';
import type { Input } from '../../src/conversation/input.ts';
import { emptyHead, GENESIS, headAfter, seal } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { JobOpened } from '../../src/protocol/jobs.ts';
import { House, type Line } from './in-memory.ts';
import { settle } from './manual-clock.ts';
import { SETUP } from './phone.ts';

const remark = (text = 'Bracket loose.'): Input => ({ kind: 'remark', seat: 'panel', text });
const NOT_TAKEN = {
  kind: 'refused',
  reason: 'store-failed',
  text: 'The server could not write its log, so nothing was saved. The phone sends it again.',
};

/** A job just opened, and the facts of its log from then on. */
const opened = async (
  house: House,
): Promise<{ job: JobOpened; room: Room; since: () => Promise<object[]> }> => {
  const job = await house.open();
  const room = await house.room(job.job);
  const { count } = room.head;
  const since = async () => (await house.entries(job.job)).slice(count).map(({ fact }) => fact);
  return { job, room, since };
};
const presence = (line: Line) => line.all('presence').at(-1)?.presence;
const links = (facts: object[]) => facts.filter((fact) => 'type' in fact && fact.type === 'link');
const gone = (seat: 'panel' | 'emitter') => ({ type: 'link', seat, online: false });
const here = (seat: 'panel' | 'emitter') => ({ type: 'link', seat, online: true });

describe('R19: who is here', () => {
  it('is told to everyone at each change', async () => {
    const house = new House();
    const { job, room } = await opened(house);
    expect(room.presence()).toEqual({ panel: 'away', emitter: 'empty', watchers: 0 });
    const panel = await house.phone(job.token);
    expect(presence(panel)).toEqual({ panel: 'online', emitter: 'empty', watchers: 0 });
    const token = await house.join(job);
    expect(presence(panel)).toEqual({ panel: 'online', emitter: 'away', watchers: 0 });
    const emitter = await house.phone(token);
    expect(presence(panel)).toEqual({ panel: 'online', emitter: 'online', watchers: 0 });
    const watcher = await house.phone(job.watch);
    await house.phone(job.watch);
    expect(presence(panel)).toEqual({ panel: 'online', emitter: 'online', watchers: 2 });
    await watcher.hangUp();
    await emitter.hangUp();
    expect(presence(panel)).toEqual({ panel: 'online', emitter: 'away', watchers: 1 });
    const { length } = panel.heard;
    await emitter.hangUp();
    await watcher.hangUp();
    expect(panel.heard).toHaveLength(length);
  });

  it('R14: a newer connection of a seat replaces the older, and of nobody else', async () => {
    const house = new House();
    const { job, room } = await opened(house);
    const emitter = await house.phone(await house.join(job));
    const watcher = await house.phone(job.watch);
    const panel = await house.phone(job.token);
    const newer = await house.phone(job.token, room.head.count - 1);
    expect(panel.heard.at(-1)).toEqual({
      t: 'refused',
      reason: 'replaced',
      text: 'This phone opened a newer connection.',
    });
    expect(panel.ended).toEqual({ code: 4409, reason: 'replaced' });
    const another = await house.phone(job.watch);
    expect([emitter.ended, watcher.ended, newer.ended, another.ended]).toEqual(Array(4).fill(undefined));
    await panel.hangUp();
    expect(room.isOnline('panel')).toBe(true);
    expect(presence(newer)).toEqual({ panel: 'online', emitter: 'online', watchers: 2 });
  });
});

describe('R20: that a seat’s phone has gone and come', () => {
  it('is logged, and not that of a watcher', async () => {
    const house = new House();
    const { job, since } = await opened(house);
    const panel = await house.phone(job.token);
    const watcher = await house.phone(job.watch);
    await watcher.hangUp();
    expect(links(await since())).toEqual([]);
    await panel.hangUp();
    expect(links(await since())).toEqual([gone('panel')]);
    await house.phone(job.token);
    expect(links(await since())).toEqual([gone('panel'), here('panel')]);
  });

  it('is not, where a newer connection took its place', async () => {
    const house = new House();
    const { job, since } = await opened(house);
    const panel = await house.phone(job.token);
    await house.phone(job.token);
    await panel.hangUp();
    expect(links(await since())).toEqual([]);
  });

  it('is logged of a phone that joined and did not come within six seconds', async () => {
    const house = new House();
    const { job, since } = await opened(house);
    await house.phone(job.token);
    await house.join(job);
    vi.advanceTimersByTime(5_999);
    await settle();
    expect(links(await since())).toEqual([]);
    vi.advanceTimersByTime(1);
    await settle();
    expect(links(await since())).toEqual([gone('emitter')]);
  });

  it('is not, of one that came in time', async () => {
    const house = new House();
    const { job, since } = await opened(house);
    await house.phone(job.token);
    await house.phone(await house.join(job));
    vi.advanceTimersByTime(60_000);
    await settle();
    expect(links(await since())).toEqual([]);
  });

  it('is reckoned from the last that joined', async () => {
    const house = new House();
    const { job, since, room } = await opened(house);
    await house.phone(job.token);
    await house.join(job);
    vi.advanceTimersByTime(3_000);
    await house.join({ ...job, invite: await house.rooms.invite(room, 'emitter') });
    vi.advanceTimersByTime(5_999);
    await settle();
    expect(links(await since())).toEqual([]);
    vi.advanceTimersByTime(1);
    await settle();
    expect(links(await since())).toEqual([gone('emitter')]);
  });
});

describe('R27: a job read from the store', () => {
  const withBoth = async (house: House) => {
    const { job } = await opened(house);
    const emitter = await house.join(job);
    await house.phone(job.token);
    await house.phone(emitter);
    return { job, emitter };
  };

  it('has all that was in it, and the server’s end is no going of the phones', async () => {
    const house = new House();
    const { job } = await withBoth(house);
    const before = await house.entries(job.job);
    const again = await house.restarted();
    const room = await again.room(job.job);
    expect(room.head).toEqual(headAfter(before.at(-1) as Entry));
    expect(room.presence()).toEqual({ panel: 'away', emitter: 'away', watchers: 0 });
    expect(await again.entries(job.job)).toEqual(before);
  });

  it('of more entries than are read at once has them all', async () => {
    const house = new House();
    const { job, room } = await opened(house);
    while (room.head.count < 1_100) await room.submit(remark());
    const again = await house.restarted();
    expect((await again.room(job.job)).head.count).toBe(1_100);
  });

  it('sleeps while only watchers look at it', async () => {
    const house = new House();
    const { job } = await withBoth(house);
    const before = await house.entries(job.job);
    const again = await house.restarted();
    again.clock.advance(24 * 3_600_000);
    await again.phone(job.watch);
    vi.advanceTimersByTime(60_000);
    await settle();
    expect(await again.entries(job.job)).toEqual(before);
  });

  it('wakes when one of its crew is back, and gives the other six seconds', async () => {
    const house = new House();
    const { job } = await withBoth(house);
    const { length } = await house.entries(job.job);
    const again = await house.restarted();
    again.clock.advance(24 * 3_600_000);
    await again.phone(job.token);
    const since = async () => (await again.entries(job.job)).slice(length).map(({ fact }) => fact);
    // The instruction that stood is a day old.
    expect(await since()).toMatchObject([{ type: 'withdrawn', why: 'expired' }, { type: 'notice' }]);
    vi.advanceTimersByTime(5_999);
    await settle();
    expect(links(await since())).toEqual([]);
    vi.advanceTimersByTime(1);
    await settle();
    expect(links(await since())).toEqual([gone('emitter')]);
  });

  it('wakes once, not with each that comes: the six seconds run from the first', async () => {
    const house = new House();
    const { job } = await withBoth(house);
    const { length } = await house.entries(job.job);
    const again = await house.restarted();
    const since = async () => (await again.entries(job.job)).slice(length).map(({ fact }) => fact);
    await again.phone(job.token);
    vi.advanceTimersByTime(3_000);
    await again.phone(job.token);
    vi.advanceTimersByTime(2_999);
    await settle();
    expect(links(await since())).toEqual([]);
    vi.advanceTimersByTime(1);
    await settle();
    expect(links(await since())).toEqual([gone('emitter')]);
  });

  it('that is a site’s is no job', async () => {
    const house = new House();
    const fact = { type: 'site-opened', site: 'Hollin Bridge', logVersion: 1 } as const;
    const entry = seal(emptyHead('site-0000001'), { actor: 'server', fact }, 5);
    await house.store.append('site-0000001', [entry]);
    expect(await house.rooms.get('site-0000001')).toBeUndefined();
  });
});

describe('R28: a log that fails its check', () => {
  it('from its first entry on is a job all the same, and takes nothing', async () => {
    const house = new House();
    const { job } = await opened(house);
    house.store.audit = async () => ({ seq: 0, fault: 'job' });
    const again = await house.restarted();
    const room = await again.room(job.job);
    const text =
      'The log of this job fails its check at entry 0 (job). You can read it, but nothing more can be added. Open a new job, and keep this one as it is.';
    expect(room.brokenText).toBe(text);
    expect(room.head).toEqual(emptyHead(job.job));
    expect(await room.submit(remark())).toEqual({ kind: 'refused', reason: 'log-broken', text });
  });

  it('is one that does, and no other', async () => {
    const { room } = await opened(new House());
    expect(room.brokenText).toBeUndefined();
  });
});

describe('what is put to a job', () => {
  it('is taken from its first entry on', async () => {
    const house = new House();
    const { room, since } = await opened(house);
    const { count } = room.head;
    expect(await room.submit(remark(), 'remark-0001')).toEqual({ kind: 'taken', seq: count });
    expect(await since()).toEqual([{ type: 'remark', seat: 'panel', text: 'Bracket loose.' }]);
    const [entry] = (await house.entries(room.job)).slice(count);
    expect(entry).toMatchObject({ ref: 'remark-0001', at: house.clock.now() });
  });

  it('carries its id on its first entry alone', async () => {
    const house = new House();
    const { job, room } = await opened(house);
    const { count } = room.head;
    const said: Input = { kind: 'words', seat: 'panel', via: 'typed', text: 'forty two' };
    expect(await room.submit(said, 'said-0001')).toEqual({ kind: 'taken', seq: count });
    const refs = (await house.entries(job.job)).slice(count).map(({ ref }) => ref);
    expect(refs.length).toBeGreaterThan(1);
    expect(refs).toEqual(['said-0001', ...refs.slice(1).map(() => undefined)]);
  });

  it('and leads to nothing is taken at the log’s end, and nothing is written', async () => {
    const house = new House();
    const { room } = await opened(house);
    house.store.append = async () => {
      throw new StoreFailure('not to be written');
    };
    const { count } = room.head;
    expect(await room.submit({ kind: 'tick' })).toEqual({ kind: 'taken', seq: count - 1 });
    expect(room.head.count).toBe(count);
  });

  it('R8: is taken as the first time when it comes again, though the rules would refuse it now', async () => {
    const { room } = await opened(new House());
    const said = await room.submit({ kind: 'words', seat: 'panel', via: 'typed', text: 'forty two' });
    // After the words comes what they mean.
    const reading = 'seq' in said ? said.seq + 1 : -1;
    const undo: Input = { kind: 'take-back', seat: 'panel', target: reading };
    const first = await room.submit(undo, 'undo-0001');
    expect(first).toMatchObject({ kind: 'taken' });
    expect(await room.submit(undo, 'undo-0002')).toMatchObject({ kind: 'refused', reason: 'bad-target' });
    expect(await room.submit(undo, 'undo-0001')).toEqual(first);
  });

  it('is refused by the rules, and nothing is stored', async () => {
    const { room, since } = await opened(new House());
    const outcome = await room.submit({ kind: 'take-back', seat: 'panel', target: 9_999 });
    expect(outcome).toMatchObject({ kind: 'refused', reason: 'bad-target' });
    expect(await since()).toEqual([]);
  });

  it('and makes the rules fail is refused for good, and the job goes on', async () => {
    const house = new House();
    const { job, room, since } = await opened(house);
    const broken = { kind: 'words', seat: 'panel', via: 'typed', text: undefined as never } as const;
    expect(await room.submit(broken)).toEqual({
      kind: 'refused',
      reason: 'bad-message',
      text: 'The server failed on this, and nothing was saved. Try other words.',
    });
    expect(house.journal).toMatchObject([
      { job: job.job, input: 'words', err: {}, msg: 'the rules failed on an input' },
    ]);
    await room.submit(remark());
    expect(await since()).toHaveLength(1);
  });

  it('is told to everyone who is through with history', async () => {
    const house = new House();
    const { job, room } = await opened(house);
    const lines = [await house.phone(job.token), await house.phone(job.watch)];
    await room.submit(remark());
    for (const line of lines) expect(line.seqs.at(-1)).toBe(room.head.count - 1);
  });

  it('R29: while the store is ill is not taken, and is when it is well again', async () => {
    const house = new House();
    const { room, since, job } = await opened(house);
    house.store.append = async () => {
      throw new StoreFailure('the disk is full');
    };
    expect(await room.submit(remark(), 'remark-0001')).toEqual(NOT_TAKEN);
    expect(house.journal).toMatchObject([
      { log: job.job, err: {}, msg: 'nothing could be written to this log' },
    ]);
    expect(await since()).toEqual([]);
    house.store.append = MemoryStore.prototype.append.bind(house.store);
    expect(await room.submit(remark(), 'remark-0001')).toMatchObject({ kind: 'taken' });
    expect(await since()).toHaveLength(1);
  });

  it('R29: is not taken while it cannot be known what the store holds', async () => {
    const house = new House();
    const { room } = await opened(house);
    const { append, read } = MemoryStore.prototype;
    house.store.append = async (...of) => {
      await append.apply(house.store, of);
      throw new StoreFailure('the line to the database went down');
    };
    await room.submit(remark('First.'));
    house.store.append = append.bind(house.store);
    house.store.read = async () => {
      throw new StoreFailure('still down');
    };
    expect(await room.submit(remark('Second.'))).toEqual(NOT_TAKEN);
    house.store.read = read.bind(house.store);
    await room.submit(remark('Third.'));
    const texts = (await house.entries(room.job)).flatMap(({ fact }) =>
      fact.type === 'remark' ? [fact.text] : [],
    );
    expect(texts).toEqual(['First.', 'Third.']);
  });

  it('is not taken where another has written to the log; then what that wrote is read, and told', async () => {
    const house = new House();
    const { job, room } = await opened(house);
    const panel = await house.phone(job.token);
    const fact = { type: 'remark', seat: 'panel', text: 'From elsewhere.' } as const;
    await house.store.append(job.job, [seal(room.head, { actor: 'panel', fact }, 5)]);
    const { count } = room.head;
    expect(await room.submit(remark())).toEqual(NOT_TAKEN);
    expect(house.journal.at(-1)).toMatchObject({
      err: { message: `the stored log has ${count + 1} entries, this room knows ${count}` },
    });
    expect(await room.submit(remark())).toEqual({ kind: 'taken', seq: count + 1 });
    expect(panel.seqs.slice(-2)).toEqual([count, count + 1]);
    expect(await house.store.audit(job.job)).toBeUndefined();
    // The log is read once more, and not each time from then on.
    house.store.read = async () => {
      throw new StoreFailure('not to be read');
    };
    expect(await room.submit(remark())).toEqual({ kind: 'taken', seq: count + 2 });
  });
});

describe('R38: a signature', () => {
  const sign = (count: number, hash: string): Input => ({
    kind: 'sign',
    name: 'R. Example',
    role: 'Supervisor',
    signature: { kind: 'typed', text: 'R. Example' },
    head: { job: 'any', count, hash },
    findings: [],
  });
  const OTHER = 'You read another record than the one kept here. Load it again, and compare.';

  it.each<[string, (room: Room) => Input, boolean]>([
    [
      'under the record that is kept here goes by the rules',
      ({ head }) => sign(head.count, head.hash),
      false,
    ],
    ['under another of the same length is none', ({ head }) => sign(head.count, GENESIS), true],
    ['under one of another length goes by the rules', ({ head }) => sign(head.count - 1, GENESIS), false],
  ])('%s', async (_, input, isOther) => {
    const { room } = await opened(new House());
    const outcome = await room.submit(input(room));
    expect(outcome).toMatchObject({ kind: 'refused', reason: 'not-signable' });
    expect('text' in outcome && outcome.text === OTHER).toBe(isOther);
  });
});

describe('R16 R17: a seat', () => {
  it('is taken by the first, and taken over by the next, while its phone is away', async () => {
    const house = new House();
    const { job, room, since } = await opened(house);
    await house.join(job);
    await house.join({ ...job, invite: await house.rooms.invite(room, 'emitter') });
    expect((await since()).filter((fact) => 'type' in fact && fact.type === 'seated')).toEqual([
      { type: 'seated', seat: 'emitter', device: 'emitter phone', takeover: false },
      { type: 'seated', seat: 'emitter', device: 'emitter phone', takeover: true },
    ]);
  });

  it('is not taken from a phone that is here', async () => {
    const house = new House();
    const { job, room, since } = await opened(house);
    await house.phone(await house.join(job));
    const { length } = await since();
    const invite = await house.rooms.invite(room, 'emitter');
    expect(await house.rooms.join(invite.code, { device: 'another phone' })).toEqual({
      kind: 'refused',
      reason: 'seat-in-use',
      text: 'The emitter phone of this job is connected. Close it there first.',
    });
    expect(await since()).toHaveLength(length);
  });

  it('R15: is given once for a code, though two use it at once', async () => {
    const house = new House();
    const { job, since } = await opened(house);
    const panel = await house.phone(job.token);
    panel.heard.splice(0);
    const both = await Promise.all([1, 2].map((n) => house.rooms.join(job.invite.code, { device: `${n}` })));
    expect(panel.all('presence')).toHaveLength(1);
    expect(both.map(({ kind }) => kind)).toEqual(['ok', 'refused']);
    expect(both[1]).toMatchObject({ reason: 'bad-code' });
    expect((await since()).filter((fact) => 'type' in fact && fact.type === 'seated')).toHaveLength(1);
  });
});

describe('R30: the job’s time', () => {
  it('runs on by itself: what stood is withdrawn at its end, not before', async () => {
    const house = new House();
    const { job, since } = await opened(house);
    await house.phone(job.token);
    await house.phone(await house.join(job));
    const facts = await since();
    const instruction = facts.find((fact) => 'type' in fact && fact.type === 'instruction');
    const { expiresAt } = instruction as { expiresAt: number };
    house.clock.advance(expiresAt - house.clock.now() - 1);
    await settle();
    expect(await since()).toEqual(facts);
    house.clock.advance(1);
    await settle();
    expect(await since()).toMatchObject([
      ...facts,
      { type: 'withdrawn', why: 'expired' },
      { type: 'notice' },
    ]);
  });

  it('is looked at again a second after the store failed it', async () => {
    const house = new House();
    const { job, since } = await opened(house);
    await house.phone(job.token);
    await house.phone(await house.join(job));
    const { length } = await since();
    house.store.append = async () => {
      throw new StoreFailure('the disk is full');
    };
    house.clock.advance(10 * 60_000);
    await settle();
    expect(await since()).toHaveLength(length);
    house.store.append = MemoryStore.prototype.append.bind(house.store);
    house.clock.advance(999);
    await settle();
    expect(await since()).toHaveLength(length);
    house.clock.advance(1);
    await settle();
    expect((await since()).slice(length)).toMatchObject([{ type: 'withdrawn' }, { type: 'notice' }]);
  });

  it('that is due already waits 20 ms, and only the newest is waited for', async () => {
    const house = new House();
    const { job, room } = await opened(house);
    await house.phone(job.token);
    const waits: number[] = [];
    let calledOff = 0;
    house.clock.after = (ms) => {
      waits.push(ms);
      return () => calledOff++;
    };
    await house.join(job);
    expect(waits).toHaveLength(1);
    expect(waits[0]).toBeGreaterThan(20);
    const now = house.clock.now;
    // Half way through taking it, a minute goes by.
    let asked = 0;
    house.clock.now = () => now.call(house.clock) + (asked++ === 0 ? 0 : 3_600_000);
    await room.submit({ kind: 'words', seat: 'panel', via: 'typed', text: 'forty two' });
    expect(waits.slice(1)).toEqual([20]);
    expect(calledOff).toBe(1);
  });
});

describe('a room', () => {
  it('is idle when nobody is here, nothing is due, and nothing has happened since', async () => {
    const house = new House();
    const { job, room } = await opened(house);
    const later = () => performance.now() + 1;
    expect(room.isIdleSince(performance.now())).toBe(false);
    expect(room.isIdleSince(later())).toBe(true);
    vi.advanceTimersByTime(10);
    room.touch();
    expect(room.isIdleSince(performance.now())).toBe(false);
    expect(room.isIdleSince(later())).toBe(true);
    vi.advanceTimersByTime(10);
    const panel = await house.phone(job.token);
    expect(room.isIdleSince(later())).toBe(false);
    await panel.hangUp();
    expect(room.isIdleSince(performance.now())).toBe(false);
    expect(room.isIdleSince(later())).toBe(true);
    await house.join(job);
    // An instruction stands now, and will have to be withdrawn.
    expect(room.isIdleSince(later())).toBe(false);
    house.clock.advance(10 * 60_000);
    await settle();
    expect(room.isIdleSince(later())).toBe(true);
  });

  it('that closes stores what was under way, takes nothing more, and stops its time', async () => {
    const house = new House();
    const { job, room, since } = await opened(house);
    const panel = await house.phone(job.token);
    await house.join(job);
    const before = await since();
    void room.submit(remark('Under way.'));
    await room.close();
    expect(panel.ended).toEqual({ code: 1001, reason: 'the server stops' });
    expect(await since()).toEqual([...before, { type: 'remark', seat: 'panel', text: 'Under way.' }]);
    expect(await room.submit(remark('Too late.'))).toEqual(NOT_TAKEN);
    await panel.hangUp();
    vi.advanceTimersByTime(60_000);
    house.clock.advance(24 * 3_600_000);
    await settle();
    expect(await since()).toHaveLength(before.length + 1);
    expect(room.isOnline('panel')).toBe(false);
  });

  it('passes what it tells a seat to that seat alone, if it is here', async () => {
    const house = new House();
    const { job, room } = await opened(house);
    const panel = await house.phone(job.token);
    const watcher = await house.phone(job.watch);
    for (const line of [panel, watcher]) line.heard.splice(0);
    room.tellSeat('panel', { t: 'ack', id: 'remark-0001', seq: 1 });
    room.tellSeat('emitter', { t: 'ack', id: 'remark-0002', seq: 1 });
    expect([panel.news, watcher.news]).toEqual([['ack'], []]);
  });

  it('expects what its job does', async () => {
    const house = new House();
    const { room } = await opened(house);
    expect(room.expected).toMatchObject({ low: SETUP.meter.min, high: SETUP.meter.max });
  });

  it('does its work in turn, and goes on after work that failed', async () => {
    const { room } = await opened(new House());
    const done: string[] = [];
    const slow = room.inTurn(async () => {
      await settle();
      done.push('first');
    });
    const failing = room.inTurn(async () => {
      done.push('second');
      throw new Error('no');
    });
    const last = room.inTurn(async () => void done.push('third'));
    await expect(failing).rejects.toThrow('no');
    await Promise.all([slow, last]);
    expect(done).toEqual(['first', 'second', 'third']);
  });
});

it('a member of no seat is nobody to a seat', async () => {
  const { room } = await opened(new House());
  const heard: object[] = [];
  const member: Member = {
    role: 'watcher',
    key: '',
    name: undefined,
    entries: () => {},
    send: (message) => void heard.push(message),
    dismiss: () => {},
    goAway: () => {},
  };
  room.enter(member);
  expect([room.isOnline('panel'), room.isOnline('emitter')]).toEqual([false, false]);
  room.leave(member);
  room.leave(member);
  expect(heard).toHaveLength(1);
});
