import { describe, expect, it } from 'vitest';
import { MemoryStore } from '../../server/store/memory.ts';
import { StoreFailure } from '../../server/store/store.ts';
import { OLDEST_PROTOCOL_VERSION, PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import { House } from './in-memory.ts';
import { settle } from './manual-clock.ts';

/** A job of ten entries; its panel phone's token. */
const tenEntries = async (house: House): Promise<{ job: string; token: string }> => {
  const opened = await house.open();
  const room = await house.room(opened.job);
  while (room.head.count < 10) await room.submit({ kind: 'remark', seat: 'panel', text: 'Bracket loose.' });
  return opened;
};

describe('R5 R6: of a log of ten entries, hello after', () => {
  it.each<[number, number[] | 'from-the-future']>([
    [-1, [0, 1, 2, 3, 4, 5, 6, 7, 8, 9]],
    [0, [1, 2, 3, 4, 5, 6, 7, 8, 9]],
    [8, [9]],
    [9, []],
    [10, 'from-the-future'],
    [11, 'from-the-future'],
  ])('%d is answered with %s', async (after, answer) => {
    const house = new House();
    const { job, token } = await tenEntries(house);
    const room = await house.room(job);
    const line = await house.phone(token, after);
    if (answer === 'from-the-future') {
      const text = `This phone holds entry ${after}, and the log here ends before entry 10. Was an older backup restored?`;
      expect(line.heard).toEqual([{ t: 'refused', reason: 'from-the-future', text }]);
      expect(line.ended).toEqual({ code: 4416, reason: 'from-the-future' });
      expect(room.isOnline('panel')).toBe(false);
    } else {
      expect(line.seqs).toEqual(answer);
      expect(line.all('caught-up')).toEqual([{ t: 'caught-up', seq: 9 }]);
      expect(line.ended).toBeUndefined();
      expect(room.isOnline('panel')).toBe(true);
      // That a phone came in is an entry, too, where the log did not know.
      expect(await house.entries(job)).toHaveLength(10);
    }
  });
});

describe('R5: history', () => {
  it('begins with a welcome and who is here, and ends with caught-up', async () => {
    const house = new House();
    const { job, token } = await tenEntries(house);
    const { head } = await house.room(job);
    const line = await house.phone(token);
    expect(line.heard[0]).toEqual({
      t: 'welcome',
      v: PROTOCOL_VERSION,
      role: 'panel',
      job,
      head,
      now: house.clock.now(),
      speech: { name: 'off', ready: false },
      word: expect.stringMatching(/^[A-Z]+ \d{3}$/),
    });
    expect(line.news).toEqual(['welcome', 'presence', 'entries', 'caught-up']);
  });

  it('goes out part by part, each when the one before has left, and what happens meanwhile comes in its place', async () => {
    const house = new House({ limits: { historyBatch: 4 } });
    const { job, token } = await tenEntries(house);
    const line = house.line();
    line.held = true;
    await line.hello(token);
    const room = await house.room(job);
    expect(line.seqs).toEqual([0, 1, 2, 3]);
    const submitted = await room.submit({ kind: 'remark', seat: 'panel', text: 'Meanwhile.' });
    expect(submitted).toEqual({ kind: 'taken', seq: 10 });
    expect(line.seqs).toEqual([0, 1, 2, 3]);
    await line.arrive();
    expect(line.seqs).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    await line.arrive();
    expect(line.seqs).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(line.all('caught-up')).toEqual([]);
    await line.arrive();
    expect(line.all('caught-up')).toEqual([{ t: 'caught-up', seq: 10 }]);
    await room.submit({ kind: 'remark', seat: 'panel', text: 'After.' });
    expect(line.all('entries').map(({ entries }) => entries.map(({ seq }) => seq))).toEqual([
      [0, 1, 2, 3],
      [4, 5, 6, 7],
      [8, 9, 10],
      [11],
    ]);
  });

  it('stops where the phone hangs up', async () => {
    const house = new House({ limits: { historyBatch: 4 } });
    const { token } = await tenEntries(house);
    const line = house.line();
    line.held = true;
    await line.hello(token);
    await line.hangUp();
    house.store.read = async () => {
      throw new StoreFailure('not to be read');
    };
    await line.arrive();
    expect(line.seqs).toEqual([0, 1, 2, 3]);
    expect(line.all('caught-up')).toEqual([]);
    expect(house.journal).toEqual([]);
  });

  it('that cannot be read, or lacks an entry, ends the connection', async () => {
    for (const ill of ['fails', 'lacks'] as const) {
      const house = new House();
      const { token } = await tenEntries(house);
      house.store.read = async () => {
        if (ill === 'fails') throw new StoreFailure('the disk is gone');
        return [];
      };
      const line = await house.phone(token);
      const text = 'The server could not read its log. Connect again.';
      expect(line.heard.at(-1)).toEqual({ t: 'refused', reason: 'store-failed', text });
      expect(line.ended).toEqual({ code: 4503, reason: 'store-failed' });
      expect(house.journal.at(-1)).toMatchObject({ msg: 'history could not be sent', err: {} });
    }
  });

  it('of a log that fails its check ends before the fault, and a phone that holds more is told why', async () => {
    const house = new House();
    const { job, token } = await tenEntries(house);
    house.store.audit = async () => ({ seq: 7, fault: 'hash' });
    const again = await house.restarted();
    const line = await again.phone(token);
    expect(line.seqs).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect(line.all('caught-up')).toEqual([{ t: 'caught-up', seq: 6 }]);
    const ahead = await again.phone(token, 9);
    const text = `The log of this job fails its check at entry 7 (hash). You can read it, but nothing more can be added. Open a new job, and keep this one as it is.`;
    expect(ahead.heard).toEqual([{ t: 'refused', reason: 'from-the-future', text }]);
    expect(again.journal).toMatchObject([{ log: job, fault: { seq: 7 }, msg: 'this log fails its check' }]);
  });
});

describe('hello', () => {
  it.each<[string, number, string | undefined]>([
    ['of the oldest version that is taken', OLDEST_PROTOCOL_VERSION, undefined],
    [
      'of a version before it',
      OLDEST_PROTOCOL_VERSION - 1,
      'This page is too old for the server. Load it again.',
    ],
    ['of the version after ours', PROTOCOL_VERSION + 1, 'This page is newer than the server.'],
  ])('R3: %s', async (_, v, text) => {
    const house = new House();
    const { token } = await house.open();
    const line = house.line();
    await line.hello(token, -1, v);
    if (text === undefined) expect(line.news).toContain('caught-up');
    else {
      expect(line.heard).toEqual([{ t: 'refused', reason: 'version', text }]);
      expect(line.ended).toEqual({ code: 4406, reason: 'version' });
    }
  });

  it('R4: with a token that nobody was given, or of a job that is gone, is refused', async () => {
    const house = new House();
    const { token } = await house.open();
    for (const lacks of ['token', 'job']) {
      if (lacks === 'job') house.rooms.get = async () => undefined;
      const line = await house.phone(lacks === 'job' ? token : 'A'.repeat(22));
      const text = 'This link is not known here.';
      expect(line.heard).toEqual([{ t: 'refused', reason: 'bad-token', text }]);
      expect(line.ended).toEqual({ code: 4401, reason: 'bad-token' });
    }
  });

  it('R34: with the token of a site is refused', async () => {
    const house = new House();
    const { token } = await house.open();
    const { pass } = house.store;
    house.store.pass = async (digest) => {
      const found = await pass.call(house.store, digest);
      return found && { ...found, role: 'desk' };
    };
    const line = await house.phone(token);
    expect(line.heard).toEqual([
      { t: 'refused', reason: 'bad-token', text: 'This link opens a site, not a job.' },
    ]);
  });

  it('R17: of a phone whose seat was taken over is refused', async () => {
    const house = new House();
    const job = await house.open();
    const old = await house.join(job);
    const invite = await house.rooms.invite(await house.room(job.job), 'emitter');
    await house.join({ ...job, invite });
    const line = await house.phone(old);
    const text = 'Another phone has taken the emitter seat.';
    expect(line.heard).toEqual([{ t: 'refused', reason: 'seat-lost', text }]);
    expect(line.ended).toEqual({ code: 4403, reason: 'seat-lost' });
  });

  it('of a phone whose pass is gone when its turn comes lets nobody in', async () => {
    const house = new House();
    const { token } = await house.open();
    const { pass } = house.store;
    let asked = 0;
    house.store.pass = async (digest) => (++asked === 1 ? pass.call(house.store, digest) : undefined);
    const line = await house.phone(token);
    expect(line.heard).toEqual([]);
  });

  it('of a phone that hung up meanwhile lets nobody in', async () => {
    const house = new House();
    const { job, token } = await house.open();
    const room = await house.room(job);
    const line = house.line();
    void line.hello(token);
    await line.hangUp();
    expect(line.heard).toEqual([]);
    expect(room.isOnline('panel')).toBe(false);
  });

  it('said twice is a bad message, and nothing else', async () => {
    const house = new House();
    const { token } = await house.open();
    const line = await house.phone(token);
    expect(line.news.at(-1)).toBe('caught-up');
    await line.hello(token);
    expect(line.heard).toEqual([{ t: 'refused', reason: 'bad-message', text: 'Hello was said before.' }]);
    expect(line.ended).toBeUndefined();
  });

  it('ends the connection where the store cannot be read', async () => {
    const house = new House();
    const { token } = await house.open();
    house.store.pass = async () => {
      throw new StoreFailure('the disk is gone');
    };
    const line = await house.phone(token);
    const text = 'The server could not read or write its log. Connect again.';
    expect(line.heard).toEqual([{ t: 'refused', reason: 'store-failed', text }]);
    expect(house.journal).toMatchObject([{ msg: 'a frame could not be handled', err: {} }]);
  });
});

describe('R8: a message that is sent again', () => {
  const remark = { t: 'remark', id: 'remark-0001', text: 'Bracket loose.' } as const;

  it('is acknowledged as the first time, on this connection and on the next, and logged once', async () => {
    const house = new House();
    const { job, token } = await tenEntries(house);
    const line = await house.phone(token, 9);
    await line.send(remark);
    await line.send({ ...remark, text: 'Something else under the same id.' });
    await line.hangUp();
    const back = await house.phone(token, 9);
    await back.send(remark);
    const ack = { t: 'ack', id: remark.id, seq: 10 };
    expect([line.all('ack'), back.all('ack')]).toEqual([[ack, ack], [ack]]);
    const logged = (await house.entries(job)).filter(({ ref }) => ref === remark.id);
    expect(logged.map(({ fact }) => fact)).toEqual([
      { type: 'remark', seat: 'panel', text: 'Bracket loose.' },
    ]);
  });

  it('is so by a server that has just begun, too', async () => {
    const house = new House();
    const { job, token } = await tenEntries(house);
    await (await house.phone(token, 9)).send(remark);
    const again = await house.restarted();
    const back = await again.phone(token, 10);
    await back.send(remark);
    expect(back.all('ack')).toEqual([{ t: 'ack', id: remark.id, seq: 10 }]);
    expect((await again.entries(job)).filter(({ ref }) => ref === remark.id)).toHaveLength(1);
  });

  it('is so though two of it are under way at once, and though only the store knows of the first', async () => {
    const house = new House();
    const { job, token } = await tenEntries(house);
    const line = await house.phone(token, 9);
    await Promise.all([line.send(remark), line.send(remark)]);
    house.store.seqOf = async () => undefined;
    await line.send(remark);
    expect(line.all('ack').map(({ seq }) => seq)).toEqual([10, 10, 10]);
    expect((await house.entries(job)).filter(({ ref }) => ref === remark.id)).toHaveLength(1);
  });

  it('after the store took it and said that it had failed, is acknowledged and told to all', async () => {
    const house = new House();
    const { token } = await tenEntries(house);
    const line = await house.phone(token, 9);
    const { append } = MemoryStore.prototype;
    house.store.append = async (...of) => {
      await append.apply(house.store, of);
      throw new StoreFailure('the line to the database went down');
    };
    await line.send(remark);
    const text = 'The server could not write its log, so nothing was saved. The phone sends it again.';
    expect(line.heard.at(-1)).toEqual({ t: 'refused', reason: 'store-failed', id: remark.id, text });
    house.store.append = append.bind(house.store);
    await line.send(remark);
    expect(line.all('ack')).toEqual([{ t: 'ack', id: remark.id, seq: 10 }]);
    expect(line.seqs).toEqual([10]);
  });
});

it('R8: what was sent before the line broke counts, and nothing comes back', async () => {
  const house = new House();
  const { job, token } = await tenEntries(house);
  const line = await house.phone(token, 9);
  expect(line.news.at(-1)).toBe('caught-up');
  void line.send({ t: 'remark', id: 'remark-0001', text: 'My last words.' });
  await line.hangUp();
  await settle();
  expect((await house.entries(job)).map(({ ref }) => ref)).toContain('remark-0001');
  expect(line.heard).toEqual([]);
});

it('what comes after the line broke, or after the server sent the phone away, does not count', async () => {
  const house = new House();
  const { job, token } = await tenEntries(house);
  const broken = await house.phone(token, 9);
  await broken.hangUp();
  const away = await house.phone(token, 9);
  away.connection.goAway();
  for (const line of [broken, away]) await line.send({ t: 'remark', text: 'Too late.' });
  const facts = (await house.entries(job)).slice(10).map(({ fact }) => fact.type);
  expect(facts).toEqual(['link', 'link']);
});

it('R14: what was sent before the connection was replaced does not count', async () => {
  const house = new House();
  const { job, token } = await tenEntries(house);
  const line = await house.phone(token, 9);
  const room = await house.room(job);
  await room.inTurn(async () => {
    void line.send({ t: 'remark', id: 'remark-0001', text: 'From the old one.' });
    line.connection.dismiss('replaced', 'This phone opened a newer connection.');
    await line.hangUp();
  });
  await settle();
  expect((await house.entries(job)).map(({ ref }) => ref)).not.toContain('remark-0001');
});
