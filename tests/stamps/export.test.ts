import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { askAt } from '../../server/stamps/ask.ts';
import { stampsBy } from '../../server/stamps/token.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { readArchive } from '../../src/log/archive.ts';
import { fromJsonLines, toJsonLines } from '../../src/log/json-lines.ts';
import type { TimeStamp } from '../../src/log/signed-head.ts';
import { stampedLines } from '../../src/phrases/verify.ts';
import { SiteView } from '../../src/protocol/site.ts';
import { serve } from '../server/house.ts';
import { bothIn, get } from '../server/phone.ts';
import { verified } from '../verify/checked.ts';
import { answering, OPENSSL, OtherAuthority, stamping } from './openssl.ts';

describe.skipIf(!OPENSSL)('R135: a record whose time an authority vouches for', () => {
  let tsa: OtherAuthority;
  let other: OtherAuthority;
  let text = '';
  let archived = '';
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-stamped-'));

  beforeAll(() => {
    tsa = new OtherAuthority();
    other = new OtherAuthority('Other stamps');
    tsa.issue('signer');
  });
  afterAll(() => {
    tsa.remove();
    other.remove();
    rmSync(folder, { recursive: true });
  });

  /** A job that was stamped twice and then went on: its export, once for all tests. */
  async function record(): Promise<void> {
    if (text) return;
    const store = new MemoryStore();
    const ask = askAt(await answering(stamping(tsa, 'signer')), stampsBy([tsa.certificate('root')]));
    const { url } = await serve({ store, stamps: { ask, from: 'tsa.example', everyMs: 1 } });
    const { job, panel } = await bothIn(url);
    const lines = async () => (await get(url, '/api/export.jsonl', job.token)).text();
    for (const remark of ['one', 'two']) {
      await panel.ack(panel.remark(remark));
      // Signs the head, which is then stamped.
      await lines();
      const { number } = (await store.signedHeadsOf(job.job)).at(-1) ?? { number: 0 };
      await vi.waitFor(async () => expect(await store.stampOver(number)).toBeDefined());
    }
    const { stampOver } = store;
    store.stampOver = async (number) => {
      const stamp = await Reflect.apply(stampOver, store, [number]);
      return stamp && stamp.size <= stamped ? stamp : undefined;
    };
    const stamped = (await store.lastStamp())?.size ?? 0;
    await panel.ack(panel.remark('after the last stamp'));
    text = await lines();
    const zip = await get(url, '/api/export.zip', job.token);
    archived = readArchive(new Uint8Array(await zip.arrayBuffer()))?.log ?? '';
  }
  beforeEach(record);

  const stampsOf = (log: string): readonly TimeStamp[] => {
    const read = fromJsonLines(log);
    return read.ok ? (read.proof?.stamps ?? []) : [];
  };
  const withStamps = (change: (stamps: TimeStamp[]) => TimeStamp[]): string => {
    const read = fromJsonLines(text);
    if (!read.ok || !read.proof) throw new Error('no proof');
    return toJsonLines(read.entries, read.head, {
      ...read.proof,
      stamps: change([...(read.proof.stamps ?? [])]),
    });
  };
  const given = () => ({ checkStamp: stampsBy([tsa.certificate('root')]) });

  it('has each time stamp once, with the last entries that it covers, in JSON Lines and in the ZIP', () => {
    const stamps = stampsOf(text);
    expect(stamps.length).toBeGreaterThanOrEqual(2);
    expect(new Set(stamps.map(({ token }) => token)).size).toBe(stamps.length);
    const counts = stamps.map(({ count }) => count);
    expect(counts).toEqual([...counts].sort((a, b) => a - b));
    expect(stampsOf(archived)).toEqual(stamps);
  });

  it('is proven to who gives the certificate of the authority: by whom, when, and what is not', () => {
    const result = verified(text, given());
    expect(result).toMatchObject({ ok: true, stamped: { kind: 'stamped', unproven: 0 } });
    if (!result.ok) return;
    const lines = stampedLines(result.stamped, result.head.count).join('\n');
    expect(lines).toMatch(
      /Time: the first \d+ entries stood so at 20\d\d-.*Z \(to within 1 s\), as CN=Test stamps signer vouches\./,
    );
    expect(lines).toContain('Its certificate ends at 2049-12-31T23:59:59.000Z.');
    expect(lines).toMatch(/NOT PROVEN: the time of the \d+ entries after them\./);
  });

  it('is not proven without that certificate, nor by that of another', () => {
    for (const [check, doubt] of [
      [undefined, 'nobody-named'],
      [[other.certificate('root')], 'other-authority'],
    ] as const) {
      const result = verified(text, { checkStamp: stampsBy(check) });
      expect(result).toMatchObject({ ok: true, stamped: { kind: 'unproven', doubt } });
      if (result.ok) expect(stampedLines(result.stamped, 9)[0]).toMatch(/^NOT PROVEN: the time\./);
    }
    const none = verified(
      withStamps(() => []),
      given(),
    );
    expect(none).toMatchObject({ ok: true, stamped: { kind: 'none' } });
    if (none.ok) expect(stampedLines(none.stamped, 9)[0]).toMatch(/^NOT PROVEN: the time\./);
  });

  const first = (change: (stamp: TimeStamp) => TimeStamp) =>
    withStamps(([stamp, ...others]) => (stamp ? [change(stamp), ...others] : []));

  it.each<[string, () => string, fault: string]>([
    [
      'over fewer entries than it says',
      () => first((stamp) => ({ ...stamp, count: stamp.count + 1 })),
      'tree',
    ],
    [
      'of a tree with another place',
      () => first((s) => ({ ...s, tree: { ...s.tree, index: s.tree.index + 1 } })),
      'tree',
    ],
    [
      'of a tree that is said to be of another time',
      () => first((s) => ({ ...s, tree: { ...s.tree, at: s.tree.at - 1 } })),
      'tree',
    ],
    [
      'of another tree',
      () =>
        withStamps(([a, b, ...rest]) =>
          a && b ? [{ ...a, token: b.token, nonce: b.nonce }, b, ...rest] : [],
        ),
      'imprint',
    ],
    [
      'with another nonce',
      () => first((s) => ({ ...s, nonce: `4${s.nonce.slice(1, -1)}${s.nonce.endsWith('0') ? '1' : '0'}` })),
      'nonce',
    ],
    [
      'whose token was changed',
      () =>
        first((s) => {
          const der = Buffer.from(s.token, 'base64');
          der[der.length - 5] = (der[der.length - 5] ?? 0) ^ 1;
          return { ...s, token: der.toString('base64') };
        }),
      'signature',
    ],
  ])('is wrong with a time stamp %s', (_, changed, fault) => {
    expect(verified(changed(), given())).toMatchObject({ ok: false, wrong: { kind: 'stamp', fault } });
  });

  it.each<[string, log: () => string, authority: (() => string) | undefined, status: number, says: RegExp]>([
    // The last entries are not stamped yet.
    ['by the authority', () => text, () => tsa.path('root.pem'), 3, /CN=Test stamps signer vouches/],
    ['and the authority is not given', () => text, undefined, 0, /give it with --stamp-authority/],
    ['by another', () => text, () => other.path('root.pem'), 3, /does not come from the authority/],
    [
      'and it was changed',
      () => first((stamp) => ({ ...stamp, nonce: '4'.repeat(32) })),
      () => tsa.path('root.pem'),
      1,
      /^WRONG: The time stamp over the entries up to \d+ answers another/,
    ],
    ['and the file is none', () => text, () => tsa.path('root.key'), 2, /holds no certificate \(PEM\)/],
  ])('npm run verify, of a log that is stamped %s', (_, log, authority, status, says) => {
    const file = join(folder, 'log.jsonl');
    writeFileSync(file, log());
    const given = authority ? ['--stamp-authority', authority()] : [];
    const ended = spawnSync('node_modules/.bin/tsx', ['server/verify/main.ts', file, ...given], {
      encoding: 'utf8',
    });
    expect([ended.status, `${ended.stdout}${ended.stderr}`]).toEqual([status, expect.stringMatching(says)]);
  });
});

it('R136: the board says how it stands with time stamps, and nothing where nobody is asked', async () => {
  const view = async (url: string) => {
    const opened = await fetch(`${url}/api/sites`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ site: 'Larkmoor depot' }),
    });
    const { desk } = (await opened.json()) as { desk: string };
    return SiteView.parse(await (await get(url, '/api/site', desk)).json());
  };
  const ask = () => Promise.reject(new Error('nobody there'));
  const { url } = await serve({ stamps: { ask, from: 'tsa.example', everyMs: 60_000 } });
  expect((await view(url)).stamping).toEqual({ from: 'tsa.example', isBehind: false });
  const plain = await serve({});
  expect((await view(plain.url)).stamping).toBeUndefined();
});
