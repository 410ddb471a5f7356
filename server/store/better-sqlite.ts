import { createRequire } from 'node:module';
import { type Connection, copyAtOnce, type Driver, type Fault } from './driver.ts';

/** The package that brings an SQLite to Node 20; undefined where it is not installed, or built for another Node. */
export function betterSqlite(): Driver | undefined {
  try {
    // Not imported: it is optional, and a missing import would end the program before it can say a word.
    const Sqlite: new (file: string) => Connection = createRequire(import.meta.url)('better-sqlite3');
    // The package looks for its compiled part only now.
    new Sqlite(':memory:').close();
    return { name: 'better-sqlite3', open: (file) => new Sqlite(file), faultOf, copy };
  } catch {
    return undefined;
  }
}

/** Page by page, with other work in between. The package is typed no further than we use it. */
async function copy(db: Connection, file: string): Promise<void> {
  if ('backup' in db && typeof db.backup === 'function') await db.backup(file);
  else await copyAtOnce(db, file);
}

function faultOf(error: unknown): Fault | undefined {
  const { code = '' } = error as { code?: string };
  if (code === 'SQLITE_NOTADB' || code.startsWith('SQLITE_CORRUPT')) return 'damaged';
  if (code.startsWith('SQLITE_BUSY')) return 'in use';
  return undefined;
}
