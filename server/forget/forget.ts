import { existsSync } from 'node:fs';
import { seal } from '../../src/log/chain.ts';
import { isSameName } from '../../src/model/person.ts';
import { databaseIn } from '../backup/folder.ts';
import { digest } from '../guard/secrets.ts';
import type { DatabaseAddress } from '../postgres/address.ts';
import { openUnused } from '../postgres/open.ts';
import { openDataFolder } from '../store/data-folder.ts';
import { refuseElsewhere } from '../store/records-elsewhere.ts';
import { type Store, StoreFailure } from '../store/store.ts';
import { summaryKeyOf } from '../store/summary-key.ts';
import { type Found, findName } from './find.ts';

export interface Wish {
  readonly name: string;
  /** Goes into each record. */
  readonly why: string;
  /** Without it nothing is changed. */
  readonly isSure: boolean;
  /** Now, ms. */
  readonly at: number;
}

/** Where a name stood. */
export interface Forgotten {
  readonly records: readonly Found[];
  /** In the list of who read what, as it was written there. */
  readonly readers: readonly string[];
}

/**
 * Deletes a name, with the salts, beside every entry of a data folder whose server is stopped; each record gets an entry that says
 * so. Returns where it stood. Rejects with `StoreFailure`.
 */
export async function forgetIn(data: string, wish: Wish): Promise<Forgotten> {
  refuseElsewhere(data, (database) => `name it with --store ${database}.`);
  if (!existsSync(databaseIn(data))) {
    throw new StoreFailure(
      `there is no database in ${data}: name the data folder of the server with --data.`,
    );
  }
  return forgetAndClose(openDataFolder(data), wish);
}

/** The same in the database of a server whose processes are all stopped. */
export async function forgetInDatabase(
  address: DatabaseAddress,
  data: string,
  wish: Wish,
): Promise<Forgotten> {
  return forgetAndClose(await openUnused(address, summaryKeyOf(data).key), wish);
}

async function forgetAndClose(store: Store, wish: Wish): Promise<Forgotten> {
  try {
    return { records: await forgetName(store, wish), readers: await forgetReader(store, wish) };
  } finally {
    await store.close();
  }
}

/** The same in a store. A damaged log stays as it is: it is evidence, and nothing can be added to it. */
export async function forgetName(store: Store, { name, why, isSure, at }: Wish): Promise<Found[]> {
  const found = await findName(store, name);
  for (const { job, beside, damaged } of found) {
    if (!isSure || damaged || beside.length === 0) continue;
    const fact = { type: 'names-forgotten' as const, entries: [...beside], why };
    const entry = seal(await store.head(job), { actor: 'server', fact }, at, digest);
    const appended = await store.append(job, [entry], {}, { forget: beside });
    if (appended.kind !== 'stored') throw new StoreFailure(`the log ${job} did not take the entry.`);
  }
  return found;
}

/** The same in the list of who read what: each line stays, without the name. */
export async function forgetReader(store: Store, { name, isSure }: Wish): Promise<string[]> {
  const readers = (await store.readers()).filter((reader) => isSameName(reader, name));
  if (isSure) for (const forget of readers) await store.changeReads({ forget });
  return readers;
}
