import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, request as requestHttp } from 'node:http';
import { type RequestOptions, request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, onTestFinished } from 'vitest';
import { WebSocket } from 'ws';
import { Callers } from '../../server/guard/callers.ts';
import { ownCertificate } from '../../server/network/certificate.ts';
import { JobOpened } from '../../src/protocol/jobs.ts';
import { PROTOCOL_VERSION, ServerMessage } from '../../src/protocol/socket.ts';
import { pause, serve } from './house.ts';
import { newId, SETUP } from './phone.ts';
import { freePort, PROXIES, run } from './proxies.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-proxies-'));
afterAll(() => rmSync(root, { recursive: true }));

const NAME = 'ladder.firm.example';

interface Answer {
  status: number;
  headers: IncomingHttpHeaders;
  text: string;
}

const lookup: RequestOptions['lookup'] = (_name, options, found) => {
  const address = { address: '127.0.0.1', family: 4 };
  if (options.all) found(null, [address]);
  else found(null, address.address, address.family);
};

// The settings of docs/deploy, through the program that they are for. Debian: apt-get install nginx-light caddy.
describe.each(PROXIES)('$name, with the settings of docs/deploy', (proxy) => {
  it.skipIf(!proxy.command)(
    'passes on name, addresses and websockets, and the server knows callers and other websites apart',
    async () => {
      const folder = join(root, proxy.name);
      mkdirSync(folder);
      const pair = (await ownCertificate(folder, { names: [NAME], addresses: [] }, Date.now())).pair;
      const [cert, key] = [join(folder, 'cert.pem'), join(folder, 'key.pem')];
      writeFileSync(cert, pair.cert);
      writeFileSync(key, pair.key);
      const server = await serve({
        names: [NAME],
        callers: new Callers(['127.0.0.1']),
        limits: { opensPerAddress: { burst: 2, perSecond: 1e-6 } },
      });
      const [https, http] = [await freePort(), await freePort()];
      const { said, end } = run(proxy, { folder, https, http, server: server.port, cert, key });
      onTestFinished(end);
      const host = `${NAME}:${https}`;
      const origin = `https://${host}`;
      const common = { host: NAME, port: https, servername: NAME, lookup, ca: pair.authority ?? pair.cert };

      const ask = (
        method: string,
        path: string,
        { from = '127.0.0.1', body, ...headers }: Record<string, string> = {},
      ): Promise<Answer> =>
        new Promise((resolve, reject) => {
          const asked = request(
            { ...common, method, path, localAddress: from, headers: { host, ...headers } },
            (answer) => {
              let text = '';
              answer.on('data', (part) => {
                text += part;
              });
              answer.on('end', () =>
                resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text }),
              );
            },
          );
          asked.on('error', reject);
          asked.end(body);
        });
      const open = (from: string, headers: Record<string, string> = {}) =>
        ask('POST', '/api/jobs', {
          from,
          origin,
          'content-type': 'application/json',
          body: JSON.stringify({ setup: SETUP, device: 'phone', phone: newId() }),
          ...headers,
        });

      for (let tries = 0; ; tries++) {
        if (await ask('GET', '/api/live').catch(() => undefined)) break;
        if (tries > 100) throw new Error(`${proxy.name} does not answer: ${said()}`);
        await pause(100);
      }
      expect(JSON.parse((await ask('GET', '/api/health')).text)).toMatchObject({ ok: true });
      const page = await ask('GET', '/');
      expect(page.headers['content-security-policy']).toContain(`wss://${host}`);

      // R60: a name that is not the server's own gets nothing of it. R31: nor does a page of another website.
      expect((await ask('GET', '/api/live', { host: 'other.example' })).text).not.toContain('"ok"');
      expect((await open('127.0.0.1', { origin: 'https://other.example' })).status).toBe(403);

      // R63: each caller has limits of their own, and nobody gets another's by saying so.
      const first = await open('127.0.1.1');
      expect(first.status).toBe(201);
      expect((await open('127.0.1.1')).status).toBe(201);
      expect((await open('127.0.1.1')).status).toBe(429);
      const lie = {
        'x-forwarded-for': '198.51.100.7',
        forwarded: 'for=198.51.100.7',
        'x-real-ip': '198.51.100.7',
      };
      expect((await open('127.0.1.1', lie)).status).toBe(429);
      expect((await open('127.0.2.1')).status).toBe(201);

      // A phone says something, and is answered at once.
      const { token } = JobOpened.parse(JSON.parse(first.text));
      const socket = new WebSocket(`wss://${host}/api/socket`, { ...common, origin });
      const heard: ServerMessage[] = [];
      const told = (kind: ServerMessage['t']) =>
        new Promise<void>((resolve, reject) => {
          const look = () => heard.some(({ t }) => t === kind) && resolve();
          socket.on('message', (data) => {
            heard.push(ServerMessage.parse(JSON.parse(String(data))));
            look();
          });
          socket.on('close', (code) => reject(new Error(`closed with ${code}: ${said()}`)));
          look();
        });
      await new Promise((resolve, reject) => socket.once('open', resolve).once('error', reject));
      socket.send(JSON.stringify({ t: 'hello', v: PROTOCOL_VERSION, token, after: -1 }));
      await told('caught-up');
      socket.send(JSON.stringify({ t: 'remark', id: newId(), text: 'Through the proxy.' }));
      await told('ack');
      socket.removeAllListeners('close').close();

      // Plain http leads to https, under the same name.
      const plain = await new Promise<IncomingHttpHeaders>((resolve, reject) => {
        requestHttp({ host: '127.0.0.1', port: http, path: '/join', headers: { host: NAME } }, (answer) => {
          answer.resume();
          resolve(answer.headers);
        })
          .on('error', reject)
          .end();
      });
      expect(plain.location).toMatch(new RegExp(`^https://${NAME}(:${https})?/join$`));
    },
    60_000,
  );
});
