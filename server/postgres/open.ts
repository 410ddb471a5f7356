import type { Warn } from '../store/sqlite.ts';
import { StoreFailure } from '../store/store.ts';
import type { SummaryKey } from '../store/summary-key.ts';
import { addressFault, type DatabaseAddress, nameOf } from './address.ts';
import { Database } from './database.ts';
import { PostgresStore } from './postgres.ts';
import { STEPS } from './schema.ts';

/** PostgreSQL 13, as its `server_version_num` says it; older ones are out of support. */
const OLDEST = 130_000;

/**
 * Opens the store in a database, and brings its tables up to this program. `key`: with which summaries are sealed. Rejects with
 * `StoreFailure`, in a sentence that says what to do.
 */
export async function openPostgres(
  address: DatabaseAddress,
  key: SummaryKey,
  warn: Warn = () => {},
): Promise<PostgresStore> {
  const database = await Database.reach(address);
  try {
    await refuseUnsafe(database);
    await bringUp(database);
    return new PostgresStore(database, key, warn);
  } catch (error) {
    await database.close();
    throw error;
  }
}

/** The same, for a command that needs the database for itself: refused while a server uses it. */
export async function openUnused(address: DatabaseAddress, key: SummaryKey): Promise<PostgresStore> {
  const fault = addressFault(address.url);
  if (fault !== undefined) throw new StoreFailure(fault);
  const store = await openPostgres(address, key);
  const [url] = await store.leases.alive();
  if (url === undefined) return store;
  await store.close();
  throw new StoreFailure(`a server uses ${nameOf(address)} (the process at ${url}): stop it first.`);
}

/** A database that would change letters, or that acknowledges what its disk does not have, is no place for a log. */
async function refuseUnsafe(database: Database): Promise<void> {
  const { name } = database;
  const is = await database.row<{ version: number; encoding: string; fsync: string; pages: string }>(`
    SELECT current_setting('server_version_num')::integer AS version, pg_encoding_to_char(encoding) AS encoding,
      current_setting('fsync') AS fsync, current_setting('full_page_writes') AS pages
    FROM pg_database WHERE datname = current_database()`);
  if (!is || is.version < OLDEST)
    throw new StoreFailure(`the database ${name} is older than PostgreSQL 13: use a newer one.`);
  if (is.encoding !== 'UTF8')
    throw new StoreFailure(
      `the database ${name} has the encoding ${is.encoding}: make one with ENCODING 'UTF8', and name that.`,
    );
  for (const [setting, value] of [
    ['fsync', is.fsync],
    ['full_page_writes', is.pages],
  ])
    if (value !== 'on')
      throw new StoreFailure(
        `the database ${name} has ${setting} = ${value}, and would lose acknowledged entries with the power: set it to on.`,
      );
}

/** All steps that it lacks, or none of them. Processes that start at the same time do it one after the other. */
async function bringUp(database: Database): Promise<void> {
  const { name, schema } = database;
  await database.transaction(async (rows) => {
    await rows("SELECT pg_advisory_xact_lock(hashtext('ladderline: tables'))");
    const [{ tables = 0 } = {}] = await rows<{ tables: number }>(
      'SELECT count(*)::integer AS tables FROM pg_tables WHERE schemaname = $1',
      [schema],
    );
    if (tables === 0) {
      await rows(`CREATE SCHEMA IF NOT EXISTS ${schema}`);
      await rows('CREATE TABLE ladderline_version (version integer NOT NULL)');
      await rows('INSERT INTO ladderline_version VALUES (0)');
    }
    const [ours] = await rows<{ ours: string | null }>("SELECT to_regclass('ladderline_version') AS ours");
    if (!ours?.ours)
      throw new StoreFailure(
        `the schema ${schema} of the database ${name} holds tables of another program: use another database.`,
      );
    const [{ version = 0 } = {}] = await rows<{ version: number }>('SELECT version FROM ladderline_version');
    if (version > STEPS.length)
      throw new StoreFailure(
        `the database ${name} has schema version ${version}, and this program knows 1 to ${STEPS.length}: use the version of the program that wrote it, or another database.`,
      );
    for (const step of STEPS.slice(version)) await rows(step);
    await rows('UPDATE ladderline_version SET version = $1', [STEPS.length]);
  });
}
