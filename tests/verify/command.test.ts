import { spawnSync } from 'node:child_process';
import { generateKeyPairSync } from 'node:crypto';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { SigningKey } from '../../server/notary/ed25519.ts';
import { toArchive } from '../../src/log/archive.ts';
import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import type { Enclosure } from '../../src/log/enclosure.ts';
import { toJsonLines } from '../../src/log/json-lines.ts';
import { headText } from '../../src/log/signed-head.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Fact } from '../../src/model/facts.ts';
import { enclosureOf } from '../../src/simulator/photos.ts';
import { playedVisit } from '../findings/site.ts';

const folder = mkdtempSync(join(tmpdir(), 'ladderline-verify-'));
const log = playedVisit(['late-alarm']);
const text = toJsonLines(log, headAfter(log.at(-1) as Entry));

function run(content: string) {
  const file = join(folder, 'log.jsonl');
  writeFileSync(file, content);
  return command(file);
}

/** As somebody who has only the file can write it again: the chain is right in itself. */
function resealed(change: (fact: Fact) => Fact): string {
  let head = emptyHead(log[0]?.job ?? '');
  const entries = log.map(({ actor, fact, at }) => {
    const changed = change(fact);
    const signed = changed.type === 'signed' ? { ...changed, head } : changed;
    const entry = seal(head, { actor, fact: signed }, at);
    head = headAfter(entry);
    return entry;
  });
  return toJsonLines(entries, head);
}

function command(...args: string[]) {
  const tsx = new URL('../../node_modules/.bin/tsx', import.meta.url).pathname;
  const main = new URL('../../server/verify/main.ts', import.meta.url).pathname;
  const { status, stdout, stderr } = spawnSync(tsx, [main, ...args], { encoding: 'utf8' });
  return { status, out: stdout, error: stderr };
}

describe('npm run verify -- FILE', () => {
  it('ends with 0 for a whole log, and prints its head and its findings', () => {
    const { status, out } = run(text);
    expect(status).toBe(0);
    expect(out).toContain(headAfter(log.at(-1) as Entry).hash);
    expect(out).toContain('A test failed: alarm test');
    expect(out).toContain('NOT PROVEN: who wrote it, and when.');
    expect(out).toMatch(/panel: A\. Example \(Larkmoor Fire Systems; .*\) \(from entry 1\)/);
    expect(out).toMatch(/signed by: S\. Example, Supervisor \(entry \d+\)/);
  });

  it('ends with 1 for a log that was changed, and names the first wrong entry', () => {
    const { status, out } = run(text.replace('told the control room', 'told the fire brigade'));
    expect(status).toBe(1);
    expect(out).toMatch(/^WRONG: Entry \d+ was changed: its hash does not match\.$/m);
  });

  it('prints nothing of a file that a terminal would obey, and no line that the file made up', () => {
    const role = 'Supervisor\u001b[1A\u009b2K\u202e\nSigned: the first 400 entries stood so';
    const { status, out } = run(resealed((fact) => (fact.type === 'signed' ? { ...fact, role } : fact)));
    expect(status).toBe(0);
    expect(out).not.toMatch(/(?!\n)[\p{Cc}\u202e]/u);
    expect(out).not.toMatch(/^Signed: /m);
    expect(out).toContain('Supervisor\\u{1b}[1A\\u{9b}2K\\u{202e}\\u{a}Signed: the first');
    const strange = text.replace('{"format"', '{"\\u001b[2J":1,"format"');
    expect(run(strange).out).toMatch(/^WRONG: Line \d+ has a field that .*: "\\u\{1b\}\[2J"\.\n$/);
  });

  it('ends with 3, and says so loudly, when the log names an engine that is not this one', () => {
    const { status, out } = run(
      resealed((fact) => (fact.type === 'opened' ? { ...fact, engine: 99 } : fact)),
    );
    expect(status).toBe(3);
    expect(out).toMatch(/^NOT VERIFIED: advice and findings\. The log says that engine 99 wrote it/m);
  });

  describe('of a log that a server signed', () => {
    const { publicKey, privateKey } = generateKeyPairSync('ed25519');
    const key = new SigningKey(privateKey);
    const last = headAfter(log.at(-1) as Entry);
    const head = { count: last.count, hash: last.hash, at: 1_800_000_000_000 };
    const signed = { ...head, key: key.public, signature: key.sign(headText(last.job, head)) };
    const file = join(folder, 'signed.jsonl');
    writeFileSync(file, toJsonLines(log, last, { signed: [signed] }));
    const pem = join(folder, 'key.pem');
    writeFileSync(pem, publicKey.export({ type: 'spki', format: 'pem' }));
    const kept = (name: string, heads: object[]) => {
      writeFileSync(join(folder, name), `${JSON.stringify({ heads })}\n`);
      return join(folder, name);
    };

    it.each([
      [
        'its fingerprint, as it is printed',
        ['--key', key.fingerprint.replace(/(.{8})/g, '$1 ')],
        0,
        'Signed: the first',
      ],
      ['the key as a PEM file', ['--key', pem], 0, 'Signed: the first'],
      ['the key, and names it', ['--key', pem], 0, `Key:  ${key.fingerprint}`],
      ['another key', ['--key', 'f'.repeat(64)], 3, `with ${key.fingerprint}`],
      ['heads kept elsewhere', ['--heads', kept('ours', [{ job: last.job, ...signed }])], 0, 'all 1 heads'],
      [
        'heads kept elsewhere that are not of it',
        ['--heads', kept('others', [{ job: last.job, ...signed, hash: 'f'.repeat(64) }])],
        1,
        'WRONG: Entry',
      ],
      ['no head kept elsewhere', ['--heads', kept('none', [])], 3, 'NOT VERIFIED: no head'],
    ])('takes %s', (_, args, status, words) => {
      expect(command(file, ...args)).toMatchObject({ status, out: expect.stringContaining(words) });
    });
  });

  describe('of a log with photos', () => {
    const log = playedVisit(['photo-removed']);
    const text = toJsonLines(log, headAfter(log.at(-1) as Entry));
    const photos = log.flatMap(({ seq, fact }) => (fact.type === 'photo' ? [seq] : []));
    const [gone = -1, kept = -1] = photos;
    const picture = enclosureOf('Serial number');
    const packed = (name: string, held: [number, Enclosure][]) => {
      writeFileSync(join(folder, name), toArchive(text, { photos: new Map(held), sounds: new Map() }));
      return join(folder, name);
    };

    it('ends with 0 when every picture is there, and says which was removed and why', () => {
      const { status, out } = command(packed('whole.zip', [[kept, picture]]));
      expect([photos.length, status]).toEqual([2, 0]);
      expect(out).toContain('Photos: 1 picture, as the log names it.');
      expect(out).toMatch(
        new RegExp(`Removed: the picture of entry ${gone}, by entry \\d+: A face is in it`),
      );
    });

    it('ends with 1 when anything is wrong with the pictures, and names all of it', () => {
      const other = enclosureOf('another');
      const { status, out } = command(
        packed('wrong.zip', [
          [gone, other],
          [kept, other],
          [3, other],
        ]),
      );
      expect(status).toBe(1);
      expect(out.match(/^WRONG: .*$/gm)).toEqual([
        `WRONG: The picture of entry ${gone} is in the file, but the log says that it was removed.`,
        `WRONG: The picture of entry ${kept}, or its salt, was changed: the hash does not match.`,
        'WRONG: The file holds "photos/3.jpg": no entry names it, or it is there twice.',
      ]);
      const lost = command(packed('lost.zip', []));
      expect(lost).toMatchObject({
        status: 1,
        out: expect.stringMatching(/^WRONG: The picture of entry \d+ is missing/),
      });
    });

    it('says of the log alone that its pictures are not verified', () => {
      expect(run(text)).toMatchObject({
        status: 0,
        out: expect.stringContaining('NOT VERIFIED: 1 picture.'),
      });
    });

    it('ends with 2 for a ZIP without a log, or one that was cut', () => {
      const whole = readFileSync(packed('cut.zip', [[kept, picture]]));
      writeFileSync(join(folder, 'cut.zip'), whole.subarray(0, -40));
      expect(command(join(folder, 'cut.zip'))).toMatchObject({
        status: 2,
        error: expect.stringContaining('no whole ZIP'),
      });
    });
  });

  it('ends with 2 when the file does not exist, or no file is named', () => {
    expect(command(join(folder, 'none.jsonl'))).toMatchObject({
      status: 2,
      error: expect.stringContaining('could not be read'),
    });
    expect(command().status).toBe(2);
  });
});
