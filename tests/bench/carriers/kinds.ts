import { once } from 'node:events';
import { mkdirSync, mkdtempSync } from 'node:fs';
import { join } from 'node:path';
import { DeliverPolicy, jetstream, jetstreamManager } from '@nats-io/jetstream';
import { connect as connectNats } from '@nats-io/transport-node';
import pg from 'pg';
import { parseIntoClientConfig } from 'pg-connection-string';
import { createClient } from 'redis';
import { WebSocket, WebSocketServer } from 'ws';
import { Cluster, POSTGRES } from '../../postgres/cluster.ts';
import { freePort } from '../../server/proxies.ts';
import { processorOfTree } from '../relay/used.ts';
import type { Kind, Way } from './carrier.ts';
import { startProgram } from './programs.ts';

const WAYS: readonly Way[] = ['there', 'back'];

/** As the server carries a phone now: the one process connects to the other, and nobody is between. */
const DIRECT: Kind = {
  name: 'direct line',
  keeps: 'nothing: the phone sends again',
  start: async () => ({
    address: `127.0.0.1:${await freePort()}`,
    processorMs: () => 0,
    end: async () => {},
  }),
  async open(address, isOther) {
    let line: WebSocket;
    let server: WebSocketServer | undefined;
    let take: (text: string) => void = () => {};
    if (isOther) {
      const [host, port] = address.split(':');
      server = new WebSocketServer({ host, port: Number(port), perMessageDeflate: false });
      server.on('connection', (socket) => {
        line = socket;
        line.on('message', (data) => take(String(data)));
      });
      await once(server, 'listening');
    } else {
      line = new WebSocket(`ws://${address}`, { perMessageDeflate: false });
      line.on('message', (data) => take(String(data)));
      await once(line, 'open');
    }
    return {
      send: (_way, text) => line.send(text),
      async listen(_way, taking) {
        take = taking;
      },
      async close() {
        line?.close();
        server?.close();
      },
    };
  },
};

/** The baseline: the database that is there anyway. */
const NOTIFY: Kind = {
  name: 'LISTEN/NOTIFY',
  keeps: 'nothing',
  async start(folder) {
    if (!POSTGRES) return undefined;
    const cluster = await Cluster.start({}, folder);
    return {
      address: JSON.stringify({ url: cluster.url, password: cluster.password }),
      processorMs: () => processorOfTree(cluster.pid),
      end: () => cluster.remove(),
    };
  },
  async open(address) {
    const { url, password } = JSON.parse(address) as { url: string; password: string };
    const to = { ...parseIntoClientConfig(url), password };
    // One to send and one to hear, as the pool of a server would have it.
    const [sending, hearing] = [new pg.Client(to), new pg.Client(to)];
    await Promise.all([sending.connect(), hearing.connect()]);
    return {
      send: (way, text) =>
        sending.query({ name: 'notify', text: 'SELECT pg_notify($1, $2)', values: [way, text] }),
      async listen(way, take) {
        hearing.on('notification', ({ channel, payload }) => channel === way && take(payload ?? ''));
        await hearing.query(`LISTEN ${way}`);
      },
      async close() {
        await Promise.all([sending.end(), hearing.end()]);
      },
    };
  },
};

async function redisAt(address: string) {
  const client = createClient({ url: `redis://${address}` });
  client.on('error', () => {});
  await client.connect();
  return client;
}

const REDIS: Kind = {
  name: 'Redis, publish/subscribe',
  keeps: 'nothing',
  async start() {
    const port = await freePort();
    const args = ['--bind', '127.0.0.1', '--port', `${port}`, '--save', '', '--appendonly', 'no'];
    return startProgram('redis-server', args, port);
  },
  async open(address) {
    const [sending, hearing] = [await redisAt(address), await redisAt(address)];
    return {
      send: (way, text) => sending.publish(way, text),
      listen: (way, take) => hearing.subscribe(way, take),
      async close() {
        await Promise.all([sending.close(), hearing.close()]);
      },
    };
  },
};

const REDIS_STREAMS: Kind = {
  name: 'Redis streams, synced each second',
  keeps: 'all but the last second',
  async start(folder) {
    const port = await freePort();
    const own = mkdtempSync(join(folder, 'redis-'));
    const kept = ['--save', '', '--appendonly', 'yes', '--appendfsync', 'everysec', '--dir', own];
    return startProgram('redis-server', ['--bind', '127.0.0.1', '--port', `${port}`, ...kept], port);
  },
  async open(address) {
    const [sending, hearing] = [await redisAt(address), await redisAt(address)];
    let isOver = false;
    return {
      send: (way, text) =>
        sending.xAdd(
          way,
          '*',
          { text },
          { TRIM: { strategy: 'MAXLEN', strategyModifier: '~', threshold: 10_000 } },
        ),
      async listen(way, take) {
        let after = '0';
        const read = async (): Promise<void> => {
          while (!isOver) {
            const answer = (await hearing
              .xRead({ key: way, id: after }, { BLOCK: 1_000, COUNT: 500 })
              .catch(() => null)) as { messages: { id: string; message: { text: string } }[] }[] | null;
            for (const { id, message } of answer?.[0]?.messages ?? []) {
              after = id;
              take(message.text);
            }
          }
        };
        void read();
      },
      async close() {
        isOver = true;
        await sending.close();
        hearing.destroy();
      },
    };
  },
};

/** Debian keeps it where the path of a user does not look. */
const NATS_PROGRAM = '/usr/sbin/nats-server';

const NATS: Kind = {
  name: 'NATS',
  keeps: 'nothing',
  async start() {
    const port = await freePort();
    return startProgram(NATS_PROGRAM, ['-a', '127.0.0.1', '-p', `${port}`], port);
  },
  async open(address) {
    const line = await connectNats({ servers: address });
    return {
      send: (way, text) => line.publish(way, text),
      async listen(way, take) {
        line.subscribe(way, { callback: (_error, message) => take(message.string()) });
        await line.flush();
      },
      close: () => line.close(),
    };
  },
};

const JETSTREAM: Kind = {
  name: 'NATS JetStream, in a file',
  keeps: 'all that was acknowledged, but for what its disk had not yet synced',
  async start(folder) {
    const port = await freePort();
    const own = mkdtempSync(join(folder, 'nats-'));
    mkdirSync(own, { recursive: true });
    const broker = await startProgram(
      NATS_PROGRAM,
      ['-a', '127.0.0.1', '-p', `${port}`, '-js', '-sd', own],
      port,
    );
    if (!broker) return undefined;
    const line = await connectNats({ servers: broker.address });
    const manager = await jetstreamManager(line);
    for (const way of WAYS)
      await manager.streams.add({ name: way, subjects: [way], storage: 'file', max_msgs: 10_000 } as never);
    await line.close();
    return broker;
  },
  async open(address) {
    const line = await connectNats({ servers: address });
    const stream = jetstream(line);
    return {
      send: (way, text) => stream.publish(way, text),
      async listen(way, take) {
        const consumer = await stream.consumers.get(way, { deliver_policy: DeliverPolicy.New });
        await consumer.consume({
          callback: (message) => take(message.string()),
        });
      },
      close: () => line.close(),
    };
  },
};

export const KINDS: readonly Kind[] = [DIRECT, NOTIFY, REDIS, REDIS_STREAMS, NATS, JETSTREAM];
