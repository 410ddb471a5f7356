import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type IncomingMessage, request as plainRequest } from 'node:http';
import { request as secureRequest } from 'node:https';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, onTestFinished } from 'vitest';
import { isKnownHost } from '../../server/guard/hosts.ts';
import { Front } from '../../server/http/front.ts';
import { ownNames } from '../../server/network/addresses.ts';
import { ownCertificate } from '../../server/network/certificate.ts';
import { HttpRefusal } from '../../src/protocol/jobs.ts';
import { serve } from './house.ts';
import { Phone } from './phone.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-front-'));
afterAll(() => rmSync(root, { recursive: true }));
const clientFolder = join(root, 'pages');
mkdirSync(join(clientFolder, 'assets'), { recursive: true });
writeFileSync(join(clientFolder, 'index.html'), '<html><head></head></html>');
writeFileSync(join(clientFolder, 'assets', 'main.js'), '');

interface Answer {
  status: number;
  headers: Record<string, unknown>;
  text: string;
}

/** A request with a Host that `fetch` would not let us choose. */
function ask(url: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Answer> {
  const send = url.startsWith('https:') ? secureRequest : plainRequest;
  return new Promise((resolve, reject) => {
    const request = send(url, { method, headers, rejectUnauthorized: false }, (response) => {
      let text = '';
      response.on('data', (part) => {
        text += part;
      });
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, text }),
      );
    });
    request.on('error', reject);
    request.end();
  });
}

const certificateFor = async (name: string) =>
  (await ownCertificate(root, { names: [name], addresses: [] }, Date.now())).pair;

/** What comes back for bytes that need not be HTTP. */
function raw(port: number, bytes: string): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = '';
    const socket = connect(port, '127.0.0.1', () => socket.write(bytes));
    socket.on('data', (part) => {
      text += part;
    });
    socket.on('close', () => resolve(text));
    socket.on('error', reject);
  });
}

describe('who the server answers to', () => {
  const isOurs = (name: string) => name === 'ladder.firm.example';

  // RFC 9110, 7.2: host and port. WHATWG URL: a browser writes addresses in their shortest form, so 0x7f.1 never comes.
  it.each([
    ['localhost', true],
    ['localhost:8470', true],
    ['LOCALHOST.', true],
    ['a.localhost:1', true],
    ['127.0.0.1:8470', true],
    ['192.0.2.7', true],
    ['[::1]:8470', true],
    ['[2001:db8::7]', true],
    ['ladder.firm.example', true],
    ['Ladder.Firm.Example.:443', true],
    [undefined, false],
    ['', false],
    ['evil.example', false],
    ['ladder.firm.example.evil.example', false],
    ['evil.example.ladder.firm.example', false],
    ['localhost.evil.example', false],
    ['127.0.0.1.evil.example', false],
    ['192.0.2.7; script-src *', false],
    ['192.0.2', false],
    ['0x7f.1', false],
    ['[::1', false],
    ['[evil.example]', false],
    ['localhost:8470:1', false],
    ['user@localhost', false],
  ] as const)('%j: %j', (host, known) => {
    expect(isKnownHost(host, isOurs)).toBe(known);
  });

  it('R60: a Host that is not ours is refused everywhere, also where Origin is the same; ours are let in', async () => {
    const { url, port } = await serve({ clientFolder, names: ['ladder.firm.example'] });
    const rebound = { host: `evil.example:${port}`, origin: `http://evil.example:${port}` };
    for (const path of ['/', '/api/health', '/api/jobs', '/assets/main.js', '/speech-model/x']) {
      const method = path === '/api/jobs' ? 'POST' : 'GET';
      const { status, text } = await ask(url + path, rebound, method);
      expect(status).toBe(421);
      if (path.startsWith('/api/')) expect(HttpRefusal.parse(JSON.parse(text)).text).toContain('--name');
      else expect(text).toContain('This server does not know that name');
      expect(text).not.toContain('evil');
    }
    await expect(new Phone(url, rebound).opened()).rejects.toThrow('421');
    for (const name of ['ladder.firm.example', '127.0.0.1', '[::1]', ...ownNames()]) {
      const own = { host: `${name}:${port}`, origin: `http://${name}:${port}` };
      expect((await ask(`${url}/api/health`, own)).status).toBe(200);
      const phone = new Phone(url, own);
      await phone.opened();
      await phone.hangUp();
    }
  });

  it('R60: the names in its certificate are its own', async () => {
    const tls = await certificateFor('in.certificate.example');
    const { url } = await serve({ tls });
    expect((await ask(`${url}/api/health`, { host: 'in.certificate.example' })).status).toBe(200);
    expect((await ask(`${url}/api/health`, { host: 'other.certificate.example' })).status).toBe(421);
  });
});

describe('plain HTTP from another machine', () => {
  it.each([
    ['leads to https where phones trust the certificate', true, false, 308, 426],
    ['is answered on this machine all the same', true, true, 200, undefined],
    ['is answered where phones may not trust it yet', false, false, 200, undefined],
  ])('%s', async (_, isTrusted, here, status, socketStatus) => {
    const front = new Front({
      isOurs: () => false,
      isTrusted: () => isTrusted,
      isThisMachine: () => here,
      onMisdirected: () => {},
    });
    const requests: IncomingMessage[] = [];
    const server = createServer(
      front.guards((request, response) => {
        requests.push(request);
        response.end();
      }),
    ).listen(0, '127.0.0.1');
    onTestFinished(() => void server.close());
    server.on('request', (request) => requests.push(request));
    await new Promise((resolve) => server.once('listening', resolve));
    const { port } = server.address() as { port: number };
    const answer = await ask(`http://127.0.0.1:${port}/join?x=1`);
    expect(answer.status).toBe(status);
    expect(answer.headers.location).toBe(status === 308 ? `https://127.0.0.1:${port}/join?x=1` : undefined);
    expect(front.socketRefusal(requests[0] as IncomingMessage)).toBe(socketStatus);
  });
});

describe('what is sent up', () => {
  it('R32: is bounded also where nobody says how long it is', async () => {
    const { port } = await serve();
    const chunk = `4000\r\n${'x'.repeat(0x4000)}\r\n`;
    const head = 'POST /api/jobs HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n';
    const answer = await raw(port, `${head}Transfer-Encoding: chunked\r\n\r\n${chunk}${chunk}0\r\n\r\n`);
    expect(answer).toMatch(/^HTTP\/1.1 413 /);
    expect(answer).toContain('too-long');
  });
});

describe('the headers on every answer', () => {
  const EVERYWHERE = {
    'content-security-policy': expect.stringMatching(/default-src 'self'.*frame-ancestors 'none'/),
    'permissions-policy': expect.stringContaining('geolocation=()'),
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
  };

  it('R61: pages, files, data, refusals and failures have them', async () => {
    const { url } = await serve({ clientFolder });
    const answers: [number, Promise<Answer>][] = [
      [200, ask(`${url}/panel`)],
      [200, ask(`${url}/assets/main.js`)],
      [404, ask(`${url}/nowhere`)],
      [200, ask(`${url}/api/health`)],
      [200, ask(`${url}/api/export.schema.json`)],
      [401, ask(`${url}/api/record`)],
      [400, ask(`${url}/api/jobs`, {}, 'POST')],
      [403, ask(`${url}/api/jobs`, { origin: 'http://evil.example' }, 'POST')],
      [404, ask(`${url}/api/nowhere`)],
      [404, ask(`${url}/speech-model/none`)],
      [404, ask(`${url}/%ff.vite/manifest.json`)],
      [421, ask(`${url}/`, { host: 'evil.example' })],
    ];
    for (const [status, answer] of answers) {
      expect(await answer).toMatchObject({ status, headers: EVERYWHERE });
    }
    expect((await ask(`${url}/`, { host: 'evil.example' })).headers['content-security-policy']).not.toContain(
      'evil',
    );
  });

  it.each([
    ['no HTTP', 'no HTTP at all\r\n\r\n', 400],
    [
      'more headers than we read',
      `GET / HTTP/1.1\r\nHost: localhost\r\nX: ${'x'.repeat(20_000)}\r\n\r\n`,
      431,
    ],
    ['no Host', 'GET / HTTP/1.1\r\nConnection: close\r\n\r\n', 400],
    ['a socket elsewhere', upgrade('/elsewhere', 'localhost'), 404],
    ['a socket of another name', upgrade('/api/socket', 'evil.example'), 421],
    ['a socket without a key', upgrade('/api/socket', 'localhost'), 400],
  ])('R61: %s is answered with them too', async (_, bytes, status) => {
    const { port } = await serve();
    const answer = await raw(port, bytes);
    expect(answer).toMatch(new RegExp(`^HTTP/1.1 ${status} `));
    for (const name of Object.keys(EVERYWHERE)) expect(answer.toLowerCase()).toContain(`\r\n${name}: `);
  });

  it('R61: only a certificate that phones trust, asked by its name, asks for https for ever', async () => {
    const tls = await certificateFor('ladder.firm.example');
    const strict = async (isTrusted: boolean, scheme: string, host: string) => {
      const { cert, key } = tls;
      const { port } = await serve({ tls: isTrusted ? { cert, key } : tls });
      const { headers } = await ask(`${scheme}://127.0.0.1:${port}/api/health`, { host });
      return headers['strict-transport-security'];
    };
    expect(await strict(true, 'https', 'ladder.firm.example')).toBe('max-age=31536000');
    // RFC 6797, 7.2: never over plain HTTP. Section 8.1.1: never for an address.
    expect(await strict(true, 'http', 'ladder.firm.example')).toBeUndefined();
    expect(await strict(true, 'https', '127.0.0.1')).toBeUndefined();
    expect(await strict(true, 'https', 'localhost')).toBeUndefined();
    expect(await strict(false, 'https', 'ladder.firm.example')).toBeUndefined();
  });
});

function upgrade(path: string, host: string): string {
  return `GET ${path} HTTP/1.1\r\nHost: ${host}\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n\r\n`;
}
