import { nanoid } from 'nanoid';
import { WebSocket } from 'ws';
import type { Entry } from '../../src/model/entry.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { JobOpened, Joined } from '../../src/protocol/jobs.ts';
import {
  type ClientMessage,
  PROTOCOL_VERSION,
  ServerMessage,
  SOCKET_PATH,
} from '../../src/protocol/socket.ts';

type Kind = ServerMessage['t'];
export type TimedAdvice<T extends Kind> = Extract<ServerMessage, { t: T }>;
type Sent = ClientMessage extends infer M
  ? M extends { id: string }
    ? Omit<M, 'id'> & { id?: string }
    : M
  : never;

export const newId = (): string => nanoid();

/** A client without any logic: it sends what the test says, and keeps all it receives. */
export class Phone {
  /** Until what is waited for counts as not coming. */
  static patienceMs = 8_000;
  readonly heard: ServerMessage[] = [];
  readonly socket: WebSocket;
  readonly closed: Promise<{ code: number; reason: string }>;
  private waiting: (() => void)[] = [];

  constructor(url: string, headers: Record<string, string> = {}) {
    this.socket = new WebSocket(`${url.replace(/^http/, 'ws')}${SOCKET_PATH}`, {
      headers,
      rejectUnauthorized: false,
    });
    this.socket.on('message', (data) => {
      // Every frame of the server must be one that the protocol knows.
      this.heard.push(ServerMessage.parse(JSON.parse(String(data))));
      for (const wake of this.waiting.splice(0)) wake();
    });
    this.socket.on('error', () => {});
    this.closed = new Promise((resolve) => {
      this.socket.on('close', (code, reason) => {
        resolve({ code, reason: String(reason) });
        for (const wake of this.waiting.splice(0)) wake();
      });
    });
  }

  /** Connects, and waits until all history has come. */
  static async at(
    url: string,
    token: string,
    after = -1,
    headers: Record<string, string> = {},
  ): Promise<Phone> {
    const phone = new Phone(url, headers);
    await phone.opened();
    phone.send({ t: 'hello', v: PROTOCOL_VERSION, token, after });
    await phone.next('caught-up');
    return phone;
  }

  opened(): Promise<void> {
    return new Promise((resolve, reject) => {
      this.socket.once('open', resolve);
      this.socket.once('error', reject);
    });
  }

  raw(frame: string | Buffer): void {
    this.socket.send(frame);
  }

  /** Returns the message's id; makes one up when none is given. */
  send(message: Sent): string {
    const id = 'id' in message && message.id ? message.id : newId();
    const needsId = message.t !== 'hello' && message.t !== 'ping';
    this.raw(JSON.stringify(needsId ? { ...message, id } : message));
    return id;
  }

  say(text: string, id = newId()): string {
    return this.send({ t: 'say', id, via: 'typed', text });
  }

  remark(text: string, id = newId()): string {
    return this.send({ t: 'remark', id, text });
  }

  /** The first message of this kind that fits, among those that came and those still to come. */
  next<T extends Kind>(kind: T, fits: (m: TimedAdvice<T>) => boolean = () => true): Promise<TimedAdvice<T>> {
    return this.until(kind, () => this.all(kind).find(fits));
  }

  /** All messages of a kind that came. */
  all<T extends Kind>(kind: T): TimedAdvice<T>[] {
    return this.heard.filter((m): m is TimedAdvice<T> => m.t === kind);
  }

  private async until<R>(what: string, look: () => R | undefined): Promise<R> {
    const deadline = Date.now() + Phone.patienceMs;
    for (;;) {
      const found = look();
      if (found !== undefined) return found;
      const left = deadline - Date.now();
      if (left <= 0 || this.socket.readyState > WebSocket.CLOSING) {
        throw new Error(`no such ${what} came; heard ${JSON.stringify(this.heard.slice(-3)).slice(-2000)}`);
      }
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, left);
        this.waiting.push(() => {
          clearTimeout(timer);
          resolve();
        });
      });
    }
  }

  /** The entry number in the acknowledgement of a message. */
  async ack(id: string): Promise<number> {
    return (await this.next('ack', (m) => m.id === id)).seq;
  }

  refusal(id: string) {
    return this.next('refused', (m) => m.id === id);
  }

  /** All entries that came, in the order they came. */
  get entries(): Entry[] {
    return this.heard.flatMap((m) => (m.t === 'entries' ? m.entries : []));
  }

  async entry(fits: (entry: Entry) => boolean): Promise<Entry> {
    await this.next('entries', (m) => m.entries.some(fits));
    return this.entries.find(fits) as Entry;
  }

  /** Waits until the latest presence message fits. */
  presence(fits: (p: TimedAdvice<'presence'>['presence']) => boolean) {
    return this.until('presence', () => {
      const latest = this.all('presence').at(-1);
      return latest && fits(latest.presence) ? latest : undefined;
    });
  }

  async hangUp(): Promise<void> {
    this.socket.close();
    await this.closed;
  }
}

export const SETUP: JobSetup = {
  site: 'Larkmoor hall',
  pair: 'Beam 4',
  // biome-ignore lint/style/noNonNullAssertion: the list is a constant of the project.
  meter: NEUTRAL_METERS[0]!,
  adjusters: NEUTRAL_ADJUSTERS,
};

export const post = (url: string, path: string, body: unknown, headers: Record<string, string> = {}) =>
  fetch(url + path, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  });

export const openJob = async (url: string): Promise<JobOpened> =>
  JobOpened.parse(await (await post(url, '/api/jobs', { setup: SETUP, device: 'panel phone' })).json());

export const join = async (url: string, code: string, device = 'emitter phone'): Promise<Joined> =>
  Joined.parse(await (await post(url, '/api/join', { code, device })).json());

/** A job with both phones connected, all history received. */
export async function bothIn(url: string) {
  const job = await openJob(url);
  const joined = await join(url, job.invite.code);
  const panel = await Phone.at(url, job.token);
  const emitter = await Phone.at(url, joined.token);
  await panel.presence((p) => p.emitter === 'online');
  return { job, panel, emitter, emitterToken: joined.token };
}

export const get = (url: string, path: string, token?: string) =>
  fetch(url + path, token === undefined ? {} : { headers: { authorization: `Bearer ${token}` } });
