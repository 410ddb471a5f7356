import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openDataFolder } from '../../server/store/data-folder.ts';
import { chooseDriver } from '../../server/store/drivers.ts';
import { nodeSqlite } from '../../server/store/node-sqlite.ts';
import { StoreFailure } from '../../server/store/store.ts';
import { emptyHead } from '../../src/log/chain.ts';
import { sealRemarks } from './contract.ts';
import { DRIVERS } from './drivers.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-drivers-'));
afterAll(() => rmSync(root, { recursive: true }));

const JOB = 'job-one-0001';
// Node's documentation of `node:sqlite`: no flag is needed from 22.13.0 on (and 23.4.0).
const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
const HAS_ITS_OWN = major >= 24 || (major === 22 && minor >= 13);

describe('the SQLite in use', () => {
  it("is Node's own where it has one, and better-sqlite3 on Node 20", () => {
    expect(chooseDriver().name).toBe(HAS_ITS_OWN ? 'node:sqlite' : 'better-sqlite3');
  });

  it('is the first one there is', () => {
    const [driver] = DRIVERS;
    expect(chooseDriver([() => undefined, () => driver, () => undefined])).toBe(driver);
  });

  it('is missing with one line that says what to do', () => {
    const choose = () => chooseDriver([() => undefined]);
    expect(choose).toThrow(StoreFailure);
    expect(choose).toThrow(/^Node \d+\.\d+\.\d+ has no SQLite .* use Node 22\.13 .* npm ci again\.$/);
  });

  it('leaves the warnings of others alone', () => {
    const { emitWarning } = process;
    nodeSqlite();
    expect(process.emitWarning).toBe(emitWarning);
  });

  it.runIf(DRIVERS.length > 1)('may change between two runs: each reads what the other wrote', async () => {
    for (const [i, order] of [DRIVERS, DRIVERS.toReversed()].entries()) {
      const [writer, reader] = order;
      const folder = join(root, String(i));
      const written = openDataFolder(folder, writer);
      const entries = sealRemarks(emptyHead(JOB), ['one', 'two “три” 🔥']);
      await written.append(JOB, entries);
      await written.close();
      const read = openDataFolder(folder, reader);
      expect(await read.read(JOB, -1, 10)).toEqual(entries);
      expect(await read.audit(JOB)).toBeUndefined();
      await read.append(JOB, sealRemarks(await read.head(JOB), ['three']));
      await read.close();
    }
  });
});
