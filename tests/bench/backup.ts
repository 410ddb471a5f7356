import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { backUp } from '../../server/backup/backup.ts';
import { PIECE_BYTES } from '../../server/backup/pieces.ts';
import { restore } from '../../server/backup/restore.ts';
import { DATABASE_FILE, openDataFolder } from '../../server/store/data-folder.ts';
import { headAfter, seal } from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { JobId } from '../../src/model/ids.ts';

/**
 * What backups of a large database cost (`npm run bench:backup -- 200000`: of so many entries): the first, one after a day of
 * twenty new visits, one after nothing, and a restore. Entries are as long as those of a visit are on average (560 bytes in
 * the file), 250 a log, their text as hard to pack as text is.
 */
const ENTRIES = Number(process.argv[2] ?? 200_000);
const A_LOG = 250;
const A_DAY = 20;

const root = mkdtempSync(join(tmpdir(), 'ladderline-bench-'));
const data = join(root, 'data');
const into = join(root, 'backups');

const WORDS =
  'the meter shows vertical back quarter turn hold still settling lower gain toward band heard one four two'.split(
    ' ',
  );
let state = 1;
const next = (most: number): number => {
  state = (state * 48_271) % 2_147_483_647;
  return state % most;
};
const text = () => Array.from({ length: 32 }, () => `${WORDS[next(WORDS.length)]}`).join(' ');
const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const newJob = (): JobId => Array.from({ length: 12 }, () => letters[next(64)]).join('');

async function write(logs: number): Promise<void> {
  const store = openDataFolder(data);
  for (let log = 0; log < logs; log++) {
    const job = newJob();
    let head = await store.head(job);
    const entries: Entry[] = [];
    for (let i = 0; i < A_LOG; i++) {
      const fact = { type: 'remark', seat: 'panel', text: text() } as const;
      const entry = seal(head, { actor: 'panel', fact }, 1_700_000_000_000 + i);
      entries.push(entry);
      head = headAfter(entry);
    }
    await store.append(job, entries);
  }
  await store.close();
}

const mb = (bytes: number): string => (bytes / 1e6).toFixed(1);
const rows: string[][] = [];

async function measure(name: string, at: number): Promise<void> {
  const before = process.cpuUsage();
  const began = performance.now();
  const { bytes, manifest, damaged } = await backUp(data, into, at);
  const seconds = (performance.now() - began) / 1000;
  const { user, system } = process.cpuUsage(before);
  if (damaged.length > 0) throw new Error(`damaged: ${damaged}`);
  const size = statSync(join(data, DATABASE_FILE)).size;
  rows.push([
    name,
    String(manifest.entries),
    mb(size),
    mb(bytes),
    seconds.toFixed(1),
    ((user + system) / 1e6).toFixed(1),
  ]);
}

await write(Math.round(ENTRIES / A_LOG));
await measure('first', 1_000);
await write(A_DAY);
await measure(`after ${A_DAY} new visits`, 2_000);
await measure('after nothing', 3_000);
const began = performance.now();
const { manifest } = await restore(into, join(root, 'restored'), false, 4_000);
const took = (performance.now() - began) / 1000;
rmSync(root, { recursive: true });

console.log(`pieces of ${PIECE_BYTES / 1024} KiB, Node ${process.versions.node}\n`);
console.log(
  '| backup | entries | database, MB | written, MB | s | s of processor |\n| --- | ---: | ---: | ---: | ---: | ---: |',
);
for (const row of rows) console.log(`| ${row.join(' | ')} |`);
console.log(`\nrestored ${manifest.entries} entries in ${took.toFixed(1)} s, every hash checked`);
