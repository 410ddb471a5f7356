import { describe, expect, it, vi } from 'vitest';
import type { SpeechEngine } from '../../server/speech/service.ts';
import { House, type Line } from './in-memory.ts';
import { settle } from './manual-clock.ts';

const remark = (id: string) => ({ t: 'remark', id, text: 'Bracket loose.' }) as const;
const refused = (reason: string, text: string, id?: string) => ({
  t: 'refused',
  reason,
  text,
  ...(id && { id }),
});

/** A speech engine that hears "forty two" in any sound. */
const SPEECH: SpeechEngine = {
  name: 'test',
  transcribe: async () => ({
    text: 'forty two',
    confidence: 0.95,
    alternatives: [{ text: 'forty two', confidence: 0.95 }],
    ms: 1,
  }),
  close: async () => {},
};

const panelIn = async (house: House): Promise<{ job: string; watch: string; line: Line; token: string }> => {
  const { job, token, watch } = await house.open();
  const line = await house.phone(token);
  line.heard.splice(0);
  return { job, watch, token, line };
};

describe('R1: a connection', () => {
  it('that says no hello within five seconds is ended, and one that did is not', async () => {
    const house = new House();
    const { token } = await house.open();
    const silent = house.line();
    const greeted = await house.phone(token);
    vi.advanceTimersByTime(4_999);
    expect(silent.heard).toEqual([]);
    vi.advanceTimersByTime(1);
    // What has come meanwhile is read first.
    await new Promise(setImmediate);
    expect(silent.heard).toEqual([refused('bad-message', 'No hello came.')]);
    expect(silent.ended).toEqual({ code: 4400, reason: 'bad-message' });
    expect(greeted.ended).toBeUndefined();
  });

  it('that hung up before it said hello is not ended once more', async () => {
    const line = new House().line();
    await line.hangUp();
    vi.advanceTimersByTime(60_000);
    expect(line.heard).toEqual([]);
    expect(vi.getTimerCount()).toBe(1); // That which puts idle jobs away.
  });

  it.each<[string, (line: Line) => Promise<unknown>]>([
    ['words', (line) => line.send(remark('remark-0001'))],
    ['sound', (line) => line.sound(2)],
  ])('whose first frame is %s is ended', async (_, send) => {
    const line = new House().line();
    await send(line);
    expect(line.heard).toEqual([refused('bad-message', 'Say hello first.')]);
    expect(line.ended).toEqual({ code: 4400, reason: 'bad-message' });
  });

  it('that was ended heeds nothing more', async () => {
    const house = new House();
    const { token } = await house.open();
    const line = house.line();
    await line.sound(2);
    line.heard.splice(0);
    await line.hello(token);
    await line.raw('not json');
    await line.raw('{"t":"ping","n":1}');
    await line.sound(2);
    line.connection.goAway();
    line.connection.dismiss('replaced', 'once more');
    expect(line.heard).toEqual([]);
    expect(line.ended).toEqual({ code: 4400, reason: 'bad-message' });
  });
});

describe('R21: a ping', () => {
  it('is answered at once, before hello and before what waits', async () => {
    const house = new House();
    const line = house.line();
    line.connection.onText('{"t":"ping","n":41}');
    expect(line.heard).toEqual([{ t: 'pong', n: 41, now: house.clock.now() }]);
  });
});

describe('R10: a frame that is no message', () => {
  it.each<[string, string, string, string | undefined]>([
    ['no JSON', 'not json', 'This is not JSON.', undefined],
    ['no object', '[]', 'Invalid', undefined],
    ['of no known kind', '{"t":"dance","id":"dance-0001"}', 't: Invalid', 'dance-0001'],
    ['without its words', '{"t":"remark","id":"remark-0001"}', 'text: Invalid', 'remark-0001'],
    ['with an id that is none', '{"t":"remark","id":"x","text":"y"}', 'id: Invalid', undefined],
    [
      'with a part of a part amiss',
      '{"t":"say","id":"said-0001","via":"voice","text":"a","confidence":1,"alternatives":[{"text":1}]}',
      'alternatives.0.text: Invalid',
      'said-0001',
    ],
  ])('is refused by name: %s', async (_, frame, text, id) => {
    const { line } = await panelIn(new House());
    await line.raw(frame);
    expect(line.heard).toEqual([refused('bad-message', expect.stringContaining(text) as never, id)]);
    expect(line.ended).toBeUndefined();
  });

  it('is borne twenty times, and ends the connection the next', async () => {
    const { line } = await panelIn(new House());
    for (let i = 0; i < 20; i++) await line.raw('nonsense');
    expect(line.news).toEqual(Array.from({ length: 20 }, () => 'refused bad-message'));
    expect(line.ended).toBeUndefined();
    await line.raw('nonsense');
    expect(line.heard).toEqual([refused('bad-message', 'Too many bad messages.')]);
    expect(line.ended).toEqual({ code: 4400, reason: 'bad-message' });
  });
});

describe('R11: words', () => {
  it.each<[string, object, string]>([
    ['as long as may be', { t: 'say', via: 'typed', text: 'a'.repeat(500) }, 'ack'],
    ['a letter longer', { t: 'say', via: 'typed', text: 'a'.repeat(501) }, 'refused too-long'],
    ['with a reason a letter too long', { t: 'override', reason: 'a'.repeat(501) }, 'refused bad-message'],
    ['none', { t: 'say', via: 'typed', text: '' }, 'refused bad-message'],
  ])('%s', async (_, message, answer) => {
    const { line } = await panelIn(new House());
    await line.send({ ...message, id: 'said-0001' } as never);
    expect(line.news.filter((what) => what !== 'entries')).toEqual([answer]);
  });
});

describe('R12: what comes too fast', () => {
  it('is refused by its id from the first beyond the allowance on, and taken again a second later', async () => {
    const { line } = await panelIn(new House({ limits: { messages: { burst: 2, perSecond: 1 } } }));
    for (const i of [1, 2, 3]) await line.send(remark(`remark-000${i}`));
    const text = 'Too many messages at once. Wait a second and send it again.';
    expect(line.all('ack')).toHaveLength(2);
    expect(line.all('refused')).toEqual([refused('too-fast', text, 'remark-0003')]);
    // Hello and pings have the same allowance of their own, for each connection.
    for (const n of [1, 2]) await line.raw(`{"t":"ping","n":${n}}`);
    expect(line.all('pong')).toHaveLength(1);
    expect(line.all('refused')[1]).toEqual(refused('too-fast', text));
    vi.advanceTimersByTime(1_000);
    await line.send(remark('remark-0003'));
    expect(line.all('ack')).toHaveLength(3);
    expect(line.ended).toBeUndefined();
  });

  it('of sound ends the talk, and the sound after it is left aside', async () => {
    const limits = { sound: { burst: 100, perSecond: 100 } };
    const { line } = await panelIn(new House({ limits, speech: SPEECH }));
    await line.send({ t: 'talk', id: 'talk-0001' });
    await line.sound(100);
    expect(line.all('refused')).toEqual([]);
    await line.sound(2);
    const text = 'Sound comes too fast. Say it again.';
    expect(line.all('refused')).toEqual([refused('too-fast', text, 'talk-0001')]);
  });
});

describe('R13: a watcher', () => {
  it('reads everything and writes nothing', async () => {
    const house = new House();
    const { watch, job } = await panelIn(house);
    const line = await house.phone(watch);
    expect(line.news).toEqual(['welcome', 'presence', 'entries', 'caught-up']);
    const before = await house.entries(job);
    const messages = [
      { t: 'say', via: 'typed', text: 'forty two' },
      { t: 'remark', text: 'I would like to say' },
      { t: 'correct', target: 0, text: '1' },
      { t: 'take-back', target: 0 },
      { t: 'override', reason: 'because' },
      { t: 'hand-over', fact: { type: 'as-left', values: { gain: '3' } } },
      { t: 'talk' },
      { t: 'talk-end' },
      { t: 'talk-drop' },
      { t: 'invite', seat: 'panel' },
    ];
    const text = 'This link is for watching. It can write remarks with a name, and nothing else.';
    for (const message of messages) {
      await line.send({ ...message, id: 'message-0001' } as never);
      expect(line.heard.splice(0)).toEqual([refused('read-only', text, 'message-0001')]);
    }
    await line.sound(2);
    expect(line.heard).toEqual([refused('read-only', text)]);
    expect(await house.entries(job)).toEqual(before);
    expect(line.ended).toBeUndefined();
    await line.hangUp();
    expect(house.journal).toEqual([]);
  });

  it('that sends nothing but sound is ended at last', async () => {
    const house = new House({ limits: { maxBadFrames: 2 } });
    const { watch } = await panelIn(house);
    const line = await house.phone(watch);
    for (let i = 0; i < 3; i++) await line.sound(2);
    expect(line.ended).toEqual({ code: 4400, reason: 'bad-message' });
  });
});

describe('what a phone sends', () => {
  it('is acknowledged with its first entry, or refused by name, and the connection stays', async () => {
    const { line } = await panelIn(new House());
    await line.send(remark('remark-0001'));
    expect(line.news).toEqual(['entries', 'ack']);
    await line.send({ t: 'take-back', id: 'back-0001', target: 9_999 });
    expect(line.heard).toEqual([refused('bad-target', expect.any(String) as never, 'back-0001')]);
    expect(line.ended).toBeUndefined();
  });

  it('is taken in the order it was sent, the next when the last is done', async () => {
    const house = new House();
    const { line, job } = await panelIn(house);
    await Promise.all(['a', 'b', 'c'].map((name) => line.send(remark(`remark-000${name}`))));
    const refs = (await house.entries(job)).flatMap(({ ref }) => ref ?? []);
    expect(refs).toEqual(['remark-000a', 'remark-000b', 'remark-000c']);
  });

  it('as sound is heard as words, once', async () => {
    const house = new House({ speech: SPEECH });
    const { line, job } = await panelIn(house);
    await line.send({ t: 'talk', id: 'talk-0001' });
    await line.sound(320);
    await line.send({ t: 'talk-end', id: 'talk-0001' });
    await settle();
    expect(line.all('hearing').map(({ stage }) => stage)).toEqual(['listening', 'working', 'done']);
    expect(line.all('ack')).toMatchObject([{ id: 'talk-0001' }]);
    const facts = (await house.entries(job)).map(({ fact }) => fact);
    expect(facts.filter(({ type }) => type === 'said')).toMatchObject([{ seat: 'panel', text: 'forty two' }]);
  });

  it('as sound and takes back is not heard', async () => {
    const house = new House({ speech: SPEECH });
    const { line, job } = await panelIn(house);
    await line.send({ t: 'talk', id: 'talk-0001' });
    await line.sound(320);
    await line.send({ t: 'talk-drop', id: 'talk-0001' });
    expect(line.all('hearing').map(({ stage }) => stage)).toEqual(['listening', 'done']);
    expect((await house.entries(job)).some(({ fact }) => fact.type === 'said')).toBe(false);
  });

  it('as sound that is too long, when its connection is replaced, is no message of its own', async () => {
    const house = new House({ speech: SPEECH, limits: { maxTalkBytes: 100 } });
    const { line, job } = await panelIn(house);
    await line.send({ t: 'talk', id: 'talk-0001' });
    void line.sound(102);
    line.connection.dismiss('replaced', 'This phone opened a newer connection.');
    await line.hangUp();
    const unheard = (await house.entries(job)).filter(({ fact }) => fact.type === 'unheard');
    expect(unheard.map(({ ref }) => ref)).toEqual([undefined]);
  });

  it('R26: as sound when the line breaks is logged as cut short', async () => {
    const house = new House({ speech: SPEECH });
    const { line, job } = await panelIn(house);
    await line.send({ t: 'talk', id: 'talk-0001' });
    await line.hangUp();
    const facts = (await house.entries(job)).map(({ fact }) => fact);
    expect(facts).toContainEqual({ type: 'unheard', seat: 'panel', why: 'cut-short' });
  });
});

describe('R16: a code', () => {
  it.each<[string, boolean, 'panel' | 'emitter', string]>([
    ['for the other seat, whose phone is away', false, 'emitter', 'invite'],
    ['for the other seat, whose phone is here', true, 'emitter', 'refused seat-in-use'],
    ['for one’s own seat', true, 'panel', 'invite'],
  ])('%s', async (_, isHere, seat, answer) => {
    const house = new House();
    const job = await house.open();
    const emitter = await house.join(job);
    if (isHere) await house.phone(emitter);
    const line = await house.phone(job.token);
    line.heard.splice(0);
    await line.send({ t: 'invite', id: 'invite-0001', seat });
    expect(line.news).toEqual([answer]);
  });

  it('comes with its message’s id, and opens the seat', async () => {
    const house = new House();
    const { line, job } = await panelIn(house);
    await line.send({ t: 'invite', id: 'invite-0001', seat: 'emitter' });
    const [{ id, invite }] = line.all('invite') as [ReturnType<Line['all']>[number] & { t: 'invite' }];
    expect(id).toBe('invite-0001');
    const joined = await house.rooms.join(invite.code, { device: '' });
    expect(joined).toMatchObject({ kind: 'ok', value: { job, seat: 'emitter' } });
  });

  it('that is refused says whose phone is in the way, and what to do', async () => {
    const house = new House();
    const job = await house.open();
    await house.phone(await house.join(job));
    const line = await house.phone(job.token);
    line.heard.splice(0);
    await line.send({ t: 'invite', id: 'invite-0001', seat: 'emitter' });
    expect(line.heard).toEqual([
      refused(
        'seat-in-use',
        'The emitter phone of this job is connected. Close it there first.',
        'invite-0001',
      ),
    ]);
  });
});

describe('R22: a phone that takes in too slowly', () => {
  it.each<[string, number, boolean]>([
    ['as much as may wait', 1024 * 1024, false],
    ['a byte more', 1024 * 1024 + 1, true],
  ])('is cut where more waits than may: %s', async (_, waiting, isCut) => {
    const house = new House();
    const { line, job } = await panelIn(house);
    line.waiting = waiting;
    await line.raw('{"t":"ping","n":1}');
    expect(line.news).toEqual(isCut ? [] : ['pong']);
    expect(line.ended).toBe(isCut ? 'cut' : undefined);
    if (!isCut) return;
    expect(house.journal).toMatchObject([
      { role: 'panel', msg: 'a phone reads too slowly and was cut; it can resume' },
    ]);
    // Until its socket has closed it is still told what happens, and is cut once only.
    const room = await house.room(job);
    room.tell({ t: 'presence', presence: room.presence() });
    expect(house.journal).toHaveLength(1);
    await line.hangUp();
    expect(room.isOnline('panel')).toBe(false);
  });

  it('is not waited for in the middle of its history', async () => {
    const house = new House({ limits: { historyBatch: 2 } });
    const { token } = await house.open();
    const line = house.line();
    line.held = true;
    await line.hello(token);
    line.waiting = 1024 * 1024 + 1;
    await line.arrive();
    expect(line.ended).toBe('cut');
    expect(line.all('caught-up')).toEqual([]);
    expect(house.journal).toHaveLength(1);
  });
});

it('a phone that is told of no entries is sent nothing', async () => {
  const { line } = await panelIn(new House());
  line.connection.entries([]);
  expect(line.heard).toEqual([]);
});

it('a server that stops sends its phones away, each once', async () => {
  const house = new House();
  const { line } = await panelIn(house);
  await house.rooms.close();
  expect(line.ended).toEqual({ code: 1001, reason: 'the server stops' });
  line.ended = undefined;
  line.connection.goAway();
  expect(line.ended).toBeUndefined();
});
