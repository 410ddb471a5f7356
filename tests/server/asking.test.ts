import { describe, expect, it } from 'vitest';
import { MemoryStore } from '../../server/store/memory.ts';
import { AskAnswer, Asked } from '../../src/protocol/ask.ts';
import { CALL_WORDS, callOf } from '../../src/protocol/call-words.ts';
import { PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import { serve } from './house.ts';
import { ManualClock } from './manual-clock.ts';
import { bothIn, get, join, newId, openJob, Phone, post } from './phone.ts';

const PHONE = 'V1StGXR8_Z5jdHi6B-myT';

const refusalOf = async (response: Response) => ({
  status: response.status,
  ...((await response.json()) as { reason: string; text: string }),
});

const ask = (url: string, word: string, more: object = {}) =>
  post(url, '/api/ask', { word, device: 'emitter phone', ...more });
const asked = async (response: Response): Promise<Asked> => Asked.parse(await response.json());
const answerTo = async (url: string, asker: string) =>
  AskAnswer.parse(await (await get(url, '/api/ask', asker)).json());

/** A job with its panel connected, and the word under which it is asked. */
async function atPanel(url: string) {
  const job = await openJob(url);
  const panel = await Phone.at(url, job.token);
  const { word = '' } = await panel.next('welcome');
  return { job, panel, word };
}

const shown = async (panel: Phone, mark: string) => {
  const { asks } = await panel.next('ask', (m) => m.asks?.mark === mark);
  if (!asks) throw new Error('nothing was asked');
  return asks;
};

describe('a phone that asks the panel', () => {
  it('R100: is let in after a yes, with the key that it asked with; the log says so', async () => {
    const { url } = await serve();
    const { job, panel, word } = await atPanel(url);
    expect(word).toMatch(/^[A-Z]+ \d{3}$/);
    const { asker, mark } = await asked(await ask(url, word.toLowerCase().replace(' ', '-')));
    expect(await answerTo(url, asker)).toMatchObject({ state: 'waiting', mark });
    const asks = await shown(panel, mark);
    expect(asks).toMatchObject({ device: 'emitter phone', replaces: false });
    const id = panel.send({ t: 'admit', ask: asks.ask, answer: 'yes' });
    await panel.ack(id);
    expect(await answerTo(url, asker)).toEqual({ state: 'admitted', job: job.job, seat: 'emitter' });
    const emitter = await Phone.at(url, asker);
    expect((await emitter.next('welcome')).role).toBe('emitter');
    expect((await panel.next('ask', (m) => m.asks === undefined)).asks).toBeUndefined();
    expect(emitter.entries.filter(({ fact }) => ['admission', 'seated'].includes(fact.type))).toMatchObject([
      { fact: { type: 'seated', seat: 'panel' } },
      { actor: 'panel', ref: id, fact: { type: 'admission', seat: 'emitter', mark, answer: 'yes' } },
      { fact: { type: 'seated', seat: 'emitter', takeover: false } },
    ]);
  });

  it('R100: opens nothing with its key before the yes, and no code for the seat is good after it', async () => {
    const { url } = await serve();
    const { job, panel, word } = await atPanel(url);
    const { asker, mark } = await asked(await ask(url, word));
    const early = new Phone(url);
    await early.opened();
    early.send({ t: 'hello', v: PROTOCOL_VERSION, token: asker, after: -1 });
    expect((await early.next('refused')).reason).toBe('bad-token');
    expect((await get(url, '/api/record', asker)).status).toBe(401);
    await panel.ack(panel.send({ t: 'admit', ask: (await shown(panel, mark)).ask, answer: 'yes' }));
    expect((await get(url, '/api/record', asker)).status).toBe(200);
    expect(await refusalOf(await post(url, '/api/join', { code: job.invite.code }))).toMatchObject({
      reason: 'bad-code',
    });
  });

  it('R101: a no turns it away, is in the log without a name, and gives no seat', async () => {
    const { url } = await serve();
    const { panel, word } = await atPanel(url);
    const person = { name: 'B. Example' };
    const { asker, mark } = await asked(await ask(url, word, { person }));
    const asks = await shown(panel, mark);
    expect(asks.person).toEqual(person);
    const before = panel.entries.length;
    const id = panel.send({ t: 'admit', ask: asks.ask, answer: 'no' });
    const seq = await panel.ack(id);
    expect(await answerTo(url, asker)).toEqual({ state: 'turned-away' });
    const entry = await panel.entry((e) => e.seq === seq);
    expect(entry.fact).toEqual({
      type: 'admission',
      seat: 'emitter',
      device: 'emitter phone',
      mark,
      answer: 'no',
    });
    expect(panel.entries).toHaveLength(before + 1);
    expect((await get(url, '/api/record', asker)).status).toBe(401);
    // The same answer again is the same entry; another answer to it comes too late.
    panel.send({ t: 'admit', id, ask: asks.ask, answer: 'no' });
    const late = panel.send({ t: 'admit', ask: asks.ask, answer: 'yes' });
    expect((await panel.refusal(late)).reason).toBe('bad-target');
    expect(
      panel
        .all('ack')
        .filter((m) => m.id === id)
        .map((m) => m.seq),
    ).toEqual([seq, seq]);
    expect(panel.entries).toHaveLength(before + 1);
  });

  it('R102: of two askers the second waits its turn, and the marks tell them apart', async () => {
    const { url } = await serve();
    const { panel, word } = await atPanel(url);
    const first = await asked(await ask(url, word, { device: 'wrong phone' }));
    expect(await refusalOf(await ask(url, word, { device: 'right phone' }))).toMatchObject({
      status: 409,
      reason: 'not-now',
      text: expect.stringContaining('Another phone asks'),
    });
    const wrong = await shown(panel, first.mark);
    expect(wrong.device).toBe('wrong phone');
    await panel.ack(panel.send({ t: 'admit', ask: wrong.ask, answer: 'no' }));
    const second = await asked(await ask(url, word, { device: 'right phone' }));
    expect(second.asker).not.toBe(first.asker);
    await panel.ack(panel.send({ t: 'admit', ask: (await shown(panel, second.mark)).ask, answer: 'yes' }));
    expect(await answerTo(url, first.asker)).toEqual({ state: 'turned-away' });
    expect(await answerTo(url, second.asker)).toMatchObject({ state: 'admitted' });
  });

  it('R102: the same phone that asks again keeps its question and its mark, and gets a new key to it', async () => {
    const { url } = await serve();
    const { panel, word } = await atPanel(url);
    const first = await asked(await ask(url, word, { phone: PHONE }));
    const again = await asked(await ask(url, word, { phone: PHONE }));
    expect({ mark: again.mark, expiresAt: again.expiresAt }).toEqual({
      mark: first.mark,
      expiresAt: first.expiresAt,
    });
    expect(panel.all('ask')).toHaveLength(1);
    await panel.ack(panel.send({ t: 'admit', ask: (await shown(panel, again.mark)).ask, answer: 'yes' }));
    expect(await refusalOf(await get(url, '/api/ask', first.asker))).toMatchObject({ reason: 'bad-token' });
    expect((await get(url, '/api/record', first.asker)).status).toBe(401);
    expect(await answerTo(url, again.asker)).toMatchObject({ state: 'admitted' });
  });

  it('R102: nobody is asked where the panel is away; one that comes back is asked what still waits', async () => {
    const { url } = await serve();
    const { job, panel, word } = await atPanel(url);
    const { asker, mark } = await asked(await ask(url, word));
    await panel.hangUp();
    const back = await Phone.at(url, job.token);
    expect((await back.next('welcome')).word).toBe(word);
    await back.ack(back.send({ t: 'admit', ask: (await shown(back, mark)).ask, answer: 'no' }));
    expect(await answerTo(url, asker)).toEqual({ state: 'turned-away' });
    const watcher = await Phone.at(url, job.watch);
    await back.hangUp();
    await watcher.presence((p) => p.panel === 'away');
    expect(await refusalOf(await ask(url, word))).toMatchObject({
      reason: 'not-now',
      text: expect.stringContaining('not connected'),
    });
    expect(watcher.all('ask')).toEqual([]);
  });

  it('R102: a question that nobody answers ends after two minutes, and a late yes lets nobody in', async () => {
    const clock = new ManualClock();
    const { url } = await serve({ clock });
    const { panel, word } = await atPanel(url);
    const { asker, mark, expiresAt } = await asked(await ask(url, word));
    expect(expiresAt - clock.now()).toBe(2 * 60_000);
    const asks = await shown(panel, mark);
    clock.advance(2 * 60_000 - 1);
    expect(await answerTo(url, asker)).toMatchObject({ state: 'waiting' });
    clock.advance(1);
    expect(await answerTo(url, asker)).toEqual({ state: 'unanswered' });
    const late = panel.send({ t: 'admit', ask: asks.ask, answer: 'yes' });
    expect((await panel.refusal(late)).reason).toBe('bad-target');
    expect((await get(url, '/api/record', asker)).status).toBe(401);
  });

  it('R103: after three in a row without a yes the panel is left alone for a quarter of an hour', async () => {
    const clock = new ManualClock();
    const { url } = await serve({ clock });
    const { panel, word } = await atPanel(url);
    const no = async () => {
      const { mark } = await asked(await ask(url, word));
      await panel.ack(panel.send({ t: 'admit', ask: (await shown(panel, mark)).ask, answer: 'no' }));
    };
    await no();
    // Nobody answers this one.
    await asked(await ask(url, word));
    clock.advance(2 * 60_000);
    await no();
    expect(await refusalOf(await ask(url, word))).toMatchObject({
      reason: 'not-now',
      text: expect.stringContaining('quarter of an hour'),
    });
    clock.advance(15 * 60_000 - 1);
    expect((await ask(url, word)).status).toBe(409);
    clock.advance(1);
    expect((await ask(url, word)).status).toBe(201);
  });

  it('R103: one block of addresses asks six times at once, whatever the job and whether the word is right', async () => {
    const { url } = await serve();
    await atPanel(url);
    const tries = [];
    for (let i = 0; i < 6; i++) tries.push(await refusalOf(await ask(url, 'KILO 100')));
    expect(new Set(tries.map(({ reason }) => reason))).toEqual(new Set(['bad-code']));
    expect(await refusalOf(await ask(url, 'KILO 100'))).toMatchObject({ status: 429, reason: 'too-fast' });
  });

  it('R104: the seat of a phone that is online cannot be asked for; of one that is away, the panel is told', async () => {
    const { url } = await serve();
    const { panel, word, job } = await atPanel(url);
    const { token } = await join(url, job.invite.code);
    const emitter = await Phone.at(url, token);
    await panel.presence((p) => p.emitter === 'online');
    expect(await refusalOf(await ask(url, word))).toMatchObject({ status: 409, reason: 'seat-in-use' });
    await emitter.hangUp();
    await panel.presence((p) => p.emitter === 'away');
    const { asker, mark } = await asked(await ask(url, word));
    const asks = await shown(panel, mark);
    expect(asks.replaces).toBe(true);
    await panel.ack(panel.send({ t: 'admit', ask: asks.ask, answer: 'yes' }));
    await panel.entry((e) => e.fact.type === 'seated' && e.fact.seat === 'emitter' && e.fact.takeover);
    expect((await get(url, '/api/record', token)).status).toBe(401);
    expect((await get(url, '/api/record', asker)).status).toBe(200);
  });

  it('R104: a yes is refused while the phone of the seat is back; the question stays', async () => {
    const { url } = await serve();
    const { panel, word, job } = await atPanel(url);
    const { mark } = await asked(await ask(url, word));
    const emitter = await Phone.at(url, (await join(url, job.invite.code)).token);
    await panel.presence((p) => p.emitter === 'online');
    const { ask: question } = await shown(panel, mark);
    const id = panel.send({ t: 'admit', ask: question, answer: 'yes' });
    expect((await panel.refusal(id)).reason).toBe('seat-in-use');
    expect(emitter.all('refused')).toEqual([]);
    await panel.ack(panel.send({ t: 'admit', ask: question, answer: 'no' }));
  });

  it('R104: only the panel answers', async () => {
    const { url } = await serve();
    const { emitter, job } = await bothIn(url);
    const watcher = await Phone.at(url, job.watch);
    for (const other of [emitter, watcher]) {
      const id = other.send({ t: 'admit', ask: 'aaaaaaaaaaaa', answer: 'yes' });
      expect((await other.refusal(id)).reason).toBe('read-only');
    }
    expect((await emitter.next('welcome')).word).toBeUndefined();
    expect((await watcher.next('welcome')).word).toBeUndefined();
  });

  it('R105: a server that starts again knows no questions, but the seat that was given', async () => {
    const store = new MemoryStore();
    const first = await serve({ store: unclosed(store) });
    const { panel, word } = await atPanel(first.url);
    const let1 = await asked(await ask(first.url, word));
    const id = newId();
    panel.send({ t: 'admit', id, ask: (await shown(panel, let1.mark)).ask, answer: 'yes' });
    await panel.ack(id);
    await first.close();
    const second = await serve({ store });
    expect(await answerTo(second.url, let1.asker)).toMatchObject({ state: 'admitted' });
    expect(await refusalOf(await ask(second.url, word))).toMatchObject({ reason: 'bad-code' });
  });
});

/** The same store for the next server: this one does not close it. */
const unclosed = (store: MemoryStore) =>
  new Proxy(store, {
    get(target, key) {
      if (key === 'close') return async () => {};
      const value: unknown = Reflect.get(target, key);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });

describe('the words of the radio', () => {
  it('begin with the letters of the alphabet, in order', () => {
    expect(CALL_WORDS.map(([initial]) => initial).join('')).toBe('ABCDEFGHIJKLMNOPQRSTUVWXYZ');
  });

  it.each([
    ['kilo 417', 'KILO 417'],
    ['K417', 'KILO 417'],
    ['Kilo-417', 'KILO 417'],
    ['alpha 200', 'ALFA 200'],
    ['juliet200', 'JULIETT 200'],
    ['X-ray 23', 'XRAY 23'],
    ['kilo', undefined],
    ['kilo 4', undefined],
    ['king 417', undefined],
    ['417', undefined],
    ['kilo 4170', undefined],
  ])('read %s as %s', (typed, call) => {
    expect(callOf(typed)).toBe(call);
  });
});
