import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, onTestFinished, vi } from 'vitest';
import { checkSignature, SIGNING_KEY_FILE, SigningKey } from '../../server/notary/ed25519.ts';
import type { Published } from '../../server/notary/notary.ts';
import { toAddress, toFile } from '../../server/notary/publish.ts';
import { MemoryStore } from '../../server/store/memory.ts';
import { StoreFailure } from '../../server/store/store.ts';
import { fromJsonLines } from '../../src/log/json-lines.ts';
import { isBeginning } from '../../src/log/merkle.ts';
import { headText, treeText } from '../../src/log/signed-head.ts';
import { HeadsConsistency, HeadsTree, ServerKey } from '../../src/protocol/heads.ts';
import { sealRemarks } from '../store/contract.ts';
import { verified } from '../verify/checked.ts';
import { serve } from './house.ts';
import { bothIn, get } from './phone.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-notary-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;
const newFolder = () => mkdtempSync(join(root, `${++folders}-`));

describe('the signing key', () => {
  it('is made once, for its owner alone, and signs what others can check', () => {
    const folder = newFolder();
    const key = SigningKey.ofFolder(folder);
    expect(statSync(join(folder, SIGNING_KEY_FILE)).mode & 0o777).toBe(0o600);
    expect(SigningKey.ofFolder(folder).fingerprint).toBe(key.fingerprint);
    const signature = key.sign('text');
    expect(checkSignature(key.public, 'text', signature)).toBe(true);
    expect(checkSignature(key.public, 'text!', signature)).toBe(false);
    expect(checkSignature(SigningKey.make().public, 'text', signature)).toBe(false);
  });

  it('is not replaced when it cannot be read: people have noted it down', () => {
    const folder = newFolder();
    writeFileSync(join(folder, SIGNING_KEY_FILE), 'scribble');
    expect(() => SigningKey.ofFolder(folder)).toThrow(StoreFailure);
    expect(readFileSync(join(folder, SIGNING_KEY_FILE), 'utf8')).toBe('scribble');
  });
});

describe('R49: the heads of logs', () => {
  it('are signed, and an export proves them to who knows the key that the server gives', async () => {
    const signingKey = SigningKey.make();
    const { url } = await serve({ signingKey });
    const { job, panel } = await bothIn(url);
    await panel.ack(panel.remark('a remark'));
    const key = ServerKey.parse(await (await get(url, '/api/key', undefined)).json());
    expect(key).toEqual({ fingerprint: signingKey.fingerprint, public: signingKey.public });
    const text = await (await get(url, '/api/export.jsonl', job.token)).text();
    const read = fromJsonLines(text);
    expect(verified(text, { key: key.fingerprint })).toMatchObject({
      ok: true,
      signed: { kind: 'signed', count: read.ok ? read.head.count : -1 },
    });
    expect(verified(text, { key: SigningKey.make().fingerprint })).toMatchObject({
      signed: { kind: 'other-key' },
    });
  });

  it('are signed at once when a test shows something at the panel, without anybody asking', async () => {
    const store = new MemoryStore();
    const { url } = await serve({ store });
    const { job, panel } = await bothIn(url);
    await panel.ack(panel.say('panel shows alarm'));
    const shown = await panel.entry(({ fact }) => fact.type === 'panel');
    await vi.waitFor(async () => {
      const signed = await store.signedHeadsOf(job.job);
      expect(signed.at(-1)?.count).toBeGreaterThan(shown.seq);
    });
  });

  it('are signed when the server ends, and never the head of a damaged log', async () => {
    const store = Object.assign(new MemoryStore(), { close: async () => {} });
    const server = await serve({ store });
    const { job, panel } = await bothIn(server.url);
    await panel.ack(panel.remark('a remark'));
    await server.close();
    const { hash } = await store.head(job.job);
    expect((await store.signedHeadsOf(job.job)).at(-1)?.hash).toBe(hash);

    // Somebody else goes on with the log, and it fails its check.
    await store.append(job.job, sealRemarks(await store.head(job.job), ['forged']));
    store.audit = async () => ({ seq: 3, fault: 'hash' });
    const again = await serve({ store });
    expect((await get(again.url, '/api/export.jsonl', job.token)).status).toBe(200);
    expect((await store.signedHeadsOf(job.job)).at(-1)?.hash).toBe(hash);
  });

  it('lie in one tree, and every earlier tree is the beginning of every later one', async () => {
    const { url } = await serve();
    const tree = async () => HeadsTree.parse(await (await get(url, '/api/heads', undefined)).json());
    const { job, panel } = await bothIn(url);
    await get(url, '/api/export.jsonl', job.token);
    const early = await tree();
    for (const text of ['one', 'two', 'three']) {
      await panel.ack(panel.remark(text));
      await get(url, '/api/export.jsonl', job.token);
    }
    const late = await tree();
    expect(late.size).toBe(early.size + 3);
    const at = `/api/heads/consistency?from=${early.size}&to=${late.size}`;
    const { path } = HeadsConsistency.parse(await (await get(url, at, undefined)).json());
    const bytes = (hex: string) => Uint8Array.from(Buffer.from(hex, 'hex'));
    const of = ({ size, root }: typeof early) => ({ size, root: bytes(root) });
    expect(isBeginning(of(early), of(late), path.map(bytes))).toBe(true);
    expect(checkSignature(late.key, treeText(late), late.signature)).toBe(true);
    for (const wrong of [
      '',
      '?from=1',
      '?from=9&to=2',
      '?from=0&to=99999',
      '?from=-1&to=1',
      '?from=x&to=1',
    ]) {
      expect((await get(url, `/api/heads/consistency${wrong}`, undefined)).status).toBe(404);
    }
  });

  it('go on in the same tree after a restart', async () => {
    const store = Object.assign(new MemoryStore(), { close: async () => {} });
    const signingKey = SigningKey.make();
    const first = await serve({ store, signingKey });
    const { job } = await bothIn(first.url);
    await first.close();
    const second = await serve({ store, signingKey });
    const text = await (await get(second.url, '/api/export.jsonl', job.token)).text();
    const read = fromJsonLines(text);
    expect(read.ok && read.proof?.tree?.size).toBeGreaterThan(0);
    expect(verified(text, { key: signingKey.fingerprint })).toMatchObject({ signed: { kind: 'signed' } });
  });
});

describe('R48: signed heads that are sent elsewhere', () => {
  it('come as lines of a file, and by POST; what did not arrive comes again', async () => {
    const file = join(newFolder(), 'heads.jsonl');
    const bodies: Published[] = [];
    let failing = true;
    const taker = createServer((request, response) => {
      let body = '';
      request.on('data', (part) => {
        body += part;
      });
      request.on('end', () => {
        if (!failing) bodies.push(JSON.parse(body));
        response.writeHead(failing ? 500 : 204).end();
      });
    }).listen(0, '127.0.0.1');
    onTestFinished(() => void taker.close());
    await new Promise((resolve) => taker.once('listening', resolve));
    const { port } = taker.address() as AddressInfo;
    const { url } = await serve({ publish: [toFile(file), toAddress(`http://127.0.0.1:${port}/heads`)] });
    const { job, panel } = await bothIn(url);
    await get(url, '/api/export.jsonl', job.token);
    expect(bodies).toEqual([]);
    failing = false;
    await panel.ack(panel.remark('a remark'));
    const text = await (await get(url, '/api/export.jsonl', job.token)).text();
    const [news] = bodies;
    expect(news?.heads).toHaveLength(2);
    for (const { job: of, ...head } of news?.heads ?? []) {
      expect(checkSignature(head.key, headText(of, head), head.signature)).toBe(true);
    }
    const lines = readFileSync(file, 'utf8')
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as Published);
    expect(lines.flatMap(({ heads }) => heads)).toEqual(news?.heads);
    expect(verified(text, { kept: news?.heads ?? [] })).toMatchObject({ ok: true });
  });
});
