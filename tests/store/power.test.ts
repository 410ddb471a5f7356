import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { DATABASE_FILE, openDataFolder } from '../../server/store/data-folder.ts';
import { emptyHead } from '../../src/log/chain.ts';
import { sealRemarks } from './contract.ts';
import { DRIVERS } from './drivers.ts';

const root = mkdtempSync(join(tmpdir(), 'ladderline-power-'));
afterAll(() => rmSync(root, { recursive: true }));
let folders = 0;
const newFolder = () => join(root, String(++folders));

const JOB = 'job-one-0001';
const BATCHES = 12;

/**
 * What lies on the disk after the power went: all that was written through before the last acknowledgement, and of what
 * was written after it any part, torn, or other bytes. That SQLite asks the system to write through is held elsewhere
 * (`synchronous = FULL` on the live connection); whether the disk does it when asked cannot be tried without cutting
 * the power of a machine.
 */
describe.each(DRIVERS)('when the power goes, with $name', (driver) => {
  it('every entry that was acknowledged is there, and the log is whole, whatever became of the rest', async () => {
    const folder = newFolder();
    const store = openDataFolder(folder, driver);
    const wal = join(folder, `${DATABASE_FILE}-wal`);
    /** The length of the write-ahead log when each batch was acknowledged. */
    const through: number[] = [];
    const all = sealRemarks(
      emptyHead(JOB),
      Array.from({ length: 2 * BATCHES }, (_, i) => `remark ${i} ${'x'.repeat(i * 40)}`),
    );
    for (let batch = 0; batch < BATCHES; batch++) {
      await store.append(JOB, all.slice(2 * batch, 2 * batch + 2));
      through.push(statSync(wal).size);
    }
    const whole = readFileSync(wal);

    await fc.assert(
      fc.asyncProperty(
        fc.nat(BATCHES - 1),
        fc.nat(),
        fc.constantFrom('cut', 'zeros', 'other bytes'),
        async (batch, more, rest) => {
          const written = through[batch] ?? 0;
          // Something of what came later may have reached the disk.
          const kept = written + (more % (whole.length - written + 1));
          const tail = Buffer.alloc(rest === 'cut' ? 0 : 9_000, rest === 'zeros' ? 0 : 'xyz');
          const after = newFolder();
          mkdirSync(after);
          copyFileSync(join(folder, DATABASE_FILE), join(after, DATABASE_FILE));
          writeFileSync(join(after, `${DATABASE_FILE}-wal`), Buffer.concat([whole.subarray(0, kept), tail]));
          const again = openDataFolder(after, driver);
          const entries = await again.read(JOB, -1, 1_000);
          expect(entries.length).toBeGreaterThanOrEqual(2 * (batch + 1));
          // A batch is there as a whole or not at all.
          expect(entries).toEqual(all.slice(0, 2 * Math.floor(entries.length / 2)));
          expect(await again.audit(JOB)).toBeUndefined();
          await again.close();
        },
      ),
      { numRuns: 60 },
    );
    await store.close();
  });
});
