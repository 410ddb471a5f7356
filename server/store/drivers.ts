import { betterSqlite } from './better-sqlite.ts';
import type { Driver } from './driver.ts';
import { nodeSqlite } from './node-sqlite.ts';
import { StoreFailure } from './store.ts';

/** The first that this Node has. Throws `StoreFailure` when it has none. */
export function chooseDriver(candidates: (() => Driver | undefined)[] = [nodeSqlite, betterSqlite]): Driver {
  for (const candidate of candidates) {
    const driver = candidate();
    if (driver) return driver;
  }
  throw new StoreFailure(
    `Node ${process.versions.node} has no SQLite of its own, and the package better-sqlite3 is missing or built for another Node: use Node 22.13 or newer, or install a compiler (Debian: apt-get install build-essential python3) and run npm ci again.`,
  );
}
