import { betterSqlite } from '../../server/store/better-sqlite.ts';
import type { Driver } from '../../server/store/driver.ts';
import { nodeSqlite } from '../../server/store/node-sqlite.ts';

/** Every SQLite that this Node has: both on Node 22 and newer where better-sqlite3 is installed. */
export const DRIVERS: Driver[] = [nodeSqlite(), betterSqlite()].filter((driver) => driver !== undefined);
