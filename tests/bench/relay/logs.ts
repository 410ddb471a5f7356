import { createHash } from 'node:crypto';
import { digest, newToken } from '../../../server/guard/secrets.ts';
import { openDataFolder } from '../../../server/store/data-folder.ts';
import { bodyOf, GENESIS } from '../../../src/log/chain.ts';
import type { Entry } from '../../../src/model/entry.ts';
import type { JobId } from '../../../src/model/ids.ts';
import { LoggedJob } from '../../../src/simulator/logged-job.ts';
import { SETUP } from '../../server/phone.ts';

/** What the three phones of a crew come in with. */
export interface CrewKeys {
  readonly job: JobId;
  readonly panel: string;
  readonly emitter: string;
  readonly watcher: string;
}

/** It ended so long ago that nothing of it is still due, ms. */
const AGO_MS = 3_600_000;
/** Between two sentences, ms. */
const PACE_MS = 2_000;
/** Logs laid down in one transaction. */
const BATCH = 100;

/** An alignment with at least so many entries, by people who say a reading and "done" in turn. */
function alignment(length: number): Entry[] {
  const job = new LoggedJob('bench-pattern', Date.now() - AGO_MS - length * PACE_MS);
  job.input({ kind: 'open', setup: SETUP });
  for (const seat of ['panel', 'emitter'] as const)
    job.input({ kind: 'seated', seat, device: `${seat} phone`, takeover: false });
  for (let step = 0; job.entries.length < length; step++) {
    if (step % 2 === 0) job.say('panel', String(30 + (step % 7)));
    else job.say('emitter', 'done');
    job.wait(PACE_MS);
  }
  return job.entries;
}

/** The body of an entry without the name of its job and the hash before it, which stand in this order. */
function aroundNames(entry: Entry): readonly [string, string, string] {
  const [before = '', rest = ''] = bodyOf(entry).split(entry.job);
  const [between = '', after = ''] = rest.split(entry.prev);
  return [before, between, after];
}

/**
 * Lays jobs whose logs are this long into a data folder and returns their keys. Straight into the tables, in their
 * order: ten million entries would take hours one append after the other.
 */
export async function layJobs(folder: string, jobs: number, length: number): Promise<CrewKeys[]> {
  const pattern = alignment(length).map(aroundNames);
  const store = openDataFolder(folder);
  const { db } = store;
  const addEntry = db.prepare('INSERT INTO entries (job, seq, ref, hash, body) VALUES (?, ?, NULL, ?, ?)');
  const addHead = db.prepare('INSERT INTO heads (job, count, hash) VALUES (?, ?, ?)');
  const addPass = db.prepare('INSERT INTO passes (token, job, role) VALUES (?, ?, ?)');
  const keys: CrewKeys[] = [];
  // What a power cut breaks here is laid down again.
  db.exec('PRAGMA synchronous = OFF');
  for (let i = 0; i < jobs; i++) {
    if (i % BATCH === 0) db.exec(i === 0 ? 'BEGIN' : 'COMMIT; BEGIN');
    const job = `bench-${String(i).padStart(8, '0')}`;
    let prev = GENESIS;
    for (const [seq, around] of pattern.entries()) {
      const body = `${around[0]}${job}${around[1]}${prev}${around[2]}`;
      prev = createHash('sha256').update(body).digest('hex');
      addEntry.run(job, seq, prev, body);
    }
    addHead.run(job, pattern.length, prev);
    const one = { job, panel: newToken(), emitter: newToken(), watcher: newToken() };
    for (const role of ['panel', 'emitter', 'watcher'] as const) addPass.run(digest(one[role]), job, role);
    keys.push(one);
  }
  db.exec('COMMIT');
  await store.close();
  return keys;
}
