import { X509Certificate } from 'node:crypto';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect, createServer, type TLSSocket } from 'node:tls';
import { afterAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import { certificateBy, type KeyPair, makeAuthority } from '../../server/network/authority.ts';
import { AUTHORITY_FILE, CERT_FILE, keepRenewed, ownCertificate } from '../../server/network/certificate.ts';
import { TrustInfo } from '../../src/protocol/trust.ts';
import { serve } from './house.ts';
import { bothIn, get, openJob, Phone } from './phone.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-certificate-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;
function newFolder(): string {
  const folder = join(root, String(++folders));
  mkdirSync(folder);
  return folder;
}

const DAY = 24 * 3600 * 1000;
const now = Date.now();
const wanted = { names: ['localhost'], addresses: ['127.0.0.1', '192.168.1.7'] };

const make = async (folder: string, at = now, names = wanted) =>
  (await ownCertificate(folder, names, at)).pair;

/** What a program that trusts `ca`, and nobody else, makes of a server's certificate. */
async function asked(
  port: number,
  ca: string | undefined,
): Promise<{ fault: string; cert: X509Certificate }> {
  const socket: TLSSocket = connect({
    port,
    host: '127.0.0.1',
    ...(ca !== undefined && { ca }),
    rejectUnauthorized: false,
    servername: 'localhost',
    checkServerIdentity: () => undefined,
  });
  await new Promise((resolve) => socket.once('secureConnect', resolve));
  const cert = socket.getPeerX509Certificate();
  socket.destroy();
  if (!cert) throw new Error('no certificate came');
  return { fault: String(socket.authorizationError ?? ''), cert };
}

describe('the server’s own certificate', () => {
  it('names the addresses it is for, and is valid no longer than phones accept', async () => {
    const x509 = new X509Certificate((await make(newFolder())).cert);
    expect(x509.checkIP('192.168.1.7')).toBe('192.168.1.7');
    expect(x509.checkHost('localhost')).toBe('localhost');
    expect(x509.checkIP('192.168.1.8')).toBeUndefined();
    // Apple, "Requirements for trusted certificates in iOS 13 and macOS 10.15": at most 825 days. From memory.
    expect((Date.parse(x509.validTo) - Date.parse(x509.validFrom)) / DAY).toBeLessThanOrEqual(825);
    expect(x509.keyUsage).toContain('1.3.6.1.5.5.7.3.1');
    expect(x509.ca).toBe(false);
  });

  it('is trusted by who trusts its authority, and by nobody else', async () => {
    const tls = await make(newFolder());
    const { port } = await serve({ tls });
    expect((await asked(port, tls.authority)).fault).toBe('');
    expect((await asked(port, undefined)).fault).not.toBe('');
    expect((await asked(port, (await make(newFolder())).authority)).fault).not.toBe('');
  });

  it('is kept, readable only by its owner, until thirty days before it ends or there is a new address', async () => {
    const folder = newFolder();
    const first = await make(folder);
    for (const file of [CERT_FILE, AUTHORITY_FILE]) expect(statSync(join(folder, file)).mode & 0o077).toBe(0);
    expect(await make(folder, now + 366 * DAY)).toEqual(first);
    const renewed = await make(folder, now + 368 * DAY);
    expect(renewed.cert).not.toBe(first.cert);
    const moved = await make(folder, now, { ...wanted, addresses: ['127.0.0.1', '192.168.1.99'] });
    expect(moved.cert).not.toBe(renewed.cert);
    // Phones trust the authority: it stays.
    expect([renewed.authority, moved.authority]).toEqual([first.authority, first.authority]);
  });

  it.each<[string, { scribble?: boolean; later?: number } & Partial<typeof wanted>]>([
    ['a file that holds no certificate', { scribble: true }],
    ['a name that the old one may not sign', { names: ['localhost', 'ladder.firm.example'] }],
    ['an address of no private network', { addresses: ['203.0.113.9'] }],
    // Ten years less the 397 days of a certificate.
    ['its last year', { later: (10 * 365 - 397) * DAY + 1000 }],
  ])('has a new authority, and says so, for %s', async (_, { scribble, later = 0, ...more }) => {
    const folder = newFolder();
    const first = await ownCertificate(folder, wanted, now);
    // Nobody trusted one before it.
    expect(first.isNewAuthority).toBe(false);
    expect((await ownCertificate(folder, wanted, now)).pair.authority).toBe(first.pair.authority);
    if (scribble) for (const file of [CERT_FILE, AUTHORITY_FILE]) writeFileSync(join(folder, file), 'junk');
    const again = await ownCertificate(folder, { ...wanted, ...more }, now + later);
    expect(again.isNewAuthority).toBe(true);
    expect(again.pair.authority).not.toBe(first.pair.authority);
    expect(readFileSync(join(folder, AUTHORITY_FILE), 'utf8')).toContain(again.pair.authority?.trim());
    expect((await ownCertificate(folder, { ...wanted, ...more }, now + later)).isNewAuthority).toBe(false);
  });

  it('keeps its authority until then', async () => {
    const folder = newFolder();
    const { authority } = await make(folder);
    expect((await make(folder, now + (10 * 365 - 398) * DAY)).authority).toBe(authority);
  });
});

// RFC 5280, 4.2.1.10, as OpenSSL judges it; RFC 1918 and RFC 6761 for the networks and names.
describe('what the authority may sign', () => {
  it.each([
    ['localhost', true],
    ['hall.local', true],
    ['ladder.firm.example', true],
    ['a.ladder.firm.example', true],
    ['firm.example', false],
    ['bank.example', false],
    ['local.bank.example', false],
    ['10.255.0.1', true],
    ['172.15.255.255', false],
    ['172.16.0.0', true],
    ['172.31.255.255', true],
    ['172.32.0.0', false],
    ['192.168.255.1', true],
    ['192.169.0.1', false],
    ['203.0.113.9', true],
    ['203.0.113.10', false],
    ['8.8.8.8', false],
    ['fd00::1', true],
    ['2001:db8::1', false],
  ])('%s: %j', async (what, permitted) => {
    const authority = await makeAuthority(
      { names: ['ladder.firm.example'], addresses: ['203.0.113.9'] },
      now,
    );
    const isAddress = /^[\d.]+$|:/.test(what);
    const pair = await certificateBy(
      authority,
      { names: isAddress ? [] : [what], addresses: isAddress ? [what] : [] },
      now,
    );
    const server = createServer({ cert: pair.cert, key: pair.key }).listen(0, '127.0.0.1');
    onTestFinished(() => void server.close());
    await new Promise((resolve) => server.once('listening', resolve));
    const { fault } = await asked((server.address() as { port: number }).port, authority.cert);
    // Node's name for OpenSSL's "permitted subtree violation", which it does not tell apart.
    expect(fault).toBe(permitted ? '' : 'UNSPECIFIED');
  });
});

describe('a certificate that changes while the server runs', () => {
  it('is the one of every connection from then on; those that are open stay', async () => {
    const folder = newFolder();
    const first = await make(folder);
    const server = await serve({ tls: first });
    const { token } = await openJob(server.url);
    const phone = await Phone.at(server.url.replace('http:', 'https:'), token);
    const second = await make(folder, now, { ...wanted, addresses: ['192.168.1.99'] });
    server.useCertificate(second);
    const { cert, fault } = await asked(server.port, first.authority);
    expect(cert.fingerprint256).toBe(new X509Certificate(second.cert).fingerprint256);
    expect(fault).toBe('');
    await phone.ack(phone.remark('still here'));
  });

  it('is looked for again and again, handed on when it is another, and left when it cannot be had', async () => {
    vi.useFakeTimers();
    onTestFinished(() => void vi.useRealTimers());
    const pair = (cert: string): KeyPair => ({ cert, key: 'key' });
    const answers = [pair('one'), pair('two'), new Error('gone'), pair('two'), pair('three')];
    const got: string[] = [];
    const end = keepRenewed(
      pair('one'),
      async () => {
        const answer = answers.shift();
        if (answer instanceof Error) throw answer;
        return answer ?? pair('four');
      },
      ({ cert }) => got.push(cert),
      ({ message }) => got.push(message),
      1_000,
    );
    await vi.advanceTimersByTimeAsync(5_000);
    expect(got).toEqual(['two', 'gone', 'three']);
    end();
    await vi.advanceTimersByTimeAsync(5_000);
    expect(got).toHaveLength(3);
  });
});

describe('a phone that does not trust the server yet', () => {
  it('R62: gets the certificate of its authority over plain HTTP, and what to compare', async () => {
    const tls = await make(newFolder());
    const { url } = await serve({ tls });
    const answer = await get(url, '/authority.crt');
    // RFC 5280; the type by which iPhones offer to install it, from memory.
    expect(answer.headers.get('content-type')).toBe('application/x-x509-ca-cert');
    const sent = new X509Certificate(Buffer.from(await answer.arrayBuffer()));
    expect(sent.fingerprint256).toBe(new X509Certificate(tls.authority ?? '').fingerprint256);
    expect(sent.ca).toBe(true);
    expect(TrustInfo.parse(await (await get(url, '/api/trust')).json())).toEqual({
      kind: 'own-authority',
      name: expect.stringMatching(/^Ladderline on /),
      fingerprint: sent.fingerprint256,
    });
  });

  it.each([
    ['trusted', true],
    ['no-https', false],
  ])('R62: is told that there is none to trust: %s', async (kind, hasHttps) => {
    const { cert, key } = await make(newFolder());
    const { url } = await serve(hasHttps ? { tls: { cert, key } } : {});
    expect(await (await get(url, '/api/trust')).json()).toEqual({ kind });
    expect((await get(url, '/authority.crt')).status).toBe(404);
  });

  it('works all the same, beside https and wss on the same port', async () => {
    const tls = await make(newFolder());
    const { url } = await serve({ tls });
    expect((await get(url, '/api/health')).status).toBe(200);
    const { panel } = await bothIn(url);
    const seq = await panel.ack(panel.remark('plainly'));
    await panel.hangUp();
    const { token } = await openJob(url);
    const secure = await Phone.at(url.replace('http:', 'https:'), token);
    expect(await secure.ack(secure.remark('over TLS'))).toBeLessThan(seq);
  });
});
