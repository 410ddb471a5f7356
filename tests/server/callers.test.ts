import { describe, expect, it } from 'vitest';
import { Callers } from '../../server/guard/callers.ts';
import { serve } from './house.ts';
import { openJob, post, SETUP } from './phone.ts';

const PROXIES = ['10.0.0.0/8', '192.0.2.1', 'fd00::/8'];
const from = (remoteAddress: string | undefined, headers = {}) => ({ socket: { remoteAddress }, headers });

// From memory: the walk from the right is what MDN describes for "X-Forwarded-For" with trusted proxies.
describe('the address of a caller', () => {
  it.each([
    ['nobody says anything', '203.0.113.9', undefined, '203.0.113.9'],
    ['the caller is no proxy, and lies', '203.0.113.9', '198.51.100.1', '203.0.113.9'],
    ['one proxy', '10.1.2.3', '203.0.113.9', '203.0.113.9'],
    ['one proxy, and the caller lied to it', '10.1.2.3', '198.51.100.1, 203.0.113.9', '203.0.113.9'],
    ['two proxies', '10.1.2.3', '203.0.113.9, 192.0.2.1', '203.0.113.9'],
    [
      'two proxies, and a lie that names a proxy',
      '10.1.2.3',
      '10.9.9.9, 203.0.113.9, 192.0.2.1',
      '203.0.113.9',
    ],
    ['a proxy that says nothing', '10.1.2.3', undefined, '10.1.2.3'],
    ['a proxy that knows no address', '10.1.2.3', '203.0.113.9, unknown', '10.1.2.3'],
    ['scribble', '10.1.2.3', '<script>', '10.1.2.3'],
    ['nothing but proxies', '10.1.2.3', '10.4.5.6', '10.4.5.6'],
    ['a neighbour of a proxy', '192.0.2.2', '203.0.113.9', '192.0.2.2'],
    ['the last address of the network', '10.255.255.255', '203.0.113.9', '203.0.113.9'],
    ['the first behind it', '11.0.0.0', '203.0.113.9', '11.0.0.0'],
    ['with a port', '10.1.2.3', '203.0.113.9:4711', '203.0.113.9'],
    ['IPv4 written as IPv6', '::ffff:10.1.2.3', '::ffff:203.0.113.9', '203.0.113.9'],
    ['IPv6', 'fd00::5', '2001:db8::17', '2001:db8::17'],
    ['IPv6 with a port', 'fd00::5', '[2001:db8::17]:80', '2001:db8::17'],
    ['no socket any more', undefined, '203.0.113.9', ''],
  ])('%s', (_, remote, list, address) => {
    const headers = list === undefined ? {} : { 'x-forwarded-for': list };
    expect(new Callers(PROXIES).addressOf(from(remote, headers))).toBe(address);
  });

  // RFC 7239, sections 4, 6 and 7.1: names in any case, quoted where there is a colon, "unknown" and hidden names.
  it.each([
    ['for=192.0.2.60;proto=http;by=203.0.113.43', '192.0.2.60'],
    ['For="[2001:db8:cafe::17]:4711"', '2001:db8:cafe::17'],
    ['for=192.0.2.43, for=198.51.100.17', '198.51.100.17'],
    ['for=198.51.100.17, for=10.0.0.1;proto=https', '198.51.100.17'],
    ['for="_gazonk"', '10.1.2.3'],
    ['for=198.51.100.17, proto=https', '10.1.2.3'],
    ['for=unknown', '10.1.2.3'],
    ['by="for=192.0.2.60, x";for=198.51.100.17', '198.51.100.17'],
    ['', '10.1.2.3'],
  ])('of %j', (forwarded, address) => {
    const callers = new Callers(PROXIES, 'forwarded');
    expect(callers.addressOf(from('10.1.2.3', { forwarded, 'x-forwarded-for': '1.1.1.1' }))).toBe(address);
    expect(callers.addressOf(from('203.0.113.9', { forwarded }))).toBe('203.0.113.9');
    // The header that the proxy does not set is the caller's own.
    expect(new Callers(PROXIES).addressOf(from('10.1.2.3', { forwarded }))).toBe('10.1.2.3');
  });

  it.each(['', 'proxy.example', '10.0.0.0/33', 'fd00::/129', '10.0.0.0/', '10.0.0.0/x', '10.0.0'])(
    'needs networks: %j is none',
    (proxy) => {
      expect(() => new Callers([proxy])).toThrow(/no address and no network/);
    },
  );
});

describe('limits behind a proxy', () => {
  const limits = { opensPerAddress: { burst: 1, perSecond: 0 } };
  const open = (url: string, address: string) =>
    fetch(`${url}/api/jobs`, {
      method: 'POST',
      body: JSON.stringify({ setup: SETUP }),
      headers: { 'x-forwarded-for': address },
    }).then(({ status }) => status);

  it('R63: count for each caller behind a named proxy, whatever the callers themselves say', async () => {
    const { url } = await serve({ limits, callers: new Callers(['127.0.0.1', '::1']) });
    expect(await open(url, '203.0.113.9')).toBe(201);
    expect(await open(url, '198.51.100.1, 203.0.113.9')).toBe(429);
    expect(await open(url, '203.0.113.10')).toBe(201);
  });

  it('R63: believe nobody where no proxy is named', async () => {
    const { url } = await serve({ limits });
    await openJob(url);
    expect((await post(url, '/api/jobs', { setup: SETUP })).status).toBe(429);
    expect(await open(url, '203.0.113.9')).toBe(429);
  });
});
