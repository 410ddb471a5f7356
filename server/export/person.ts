import { entryLine } from '../../src/log/json-lines.ts';
import { isSameName } from '../../src/model/person.ts';
import { findName } from '../forget/find.ts';
import { wholeLog } from '../record/files.ts';
import { placeOf } from '../record/place.ts';
import type { AccountBook } from '../store/account-book.ts';
import { allReads } from '../store/pages.ts';
import type { KeptRead } from '../store/reads.ts';
import type { Store } from '../store/store.ts';
import type { ExportFolder } from './folder.ts';
import { ACCOUNTS_FILE, ENTRIES_FILE, type Manifest, READS_FILE } from './manifest.ts';
import { shownAccounts } from './shown-accounts.ts';

export interface PersonExport {
  readonly store: Store;
  readonly book: AccountBook;
  /** As it was typed; case and spaces do not matter. */
  readonly name: string;
  /** Now, ms. */
  readonly at: number;
}

type PersonManifest = Extract<Manifest, { of: 'person' }>;

/**
 * All that names one person: each entry that holds the name, as its line in an export, so that its hash can be checked; the account;
 * and what was read with it. The other entries of these records are not theirs. Rejects with `StoreFailure`.
 */
export async function exportPerson(from: PersonExport, to: ExportFolder): Promise<PersonManifest> {
  const { store, book, name, at } = from;
  const records: PersonManifest['records'] = [];
  const lines: string[] = [];
  for (const { job, beside, inside, loose, damaged } of await findName(store, name)) {
    const { head, entries } = await wholeLog(store, job);
    const named = new Set([...beside, ...inside, ...loose]);
    lines.push(...entries.filter(({ seq }) => named.has(seq)).map(entryLine));
    records.push({
      ...{ head, ...placeOf(entries[0]), beside: [...beside], inside: [...inside], text: [...loose] },
      ...(damaged && { damaged }),
    });
  }
  to.write(ENTRIES_FILE, lines.map((line) => `${line}\n`).join(''));
  const isTheirs = (one: { readonly name: string }) => isSameName(one.name, name);
  to.write(ACCOUNTS_FILE, `${JSON.stringify(shownAccounts(book, isTheirs), undefined, 1)}\n`);
  const reads = await to.writeLines(READS_FILE, readsBy(store, isTheirs));
  const manifest: PersonManifest = {
    ...{ format: 'ladderline-own-data', version: 1, of: 'person', name, at, records, reads },
  };
  await to.finish(manifest);
  return manifest;
}

async function* readsBy(store: Store, isTheirs: (read: KeptRead) => boolean): AsyncGenerator<KeptRead[]> {
  for await (const reads of allReads(store))
    yield reads.filter((read) => read.reader === 'account' && isTheirs(read));
}
