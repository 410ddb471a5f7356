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
  const database = await openTables(address);
  try {
    return new PostgresStore(database, await firmOf(database), key, warn);
  } catch (error) {
    await database.close();
    throw error;
  }
}

/** The tables alone, for who looks after them: no firm's rows. */
export async function openTables(address: DatabaseAddress): Promise<Database> {
  const fault = addressFault(address.url);
  if (fault !== undefined) throw new StoreFailure(fault);
  const database = await Database.reach(address);
  try {
    await refuseUnsafe(database);
    await bringUp(database);
    return database;
  } catch (error) {
    await database.close();
    throw error;
  }
}

/** The same, for a command that needs the database for itself: refused while a server uses it. */
export async function openUnused(address: DatabaseAddress, key: SummaryKey): Promise<PostgresStore> {
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
  await database.changeOfTables(async (rows) => {
    await rows("SELECT pg_advisory_xact_lock(hashtext('ladderline: tables'))");
    const [{ tables = 0, may = true } = {}] = await rows<{ tables: number; may: boolean }>(
      `SELECT count(tablename)::integer AS tables, has_schema_privilege(n.oid, 'USAGE') AS may
        FROM pg_namespace n LEFT JOIN pg_tables ON schemaname = n.nspname WHERE n.nspname = $1 GROUP BY n.oid`,
      [schema],
    );
    if (!may) throw new StoreFailure(noFirmText(database));
    if (tables === 0) {
      await rows(`CREATE SCHEMA IF NOT EXISTS ${schema}`);
      await rows('CREATE TABLE ladderline_version (version integer NOT NULL)');
      await rows('INSERT INTO ladderline_version VALUES (0)');
    }
    const [ours] = await rows<{ ours: string | null; owned: boolean }>(`
      SELECT oid AS ours, pg_has_role(relowner, 'MEMBER') AS owned
      FROM pg_class WHERE oid = to_regclass('ladderline_version')`);
    if (!ours)
      throw new StoreFailure(
        `the schema ${schema} of the database ${name} holds tables of another program: use another database.`,
      );
    const [{ version = 0 } = {}] = await rows<{ version: number }>('SELECT version FROM ladderline_version');
    if (version > STEPS.length)
      throw new StoreFailure(
        `the database ${name} has schema version ${version}, and this program knows 1 to ${STEPS.length}: use the version of the program that wrote it, or another database.`,
      );
    const missing = STEPS.slice(version);
    if (missing.length === 0) return;
    if (!ours.owned)
      throw new StoreFailure(
        `the tables of the database ${name} are those of an older version, and are not this user’s to change: run npm run firm -- list once, as their owner.`,
      );
    for (const step of missing) await rows(step);
    await rows('UPDATE ladderline_version SET version = $1', [STEPS.length]);
    await rows('SELECT grant_firm(login) FROM firms');
  });
}

/** Whose rows this login is shown. Where the rules for rows would not hold for it, no firm's are. */
async function firmOf(database: Database): Promise<string> {
  const is = await database.row<{ firm: string | null; isHeld: boolean; isShared: boolean }>(`
    SELECT current_firm() AS firm, row_security_active('entries') AS "isHeld", has_firms() AS "isShared"`);
  if (!is || is.firm === null) throw new StoreFailure(noFirmText(database));
  if (is.isShared && !is.isHeld)
    throw new StoreFailure(
      `several firms share the database ${database.name}, and its user passes by the rules that keep them apart (SUPERUSER or BYPASSRLS): use the login of one firm.`,
    );
  return is.firm;
}

const noFirmText = ({ name }: Database): string =>
  `the user of the database ${name} belongs to no firm there: add it, as the owner of the tables (npm run firm -- add NAME LOGIN).`;
