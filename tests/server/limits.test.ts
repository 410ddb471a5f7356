import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect as tlsConnect } from 'node:tls';
import { afterAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import { LIMITS } from '../../server/guard/limits.ts';
import { ownCertificate } from '../../server/network/certificate.ts';
import {
  DAY_OF_LOG_FULL,
  DAY_OF_PLACE_FULL,
  NOT_LISTENING,
  tooManyWatchersText,
} from '../../src/phrases/limits.ts';
import { SiteOpened } from '../../src/protocol/site.ts';
import { PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import { serve } from './house.ts';
import { House, type Line } from './in-memory.ts';
import { bothIn, openJob, Phone, post, SETUP } from './phone.ts';

const FEW = { burst: 3, perSecond: 1 };
const remark = (id: string) => ({ t: 'remark', id, text: 'Bracket loose.' }) as const;

describe('what a token may say in a second', () => {
  it.each([
    ['one connection', [3]],
    ['three connections, one after the other', [1, 1, 1]],
    ['a connection that is replaced before its hello is answered', [2, 1]],
  ])('R12: is counted by the token, over %s', async (_, parts) => {
    const house = new House({ limits: { messages: FEW } });
    const { token } = await house.open();
    let sent = 0;
    for (const part of parts) {
      const line = await house.phone(token);
      for (let i = 0; i < part; i++) await line.send(remark(`remark-${++sent}000`));
      expect(line.all('refused')).toEqual([]);
      await line.hangUp();
    }
    const again = await house.phone(token);
    await again.send(remark('one-too-many'));
    expect(again.all('refused').map(({ reason, id }) => [reason, id])).toEqual([
      ['too-fast', 'one-too-many'],
    ]);
    vi.advanceTimersByTime(1_000);
    await again.send(remark('one-too-many'));
    expect(again.all('ack').map(({ id }) => id)).toEqual(['one-too-many']);
  });

  it('R12: counts frames that are sent before hello is answered', async () => {
    const house = new House({ limits: { messages: FEW } });
    const { token } = await house.open();
    const hello = JSON.stringify({ t: 'hello', v: PROTOCOL_VERSION, token, after: -1 });
    const acks: string[] = [];
    for (const round of [1, 2, 3]) {
      const line = house.line();
      line.connection.onText(hello);
      for (const i of [1, 2]) line.connection.onText(JSON.stringify(remark(`remark-${round}-${i}`)));
      await line.raw('{"t":"ping","n":1}');
      acks.push(...line.all('ack').map(({ id }) => id));
    }
    expect(acks).toEqual(['remark-1-1', 'remark-1-2', 'remark-2-1']);
  });

  it("R12: is nobody else's", async () => {
    const house = new House({ limits: { messages: FEW } });
    const job = await house.open();
    const panel = await house.phone(job.token);
    const emitter = await house.phone(await house.join(job));
    for (let i = 0; i < 5; i++) await panel.send(remark(`panel-000${i}`));
    await emitter.send(remark('emitter-0001'));
    expect(emitter.all('ack')).toHaveLength(1);
  });

  it('R12: a second hello with another token opens no other allowance', async () => {
    const house = new House({ limits: { messages: FEW } });
    const { token } = await house.open();
    const line = await house.phone(token);
    for (let i = 0; i < 3; i++) await line.send(remark(`remark-000${i}`));
    await line.hello('A'.repeat(22));
    await line.send(remark('remark-0004'));
    expect(line.all('refused').map(({ reason }) => reason)).toEqual(['bad-message', 'too-fast']);
  });

  it('R25: the sound of a token is counted over its connections', async () => {
    const house = new House({
      limits: { sound: { burst: 100, perSecond: 1 } },
      speech: { name: 'test', transcribe: () => new Promise(() => {}), close: async () => {} },
    });
    const { token } = await house.open();
    const refused: string[] = [];
    for (const id of ['talk-0001', 'talk-0002']) {
      const line = await house.phone(token);
      await line.send({ t: 'talk', id });
      await line.sound(52);
      refused.push(...line.all('refused').map(({ reason }) => reason));
      await line.hangUp();
    }
    expect(refused).toEqual(['too-fast']);
  });

  it('R12: who goes on is ended', async () => {
    const house = new House({ limits: { messages: { burst: 1, perSecond: 0 }, refusals: FEW } });
    const { token } = await house.open();
    const line = await house.phone(token);
    for (let i = 0; i < 4; i++) await line.send(remark(`remark-000${i}`));
    expect(line.ended).toBeUndefined();
    await line.send(remark('remark-0004'));
    expect(line.all('refused').at(-1)).toMatchObject({ reason: 'too-fast', text: NOT_LISTENING });
    expect(line.ended).toEqual({ code: 4429, reason: 'too-fast' });
  });
});

describe('connections that say nothing', () => {
  const answerTo = async (phone: Phone) => {
    const status = new Promise<number | undefined>((resolve) => {
      phone.socket.once('unexpected-response', (_, response) => resolve(response.statusCode));
      phone.socket.once('open', () => resolve(101));
    });
    return status;
  };

  it.each([
    [1, 101],
    [2, 429],
  ])('R70: with %i of a block, the next is answered %i', async (silent, answer) => {
    const { url } = await serve({ limits: { maxSilentPerBlock: 2 } });
    const { token } = await openJob(url);
    // One that has said hello is not silent.
    await Phone.at(url, token);
    for (let i = 0; i < silent; i++) expect(await answerTo(new Phone(url))).toBe(101);
    expect(await answerTo(new Phone(url))).toBe(answer);
  });

  it('R70: make room for others when their time is over', async () => {
    const { url } = await serve({ limits: { maxSilentPerBlock: 1, helloWithinMs: 50 } });
    const silent = new Phone(url);
    expect((await silent.closed).code).toBe(4400);
    expect(await answerTo(new Phone(url))).toBe(101);
  });

  it('R70: give way when every place is taken; those who said hello never do', async () => {
    const { url } = await serve({ limits: { maxConnections: 3 } });
    const { panel, emitter } = await bothIn(url);
    const silent = new Phone(url);
    await silent.opened();
    const { token } = await openJob(url);
    const other = await Phone.at(url, token);
    expect((await silent.closed).code).toBe(1006);
    expect(await answerTo(new Phone(url))).toBe(503);
    for (const phone of [panel, emitter, other]) expect(phone.socket.readyState).toBe(phone.socket.OPEN);
  });

  it.each([
    [1, 101],
    [2, 429],
  ])(
    'R70: with %i places of a block taken by those who said hello, the next is answered %i',
    async (taken, answer) => {
      const { url } = await serve({ limits: { maxConnectionsPerBlock: 2 } });
      const { token, watch } = await openJob(url);
      for (const each of [token, watch].slice(0, taken)) await Phone.at(url, each);
      expect(await answerTo(new Phone(url))).toBe(answer);
    },
  );
});

describe('connections on which no request comes', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-limits-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  const { pair: tls } = await ownCertificate(folder, { names: [], addresses: ['127.0.0.1'] }, Date.now());
  /** What came back, and after it ended. */
  const answerTo = (port: number, sent: string, secure: boolean) =>
    new Promise<string>((resolve) => {
      const socket: Socket = secure
        ? tlsConnect({ port, rejectUnauthorized: false }, () => socket.write(sent))
        : connect(port, '127.0.0.1', () => socket.write(sent));
      let came = '';
      socket.on('error', () => {});
      socket.on('data', (part) => {
        came += part;
      });
      socket.on('close', () => resolve(came.split('\r\n')[0] ?? ''));
    });
  const HALF_A_LINE = 'GET / HT';
  const HALF_A_BODY = 'POST /api/jobs HTTP/1.1\r\nHost: localhost\r\nContent-Length: 9\r\n\r\n{';
  const LATE = 'HTTP/1.1 408 Request Timeout';

  it.each([
    ['plain', '', LATE],
    ['plain', HALF_A_LINE, LATE],
    ['plain', HALF_A_BODY, LATE],
    ['plain beside TLS', '', ''],
    ['plain beside TLS', HALF_A_LINE, LATE],
    ['plain beside TLS', HALF_A_BODY, LATE],
    ['TLS', '', LATE],
    ['TLS', HALF_A_LINE, LATE],
    ['TLS', HALF_A_BODY, LATE],
  ])('R70: are ended in a while: %s, %j', async (way, sent, answer) => {
    const secured = way === 'plain' ? {} : { tls };
    const { port } = await serve({ limits: { headersWithinMs: 100, requestWithinMs: 200 }, ...secured });
    expect(await answerTo(port, sent, way === 'TLS')).toBe(answer);
  });

  it.each([
    [1, 'HTTP/1.1 200 OK'],
    [2, ''],
  ])('R70: with %i silent ones of a block, the next request is answered %j', async (many, answer) => {
    const { port } = await serve({ limits: { maxSilentPerBlock: 2 } });
    for (let i = 0; i < many; i++) {
      const silent = connect(port, '127.0.0.1');
      onTestFinished(() => void silent.destroy());
      await once(silent, 'connect');
    }
    const request = 'GET /api/health HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n';
    expect(await answerTo(port, request, false)).toBe(answer);
  });
});

describe('watchers of one job', () => {
  it.each([
    [1, undefined],
    [2, { code: 4429, reason: 'too-fast' }],
  ])('R71: with %i of at most two, the next is let in or told to wait', async (there, ended) => {
    const house = new House({ limits: { maxWatchers: 2 } });
    const { watch, token } = await house.open();
    await house.phone(token);
    for (let i = 0; i < there; i++) await house.phone(watch);
    const next = await house.phone(watch);
    expect(next.ended).toEqual(ended);
    if (ended)
      expect(next.heard).toEqual([{ t: 'refused', reason: 'too-fast', text: tooManyWatchersText(2) }]);
  });

  it('R71: the crew is let in however many watch', async () => {
    const house = new House({ limits: { maxWatchers: 1 } });
    const { watch, token } = await house.open();
    await house.phone(watch);
    expect((await house.phone(token)).ended).toBeUndefined();
  });
});

describe('what may be written in a day', () => {
  const DAY = 24 * 60 * 60;
  const day = (most: number) => ({ burst: most, perSecond: most / DAY });
  const frame = (id: string) => JSON.stringify(remark(id));
  const bytes = frame('remark-0001').length;
  const hello = JSON.stringify({ t: 'hello', v: PROTOCOL_VERSION, token: 'A'.repeat(22), after: -1 }).length;
  const texts = (line: Line) => line.all('refused').map(({ text }) => text);

  it.each([
    [2 * bytes, []],
    [2 * bytes - 1, [DAY_OF_LOG_FULL]],
  ])('R72: of %i bytes to one log, two remarks leave %j', async (most, refusals) => {
    const house = new House({ limits: { logBytesPerDay: day(most) } });
    const line = await house.phone((await house.open()).token);
    for (const id of ['remark-0001', 'remark-0002']) await line.send(remark(id));
    expect(texts(line)).toEqual(refusals);
    const other = await house.phone((await house.open()).token);
    await other.send(remark('remark-0001'));
    expect(texts(other)).toEqual([]);
  });

  it.each([
    [hello + 2 * bytes, []],
    [hello + 2 * bytes - 1, [DAY_OF_PLACE_FULL]],
  ])(
    'R72: of %i bytes from one block of addresses, a hello and two remarks leave %j',
    async (most, refusals) => {
      const house = new House({ limits: { bytesPerDay: day(most) } });
      const { token } = await house.open();
      const line = await house.phone(token);
      for (const id of ['remark-0001', 'remark-0002']) await line.send(remark(id));
      expect(texts(line)).toEqual(refusals);
      const elsewhere = await house.line('198.51.100').hello(token);
      await elsewhere.send(remark('remark-0003'));
      expect(texts(elsewhere)).toEqual([]);
    },
  );

  const statuses = async (url: string, path: string, body: object, headers = {}) => {
    const all: [number, string][] = [];
    for (let i = 0; i < 3; i++) {
      const answer = await post(url, path, body, headers);
      all.push([answer.status, ((await answer.json()) as { reason?: string }).reason ?? '']);
    }
    return all;
  };
  const TWO_OF_THREE = [
    [201, ''],
    [201, ''],
    [429, 'too-fast'],
  ];

  it('R72: jobs and sites, each for itself', async () => {
    const { url } = await serve({ limits: { jobsPerDay: day(2), sitesPerDay: day(2) } });
    expect(await statuses(url, '/api/jobs', { setup: SETUP })).toEqual(TWO_OF_THREE);
    expect(await statuses(url, '/api/sites', { site: 'Larkmoor hall' })).toEqual(TWO_OF_THREE);
  });

  it('R72: what the desk writes counts for the log of its site, and what a body holds for the address', async () => {
    const { url } = await serve({ limits: { logBytesPerDay: day(150), bytesPerDay: day(1_000) } });
    const { desk } = SiteOpened.parse(
      await (await post(url, '/api/sites', { site: 'Larkmoor hall' })).json(),
    );
    const headers = { authorization: `Bearer ${desk}` };
    const units = (id: string) => ({ id, units: { length: 'ft' } });
    const write = async (id: string) => (await post(url, '/api/site/units', units(id), headers)).status;
    expect([await write('first-0001'), await write('second-0001'), await write('third-0001')]).toEqual([
      200, 200, 200,
    ]);
    const full = await post(url, '/api/site/units', units('fourth-0001'), headers);
    expect(full.status).toBe(429);
    expect(await full.json()).toEqual({ reason: 'too-fast', text: DAY_OF_LOG_FULL });
    const large = await post(url, '/api/site/pairs', { id: 'x'.repeat(900) }, headers);
    expect(await large.json()).toEqual({ reason: 'too-fast', text: DAY_OF_PLACE_FULL });
  });

  it('R72: leaves room for a firm of five hundred crews', () => {
    const visit = { jobs: 4, bytes: 1024 ** 2 };
    expect(LIMITS.jobsPerDay.burst).toBeGreaterThanOrEqual(500 * visit.jobs);
    expect(LIMITS.bytesPerDay.burst).toBeGreaterThanOrEqual(500 * visit.jobs * visit.bytes);
    expect(LIMITS.jobsPerDay.perSecond * DAY).toBeCloseTo(LIMITS.jobsPerDay.burst);
  });
});
