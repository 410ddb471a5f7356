import assert from 'node:assert/strict';
import fc from 'fast-check';
import { pino } from 'pino';
import { DailyAllowances, TokenAllowances } from '../../server/guard/allowance.ts';
import { LastSeen } from '../../server/guard/last-seen.ts';
import { LIMITS } from '../../server/guard/limits.ts';
import { HeavyWork } from '../../server/guard/turns.ts';
import { Connection, type ConnectionDeps } from '../../server/jobs/connection.ts';
import { Rooms } from '../../server/jobs/rooms.ts';
import { Reads } from '../../server/reads/reads.ts';
import { type SpeechEngine, SpeechService } from '../../server/speech/service.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { Telemetry } from '../../server/telemetry/telemetry.ts';
import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import { toJsonLines } from '../../src/log/json-lines.ts';
import type { Draft, Entry } from '../../src/model/entry.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { HttpRefusal } from '../../src/protocol/jobs.ts';
import { ROUTES, type Route } from '../../src/protocol/routes.ts';
import { MAX_FRAME_BYTES, PROTOCOL_VERSION, ServerMessage } from '../../src/protocol/socket.ts';
import { pairsToCsv, readPairs } from '../../src/site/pair-table.ts';
import { readPairsXlsx } from '../../src/site/pair-workbook.ts';
import { verified } from '../verify/checked.ts';
import { ManualClock, settle } from './manual-clock.ts';
import { SETUP } from './phone.ts';

/** Input that nobody should send, past the first gate: with good tokens, good ids, and forms that are nearly right. */

const text = fc.oneof(
  fc.constantFrom(
    'forty two',
    'done',
    'accept',
    'no signal',
    'saturated',
    'one four two',
    '',
    ' ',
    '=1+1',
    '1e999',
    '-0',
  ),
  fc.string({ maxLength: 600 }),
  fc.string({ unit: 'binary', maxLength: 40 }),
);
const anything = fc.oneof(
  fc.jsonValue({ maxDepth: 2 }),
  text,
  fc.constantFrom(null, -1, 2 ** 53, 1e308, [], {}, '__proto__', 'constructor', { __proto__: null }),
);
/** Few, so that they meet again. */
const id = fc.integer({ min: 0, max: 30 }).map((n) => `message-${String(n).padStart(4, '0')}`);
const seq = fc.oneof(fc.integer({ min: 0, max: 60 }), fc.integer());
const message = fc.oneof(
  fc.record({
    t: fc.constant('say'),
    id,
    via: fc.constantFrom('typed', 'button'),
    text,
    re: fc.option(seq, { nil: undefined }),
  }),
  fc.record({
    t: fc.constant('say'),
    id,
    via: fc.constant('voice'),
    text,
    confidence: fc.double({ min: 0, max: 1, noNaN: true }),
  }),
  fc.record({ t: fc.constant('remark'), id, text }),
  fc.record({ t: fc.constant('correct'), id, target: seq, text }),
  fc.record({ t: fc.constant('take-back'), id, target: seq }),
  fc.record({ t: fc.constant('override'), id, reason: text }),
  fc.record({ t: fc.constant('person'), id, person: fc.record({ name: text, firm: text }) }),
  fc.record({
    t: fc.constant('hand-over'),
    id,
    fact: fc.record({
      type: fc.constantFrom('as-left', 'conditions', 'variation', 'next-due', 'step', 'struck-out'),
      values: fc.constant({ gain: '3' }),
      what: text,
      entry: seq,
      why: text,
    }),
  }),
  fc.record({
    t: fc.constantFrom('talk', 'talk-end', 'talk-drop'),
    id,
    re: fc.option(seq, { nil: undefined }),
  }),
  fc.record({ t: fc.constant('invite'), id, seat: fc.constantFrom('panel', 'emitter') }),
  fc.record({ t: fc.constant('ping'), n: fc.integer() }),
);
/** One field taken away, or with something else in it; or one that is not known. */
const bent = fc
  .tuple(message, fc.nat(9), anything, fc.boolean())
  .map(([whole, at, other, isGone]): Record<string, unknown> => {
    const keys = [...Object.keys(whole), 'alternatives', '__proto__', 'more'];
    const key = keys[at % keys.length] as string;
    const { [key as keyof typeof whole]: _, ...rest } = whole;
    return isGone ? rest : { ...rest, [key]: other };
  });
const torn = fc
  .tuple(message, fc.nat(), fc.string({ unit: 'binary', maxLength: 4 }))
  .map(([whole, at, bytes]) => {
    const line = JSON.stringify(whole);
    const where = at % (line.length + 1);
    return line.slice(0, where) + bytes + line.slice(where + bytes.length);
  });
const frame = fc.record({
  from: fc.nat(2),
  sent: fc.oneof(
    { weight: 6, arbitrary: message.map((whole) => JSON.stringify(whole)) },
    { weight: 6, arbitrary: bent.map((whole) => JSON.stringify(whole)) },
    { weight: 2, arbitrary: torn },
    { weight: 1, arbitrary: anything.map((value) => JSON.stringify(value)) },
    { weight: 2, arbitrary: fc.uint8Array({ maxLength: 200 }).map((bytes) => Buffer.from(bytes)) },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        Buffer.alloc(MAX_FRAME_BYTES),
        '['.repeat(MAX_FRAME_BYTES),
        '{"a":'.repeat(10_000),
      ),
    },
  ),
});
export const frames = fc.array(frame, { minLength: 30, maxLength: 80, size: 'max' });

/** Hears something else in every sound, and sometimes fails. */
const ears = (): SpeechEngine => {
  let heard = 0;
  return {
    name: 'test',
    transcribe: async () => {
      heard += 1;
      if (heard % 5 === 0) throw new Error('deaf');
      const word = heard % 2 === 0 ? 'forty two' : '';
      return { text: word, confidence: 0.9, alternatives: [{ text: word, confidence: 0.9 }], ms: 1 };
    },
    close: async () => {},
  };
};

/** Sends frames to a job. Rejects where one of them breaks something, or an acknowledged one is not in the log. */
export async function sendFrames(all: readonly { from: number; sent: string | Buffer }[]): Promise<void> {
  const store = new MemoryStore();
  const clock = new ManualClock();
  const errors: unknown[] = [];
  const log = pino({ level: 'error' }, { write: (line: string) => void errors.push(line) });
  const telemetry = new Telemetry(log);
  const limits = { ...LIMITS, messages: { burst: 1e9, perSecond: 0 }, maxBadFrames: 1e9 };
  const rooms = new Rooms({ store, clock, log, telemetry, graceMs: 1e6 }, limits);
  const speech = new SpeechService(ears(), limits, log);
  const deps: ConnectionDeps = {
    rooms,
    store,
    speech,
    clock,
    limits,
    heavy: new HeavyWork(limits),
    daily: new DailyAllowances(limits),
    allowances: new TokenAllowances(limits),
    seen: new LastSeen(),
    reads: new Reads({ store, clock, log }),
    log,
    telemetry,
  };
  const opened = await rooms.open({ setup: SETUP, device: '' });
  assert(opened.kind === 'ok');
  const joined = await rooms.join(opened.value.invite.code, { device: '' });
  assert(joined.kind === 'ok');
  const acked = new Map<string, number>();
  let pongs = 0;
  const hear = (line: string) => {
    const said = ServerMessage.parse(JSON.parse(line));
    if (said.t === 'ack') {
      assert.equal(acked.get(said.id) ?? said.seq, said.seq, 'a message has one place');
      acked.set(said.id, said.seq);
    }
    if (said.t === 'pong' && said.n === 424_242) pongs += 1;
  };
  const ended: string[] = [];
  const connections = [opened.value.token, joined.value.token, opened.value.watch].map((token) => {
    const connection = new Connection(
      {
        block: '192.0.2',
        send: (line, sent) => {
          hear(String(line));
          sent?.();
        },
        close: (_, reason) => ended.push(reason),
        cut: () => ended.push('cut'),
        waiting: 0,
      },
      deps,
    );
    connection.onText(JSON.stringify({ t: 'hello', v: PROTOCOL_VERSION, token, after: -1 }));
    return connection;
  });
  await settle();
  for (const { from, sent } of all) {
    const connection = connections[from];
    if (typeof sent === 'string') connection?.onText(sent);
    else connection?.onSound(sent);
    // Some at once, as they come from a line.
    if (sent.length % 3 === 0) await settle();
  }
  for (let calm = 0; calm < 20; calm++) await settle();
  for (const connection of connections) connection.onText('{"t":"ping","n":424242}');
  const { job } = opened.value;
  const entries = await store.read(job, -1, 100_000);
  for (const connection of connections) connection.onClose();
  await rooms.close();
  speech.close();

  assert.deepEqual(ended, [], 'no frame ends a connection');
  assert.equal(pongs, connections.length, 'every connection still answers');
  assert.deepEqual(errors, [], 'nothing fails in the server');
  assert.equal(await store.audit(job), undefined, 'the log is whole');
  for (const [ref, place] of acked) {
    assert.equal(
      entries.filter((entry) => entry.ref === ref).length,
      ref === entries[place]?.ref ? 1 : 0,
      `${ref} is in the log once`,
    );
  }
}

/** A request to one of the routes. `as`: whose token. */
export const request = fc.record({
  route: fc.constantFrom(...Object.values(ROUTES as Record<string, Route>)),
  as: fc.constantFrom('panel', 'watcher', 'desk', 'reader', 'nobody'),
  query: fc.dictionary(
    fc.constantFrom('job', 'id', 'seq', 'zone', 'text', 'rate', 'from', 'to', 'shows', 'caption'),
    fc.oneof(text, fc.constantFrom('JOB', '0', '1', '-1', 'UTC')),
    { maxKeys: 4 },
  ),
  body: fc.oneof(
    bent,
    fc.record(
      {
        id,
        job: fc.constantFrom('JOB', 'V1StGXR8_Z5j', '__proto__'),
        pair: fc.constantFrom('A', 'B', '__proto__', 'constructor'),
        pairs: fc.oneof(
          fc.array(fc.record({ id: text, name: text, pathLength: anything }), { maxLength: 3 }),
          anything,
        ),
        code: text,
        site: text,
        reason: text,
        fact: anything,
        setup: fc.oneof(fc.constant(SETUP), anything),
        units: anything,
        steps: anything,
        head: anything,
        signature: anything,
      },
      { requiredKeys: [] },
    ),
    anything,
  ),
});

/** Sends one request. Rejects where the answer is no answer of the protocol. */
export async function sendRequest(
  url: string,
  tokens: Readonly<Record<string, string>>,
  job: string,
  { route, as, query, body }: typeof request extends fc.Arbitrary<infer R> ? R : never,
): Promise<void> {
  const { method, path } = route;
  const named = (value: string) => (value === 'JOB' ? job : value);
  const search = new URLSearchParams(Object.entries(query).map(([key, value]) => [key, named(value)]));
  const token = tokens[as];
  const response = await fetch(`${url}/api${path}?${search}`, {
    method,
    headers: token === undefined ? {} : { authorization: `Bearer ${token}` },
    ...(method.toLowerCase() !== 'get' && {
      body: JSON.stringify(body).replaceAll('"JOB"', JSON.stringify(job)),
    }),
  });
  const answer = await response.text();
  if (response.ok) return;
  const { reason } = HttpRefusal.parse(JSON.parse(answer));
  assert(reason !== 'store-failed', `${method} ${path} as ${as} failed inside: ${answer}`);
}

export const PLANS: readonly PairPlan[] = [
  { id: 'A1', name: 'North', pathLength: 60, emitterHeight: 9.4, alarmDelay: 10 },
];
const PROFILES = { meters: NEUTRAL_METERS, adjusters: [NEUTRAL_ADJUSTERS] };
const TABLE = pairsToCsv(PLANS);

/** A file with some of its bytes changed, taken out or put in. */
const spoilt = (whole: Uint8Array) =>
  fc
    .array(fc.tuple(fc.nat(), fc.uint8Array({ maxLength: 6 }), fc.nat({ max: 6 })), {
      minLength: 1,
      maxLength: 4,
    })
    .map((changes) =>
      changes.reduce((bytes, [at, put, out]) => {
        const where = at % (bytes.length + 1);
        return Buffer.concat([bytes.subarray(0, where), put, bytes.subarray(where + out)]);
      }, Buffer.from(whole)),
    );

export const spoiltTable = fc.oneof(
  spoilt(Buffer.from(TABLE)).map(String),
  fc
    .array(fc.array(text, { maxLength: 12 }), { maxLength: 6 })
    .map((rows) => [TABLE.split('\n')[0], ...rows.map((row) => row.join(','))].join('\n')),
  fc.string({ unit: 'binary', maxLength: 300 }),
);
/** Throws only where reading throws. */
export const readTable = (table: string): void => void readPairs(table, { profiles: PROFILES });

export const spoiltBook = spoilt;
export const readBook = async (book: Uint8Array): Promise<void> =>
  void (await readPairsXlsx(new Uint8Array(book), { profiles: PROFILES }));

export const spoiltLog = (log: string) =>
  fc.oneof(
    spoilt(Buffer.from(log)).map(String),
    fc.tuple(fc.nat(), fc.nat(9), anything).map(([at, field, other]) => {
      const lines = log.split('\n');
      const where = at % (lines.length - 1);
      const line = JSON.parse(lines[where] ?? '{}');
      const keys = Object.keys(line);
      lines[where] = JSON.stringify({ ...line, [keys[field % keys.length] ?? 'fact']: other });
      return lines.join('\n');
    }),
  );
/** A file that was changed is never "good": this throws where it is, and where checking throws. */
export function checkLog(log: string, changed: string): void {
  const { ok } = verified(changed);
  if (ok && changed.trim() !== log.trim()) {
    const same = (file: string) =>
      file
        .trim()
        .split('\n')
        .map((line) => JSON.stringify(JSON.parse(line)));
    assert.deepEqual(same(changed), same(log), 'a changed log passes');
  }
}

/** Entries changed and chained again, as somebody can who has only the file: the chain is right, and what it tells is not. */
export const forged = (entries: readonly Entry[]) =>
  fc
    .array(
      fc.tuple(
        fc.nat(entries.length - 1),
        fc.nat(entries.length - 1),
        fc.constantFrom('swap', 'drop', 'copy', 'number'),
        fc.oneof(fc.integer(), fc.double({ noNaN: true, noDefaultInfinity: true })),
      ),
      { minLength: 1, maxLength: 4 },
    )
    .map((changes) => {
      let facts: Pick<Entry, 'at' | 'actor' | 'fact' | 'ref'>[] = [...entries];
      for (const [one, other, how, value] of changes) {
        const [a, b] = [facts[one], facts[other]];
        if (!a || !b) continue;
        if (how === 'swap') facts = facts.with(one, b).with(other, a);
        else if (how === 'drop') facts = facts.toSpliced(one, 1);
        else if (how === 'copy') facts = facts.toSpliced(one, 0, b);
        else
          facts = facts.with(one, {
            ...a,
            fact: JSON.parse(JSON.stringify(a.fact).replace(/:-?\d+(?:\.\d+)?(?:e[-+]\d+)?/, `:${value}`)),
          });
      }
      let head = emptyHead(entries[0]?.job ?? '');
      const sealed = facts.map(({ at, actor, fact, ref }) => {
        const entry = seal(head, { actor, fact, ...(ref !== undefined && { ref }) } as Draft, at);
        head = headAfter(entry);
        return entry;
      });
      return toJsonLines(sealed, head);
    });
/** Throws only where checking throws: whether a forged log can be told from an honest one is in tests/verify. */
export const checkForged = (log: string): void => void verified(log);
