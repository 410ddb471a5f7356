import { spawnSync } from 'node:child_process';
import type { NetworkInterfaceInfo } from 'node:os';
import makeMdns from 'multicast-dns';
import { pino } from 'pino';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import type { Link } from '../../server/local-name/link.ts';
import { LocalName, linksOf } from '../../server/local-name/local-name.ts';
import { readOptions } from '../../server/options.ts';

/** Multicast on the loopback interface, on a port that no other program's multicast DNS has. */
const PORT = 15_353;
const LOOPBACK: Link = { address: '127.0.0.1', netmask: '255.0.0.0' };
const NAME = 'hall-test.local';

interface Said {
  level: number;
  msg: string;
}

function given(links: () => readonly Link[] = () => [LOOPBACK], name = NAME) {
  const said: Said[] = [];
  const log = pino({ level: 'debug' }, { write: (line: string) => void said.push(JSON.parse(line)) });
  const local = new LocalName(name, links, log, PORT);
  onTestFinished(() => local.close());
  return { local, said };
}

/** Another machine on the same network, in the library itself. */
async function other(): Promise<makeMdns.MulticastDNS> {
  const mdns = makeMdns({ interface: '127.0.0.1', bind: '0.0.0.0', port: PORT });
  onTestFinished(() => new Promise<void>((done) => mdns.destroy(() => done())));
  await new Promise<void>((ready) => mdns.once('ready', ready));
  return mdns;
}

type Answers = makeMdns.ResponseOutgoingPacket['answers'];

/** Every answer about the name that is heard from now on. */
function heardBy(mdns: makeMdns.MulticastDNS): Answers {
  const heard: Answers = [];
  mdns.on('response', ({ answers = [] }) => heard.push(...answers.filter(({ name }) => name === NAME)));
  return heard;
}

describe('R137: a name in .local (multicast DNS, RFC 6762)', () => {
  it('is asked for three times, then said, answered in any case of letters, and taken back at the end', async () => {
    const mdns = await other();
    const heard = heardBy(mdns);
    let probes = 0;
    mdns.on('query', ({ questions = [], authorities = [] }) => {
      if (questions.some(({ name }) => name === NAME) && authorities.length > 0) probes++;
    });
    const { local } = given();
    expect(local.state).toBe('asking');
    await local.settled();
    expect(local.state).toBe('held');
    expect(probes).toBe(3);
    const record = { name: NAME, type: 'A', data: '127.0.0.1', ttl: 120, flush: true };
    await vi.waitFor(() => expect(heard[0]).toMatchObject(record));

    heard.length = 0;
    mdns.query([{ name: NAME.toUpperCase(), type: 'A' }]);
    await vi.waitFor(() => expect(heard[0]).toMatchObject(record));
    heard.length = 0;
    // There is no address of IPv6, and it says so (section 6.1).
    mdns.query([{ name: NAME, type: 'AAAA' }]);
    await vi.waitFor(() =>
      expect(heard.find(({ type }) => type === 'NSEC')).toMatchObject({
        data: { nextDomain: NAME, rrtypes: ['A'] },
      }),
    );
    heard.length = 0;
    await local.close();
    await vi.waitFor(() => expect(heard[0]).toMatchObject({ ...record, ttl: 0 }));
  });

  it('is not answered for another name, nor to who knows it already (section 7.1): half of its time is left, or less', async () => {
    const { local } = given();
    await local.settled();
    // Its second saying is over.
    await new Promise((resolve) => setTimeout(resolve, 1100));
    const mdns = await other();
    const heard = heardBy(mdns);
    const known = (ttl: number) => ({
      questions: [{ name: NAME, type: 'A' as const }],
      answers: [{ name: NAME, type: 'A' as const, ttl, data: '127.0.0.1' }],
    });
    mdns.query([{ name: 'other-hall.local', type: 'A' }]);
    mdns.query(known(60));
    await new Promise((resolve) => setTimeout(resolve, 150));
    expect(heard).toEqual([]);
    mdns.query(known(59));
    await vi.waitFor(() => expect(heard).toHaveLength(1));
  });

  it('that another machine has is left to it, and told: before it is ours, and after', async () => {
    const mdns = await other();
    const claim: Answers = [{ name: NAME, type: 'A', ttl: 120, data: '127.0.0.9' }];
    const onQuery = ({ questions = [] }: makeMdns.QueryPacket) => {
      if (questions.some(({ name }) => name === NAME)) mdns.respond(claim);
    };
    mdns.on('query', onQuery);
    const before = given();
    await before.local.settled();
    expect(before.local.state).toBe('taken');
    expect(before.said).toHaveLength(1);
    expect(before.said[0]).toMatchObject({ level: 40, msg: expect.stringContaining('--local-name') });
    mdns.off('query', onQuery);

    const after = given();
    await after.local.settled();
    expect(after.local.state).toBe('held');
    // That it is gone is no claim, and our own address is nobody else's.
    mdns.respond([{ name: NAME, type: 'A', ttl: 0, data: '127.0.0.9' }]);
    mdns.respond([{ name: NAME, type: 'A', ttl: 120, data: '127.0.0.1' }]);
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(after.local.state).toBe('held');
    mdns.respond(claim);
    await vi.waitFor(() => expect(after.local.state).toBe('taken'));
    const heard = heardBy(mdns);
    mdns.query([{ name: NAME, type: 'A' }]);
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(heard).toEqual([]);
  });

  it('goes to the greater address where two ask at once (section 8.2)', async () => {
    const mdns = await other();
    const probe = (data: string) =>
      mdns.query({
        questions: [{ name: NAME, type: 'A' }],
        authorities: [{ name: NAME, type: 'A', ttl: 120, data }],
      } as never);
    const first = given();
    setTimeout(() => probe('126.255.255.255'), 100);
    const began = performance.now();
    await first.local.settled();
    expect(first.local.state).toBe('held');
    expect(performance.now() - began).toBeLessThan(1500);
    await first.local.close();

    const second = given();
    setTimeout(() => probe('127.0.0.2'), 100);
    const again = performance.now();
    await second.local.settled();
    // The other fell silent, so the name is ours, a second later.
    expect(second.local.state).toBe('held');
    expect(performance.now() - again).toBeGreaterThan(1700);
  });

  it('where a network takes no multicast, or there is none: told once, and nothing else happens', async () => {
    // An address that this machine does not have (RFC 5737).
    const { local, said } = given(() => [{ address: '192.0.2.1', netmask: '255.255.255.0' }]);
    await local.settled();
    expect(local.state).toBe('failed');
    expect(said).toHaveLength(1);
    expect(said[0]).toMatchObject({ level: 40, msg: expect.stringContaining('no multicast DNS') });
    const none = given(() => []);
    await none.local.settled();
    expect(none.local.state).toBe('no-network');
    expect(none.said).toEqual([]);
  });

  it('holds on one network where another fails', async () => {
    const { local, said } = given(() => [LOOPBACK, { address: '192.0.2.1', netmask: '255.255.255.0' }]);
    await local.settled();
    expect(local.state).toBe('held');
    expect(said.map(({ level }) => level).sort()).toEqual([30, 40]);
  });

  const DIG = spawnSync('dig', ['-v']).status === 0;

  it.skipIf(!DIG)(
    'is found by a program of others: dig, which asks as in ordinary DNS (section 6.7)',
    async () => {
      const { local } = given();
      await local.settled();
      const { spawn } = await import('node:child_process');
      const dig = (type: string) =>
        new Promise<string>((resolve) => {
          let out = '';
          const child = spawn('dig', [
            '-p',
            String(PORT),
            '-b',
            '127.0.0.1',
            '@224.0.0.251',
            '+time=2',
            '+tries=1',
            NAME,
            type,
          ]);
          child.stdout.on('data', (part) => {
            out += part;
          });
          child.once('close', () => resolve(out));
        });
      expect(await dig('A')).toMatch(/hall-test\.local\.\s+10\s+IN\s+A\s+127\.0\.0\.1/);
      expect(await dig('AAAA')).toContain('ANSWER: 0');
    },
  );
});

describe('R138: the networks that a server has', () => {
  const one = (address: string, internal = false, family: 'IPv4' | 'IPv6' = 'IPv4') =>
    ({ address, netmask: '255.255.255.0', family, internal, mac: '', cidr: null }) as NetworkInterfaceInfo;
  const interfaces = {
    lo: [one('127.0.0.1', true)],
    eth0: [one('192.168.1.5'), one('fe80::1', false, 'IPv6')],
    wlan0: [one('10.0.0.7')],
  };

  it.each([
    ['0.0.0.0', ['192.168.1.5', '10.0.0.7']],
    ['::', ['192.168.1.5', '10.0.0.7']],
    ['10.0.0.7', ['10.0.0.7']],
    ['127.0.0.1', ['127.0.0.1']],
    ['10.0.0.8', []],
  ])('that listens on %s', (host, addresses) => {
    expect(linksOf(host, interfaces).map(({ address }) => address)).toEqual(addresses);
  });
});

describe('--local-name', () => {
  it.each([
    ['ladderline', 'ladderline.local'],
    ['Hall-2', 'hall-2.local'],
    ['hall.local', 'hall.local'],
    ['a'.repeat(63), `${'a'.repeat(63)}.local`],
  ])('%s is %s', (text, is) => {
    expect(readOptions(['--local-name', text]).localName).toBe(is);
  });

  it.each(['', '-hall', 'hall-', 'hall.firm', 'a b', 'a'.repeat(64)])(
    '%j is refused, with what to write',
    (text) => {
      const exit = vi.spyOn(process, 'exit').mockImplementation(() => {
        throw new Error('ended');
      });
      const said = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
      onTestFinished(() => void vi.restoreAllMocks());
      expect(() => readOptions(['--local-name', text])).toThrow('ended');
      expect(String(said.mock.calls)).toContain('letters, digits and hyphens');
      expect(exit).toHaveBeenCalled();
    },
  );
});
