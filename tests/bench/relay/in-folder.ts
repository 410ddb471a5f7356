import { mkdirSync } from 'node:fs';
import { openDataFolder } from '../../../server/store/data-folder.ts';
import type { Seen } from './crews.ts';
import { type CrewKeys, laidJobs, passesOf } from './logs.ts';
import { BATCH, type Place } from './place.ts';

/** The embedded default: a file of SQLite, in the process of the server. */
export class InFolder implements Place {
  readonly args: readonly string[];

  constructor(private readonly data: string) {
    mkdirSync(data);
    this.args = ['--data', data];
  }

  async lay(jobs: number, length: number, pairs: number): Promise<CrewKeys[]> {
    const store = openDataFolder(this.data);
    const { db } = store;
    const addEntry = db.prepare('INSERT INTO entries (job, seq, ref, hash, body) VALUES (?, ?, NULL, ?, ?)');
    const addHead = db.prepare('INSERT INTO heads (job, count, hash) VALUES (?, ?, ?)');
    const addPass = db.prepare('INSERT INTO passes (token, job, role) VALUES (?, ?, ?)');
    const all: CrewKeys[] = [];
    // What a power cut breaks here is laid down again.
    db.exec('PRAGMA synchronous = OFF');
    for (const { keys, entries } of laidJobs(jobs, length, pairs)) {
      if (all.length % BATCH === 0) db.exec(all.length === 0 ? 'BEGIN' : 'COMMIT; BEGIN');
      const { job } = keys;
      for (const [seq, { hash, body }] of entries.entries()) addEntry.run(job, seq, hash, body);
      addHead.run(job, entries.length, entries.at(-1)?.hash ?? '');
      for (const { token, role } of passesOf(keys)) addPass.run(token, job, role);
      all.push(keys);
    }
    db.exec('COMMIT');
    await store.close();
    return all;
  }

  async misplaced(places: Seen['places']): Promise<number> {
    const store = openDataFolder(this.data);
    let wrong = 0;
    for (const [job, id, seq] of places) if ((await store.seqOf(job, id)) !== seq) wrong += 1;
    await store.close();
    return wrong;
  }

  async remove(): Promise<void> {}
}
