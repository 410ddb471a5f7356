import type { Entry } from '../../src/model/entry.ts';

/**
 * The entries of this phone's jobs, so that a reload without a link still shows them. A browser that has no such
 * store, or a full one, keeps none: then the page shows the job only after the link is back.
 */

const BASE = 'ladderline';
const STORE = 'entries';
/** Some browsers never answer when asked to open a store. */
const PATIENCE_MS = 1_000;

let opening: Promise<IDBDatabase | undefined> | undefined;

function base(): Promise<IDBDatabase | undefined> {
  opening ??= new Promise((resolve) => {
    setTimeout(() => resolve(undefined), PATIENCE_MS);
    try {
      const request = indexedDB.open(BASE, 1);
      request.onupgradeneeded = () => request.result.createObjectStore(STORE);
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => resolve(undefined);
    } catch {
      resolve(undefined);
    }
  });
  return opening;
}

/** All entries under `name`, by their number. */
const all = (name: string): IDBKeyRange => IDBKeyRange.bound([name], [name, []]);

/** What was kept under `name`, in order, as it was put there. */
export async function readKept(name: string): Promise<unknown[]> {
  const opened = await base();
  if (!opened) return [];
  return new Promise((resolve) => {
    const request = opened.transaction(STORE).objectStore(STORE).getAll(all(name));
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => resolve([]);
  });
}

export async function keepEntries(name: string, entries: readonly Entry[]): Promise<void> {
  const store = (await base())?.transaction(STORE, 'readwrite').objectStore(STORE);
  for (const entry of entries) store?.put(entry, [name, entry.seq]);
}

export async function forgetEntries(name: string): Promise<void> {
  (await base())?.transaction(STORE, 'readwrite').objectStore(STORE).delete(all(name));
}

/** Forgets what is kept under any other name. */
export async function forgetAllBut(names: readonly string[]): Promise<void> {
  const store = (await base())?.transaction(STORE, 'readwrite').objectStore(STORE);
  const request = store?.getAllKeys();
  if (!request) return;
  request.onsuccess = () => {
    for (const key of request.result) if (!names.includes((key as [string, number])[0])) store?.delete(key);
  };
}
