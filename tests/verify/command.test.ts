import { spawnSync } from 'node:child_process';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { headAfter } from '../../src/log/chain.ts';
import { toJsonLines } from '../../src/log/json-lines.ts';
import type { Entry } from '../../src/model/entry.ts';
import { playedVisit } from '../findings/site.ts';

const folder = mkdtempSync(join(tmpdir(), 'ladderline-verify-'));
const log = playedVisit(['late-alarm']);
const text = toJsonLines(log, headAfter(log.at(-1) as Entry));

function run(content: string) {
  const file = join(folder, 'log.jsonl');
  writeFileSync(file, content);
  return command(file);
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
    expect(out).toMatch(/panel: A\. Example \(Larkmoor Fire Systems; .*\) \(from entry 1\)/);
    expect(out).toMatch(/signed by: S\. Example, Supervisor \(entry \d+\)/);
  });

  it('ends with 1 for a log that was changed, and names the first wrong entry', () => {
    const { status, out } = run(text.replace('told the control room', 'told the fire brigade'));
    expect(status).toBe(1);
    expect(out).toMatch(/^WRONG: Entry \d+ was changed: its hash does not match\.$/m);
  });

  it('ends with 2 when the file does not exist, or no file is named', () => {
    expect(command(join(folder, 'none.jsonl'))).toMatchObject({
      status: 2,
      error: expect.stringContaining('could not be read'),
    });
    expect(command().status).toBe(2);
  });
});
