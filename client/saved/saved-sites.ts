import type { Storage } from '../browser/storage.ts';

/** A site that this device can open. It is kept, so that nobody has to keep its long address. */
export interface SavedSite {
  /** The desk's token, or a watcher's. */
  token: string;
  site: string;
  /** The read-only token, to give to others. Only the device that opened the site has it. */
  watch?: string;
  /** How many of its pairs were in trouble when this device last saw its board, and when that was, ms. */
  troubled?: number;
  seenAt?: number;
}

const KEY = 'sites';
const MOST = 20;

/** Newest first. Checked by hand: the first page shows this, and a schema library is larger than that page. */
export function savedSites(storage: Storage): SavedSite[] {
  const kept = storage.read(KEY);
  return Array.isArray(kept) ? kept.flatMap(savedSite) : [];
}

function savedSite(kept: Partial<SavedSite> | null): SavedSite[] {
  if (typeof kept?.token !== 'string' || typeof kept.site !== 'string') return [];
  const { token, site, watch, troubled, seenAt } = kept;
  return [
    {
      token,
      site,
      ...(typeof watch === 'string' && { watch }),
      ...(typeof troubled === 'number' && typeof seenAt === 'number' && { troubled, seenAt }),
    },
  ];
}

/** Puts a site first. What is already known about it, such as its read-only token, stays. */
export function saveSite(storage: Storage, saved: SavedSite): boolean {
  const before = savedSites(storage);
  const known = before.find(({ token }) => token === saved.token);
  const others = before.filter(({ token }) => token !== saved.token);
  return storage.write(KEY, [{ ...known, ...saved }, ...others].slice(0, MOST));
}

/** Sites with pairs in trouble first, as far as this device has seen. */
export const troubledSitesFirst = (sites: readonly SavedSite[]): SavedSite[] =>
  sites.toSorted((a, b) => Number((b.troubled ?? 0) > 0) - Number((a.troubled ?? 0) > 0));

export const forgetSite = (storage: Storage, token: string): void =>
  void storage.write(
    KEY,
    savedSites(storage).filter((saved) => saved.token !== token),
  );
