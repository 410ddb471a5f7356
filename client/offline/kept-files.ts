import type { FileList } from './asked.ts';

/**
 * Sets of files that belong together, such as a model with its alphabet. A set has a cache of its own and is used
 * only when it is whole: two versions are never mixed.
 */

const PREFIX = 'ladderline-hearing ';
/** Written last. */
const WHOLE = '/whole';
const REVISION = 'x-kept-revision';

async function wholeSet(): Promise<Cache | undefined> {
  for (const name of await caches.keys()) {
    if (!name.startsWith(PREFIX)) continue;
    const set = await caches.open(name);
    if (await set.match(WHOLE)) return set;
  }
  return undefined;
}

export const isKept = async (): Promise<boolean> =>
  globalThis.caches !== undefined && (await wholeSet()) !== undefined;

export const keptFile = async (path: string): Promise<Response | undefined> =>
  (await wholeSet())?.match(path);

/** Keeps these files, and no others. What is kept already is not fetched again. Rejects when there is no link. */
export async function keep(files: FileList): Promise<void> {
  const name = PREFIX + (await digest(files.map(({ url, revision }) => `${url} ${revision}`).join('\n')));
  const before = await wholeSet();
  const set = await caches.open(name);
  if (await set.match(WHOLE)) return;
  for (const { url, revision } of files) {
    if (await isSame(set, url, revision)) continue;
    const known = before && (await isSame(before, url, revision)) && (await before.match(url));
    await set.put(url, known || (await fetched(url, revision)));
  }
  await set.put(WHOLE, new Response());
  for (const other of await caches.keys()) {
    if (other.startsWith(PREFIX) && other !== name) await caches.delete(other);
  }
}

async function isSame(set: Cache, url: string, revision: string): Promise<boolean> {
  return (await set.match(url))?.headers.get(REVISION) === revision;
}

async function fetched(url: string, revision: string): Promise<Response> {
  const answer = await fetch(url, { cache: 'no-cache' });
  if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
  // Not the other headers: some are about how it was packed on its way.
  const type = answer.headers.get('content-type') ?? 'application/octet-stream';
  return new Response(await answer.blob(), { headers: { 'content-type': type, [REVISION]: revision } });
}

async function digest(text: string): Promise<string> {
  const bytes = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return Array.from(new Uint8Array(bytes), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
