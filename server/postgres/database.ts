import type { Pool, PoolConfig, QueryConfig, QueryResultRow } from 'pg';
import { StoreFailure } from '../store/store.ts';
import { type DatabaseAddress, DEFAULT_SCHEMA, nameOf, passwordIn } from './address.ts';

/** `pg` gives a bigint as text; ours are counts and times, far below 2^53. */
const BIGINT = 20;

/** One statement may take so long; then the database gives it up. */
const STATEMENT_MS = 15_000;
/** And so long we wait for an answer, where the database or the way to it says nothing any more. */
const ANSWER_MS = 20_000;
/** Making tables anew takes as long as there are entries. */
const CHANGE_OF_TABLES_MS = 6 * 3600_000;
const CONNECT_MS = 5_000;
const CONNECTIONS = 6;

/**
 * What each connection is set to before its first statement. With `synchronous_commit`, an answer comes after the disk has it,
 * whatever the settings of the database say.
 */
const SETTINGS = [
  'synchronous_commit=on',
  'default_transaction_isolation=read\\ committed',
  `statement_timeout=${STATEMENT_MS}`,
  'client_encoding=UTF8',
  'jit=off',
];

export type Row = QueryResultRow;

/** What may be given to a statement. */
export type Given = string | number | null | readonly (string | number)[];

/** A database, over a few connections that are made when they are needed and again after they broke. */
export class Database {
  private readonly pool: Pool;

  private constructor(
    pool: Pool,
    readonly name: string,
    readonly schema: string,
  ) {
    this.pool = pool;
    // A connection that broke while nobody used it: the next statement gets another one.
    pool.on('error', () => {});
  }

  /** Reaches it once. Rejects with `StoreFailure`, in a sentence that says what to do. */
  static async reach(address: DatabaseAddress): Promise<Database> {
    const { schema = DEFAULT_SCHEMA, passwordFile } = address;
    const [{ default: pg }, { parseIntoClientConfig }] = await packages();
    const types: PoolConfig['types'] = {
      getTypeParser: (id, format) => (id === BIGINT ? Number : pg.types.getTypeParser(id, format as 'text')),
    };
    const pool = new pg.Pool({
      ...parseIntoClientConfig(address.url),
      // Its parser gives an empty one where there is none, which would stand before PGPASSWORD.
      password: undefined,
      ...(passwordFile !== undefined && { password: async () => passwordIn(passwordFile) }),
      options: [...SETTINGS, `search_path=${schema}`].map((setting) => `-c ${setting}`).join(' '),
      application_name: 'ladderline',
      max: CONNECTIONS,
      connectionTimeoutMillis: CONNECT_MS,
      // They stay: when many crews speak at once, nobody waits until a connection is made and its password proven.
      idleTimeoutMillis: 0,
      query_timeout: ANSWER_MS,
      keepAlive: true,
      types,
    });
    const database = new Database(pool, nameOf(address), schema);
    try {
      await database.rows('SELECT 1');
      return database;
    } catch (error) {
      await pool.end();
      const { cause } = error as StoreFailure;
      throw new StoreFailure(
        `the database ${database.name} cannot be reached (${(cause as Error).message}): see to the address of --store, to the password, and whether the database runs.`,
        { cause },
      );
    }
  }

  /** Rejects with `StoreFailure`. */
  async rows<R extends Row>(sql: string, given: readonly Given[] = []): Promise<R[]> {
    const { rows } = await this.pool.query<R>(sql, [...given]).catch(failed);
    return rows;
  }

  /** The same as `rows`, for a statement that gives one at most. */
  async row<R extends Row>(sql: string, given: readonly Given[] = []): Promise<R | undefined> {
    return (await this.rows<R>(sql, given))[0];
  }

  /** `work` in one transaction: all that it writes is stored, or where it rejects, nothing. Rejects with `StoreFailure`. */
  transaction<T>(work: (rows: Database['rows']) => Promise<T>): Promise<T> {
    return this.within('BEGIN', work);
  }

  /** The same, for work on the tables themselves: it may take hours. */
  changeOfTables<T>(work: (rows: Database['rows']) => Promise<T>): Promise<T> {
    return this.within('BEGIN; SET LOCAL statement_timeout = 0', work, CHANGE_OF_TABLES_MS);
  }

  /** What `work` reads is all of one moment, whatever other processes write meanwhile. Rejects with `StoreFailure`. */
  snapshot<T>(work: (rows: Database['rows']) => Promise<T>): Promise<T> {
    return this.within('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY', work);
  }

  private async within<T>(
    begin: string,
    work: (rows: Database['rows']) => Promise<T>,
    answerMs = ANSWER_MS,
  ): Promise<T> {
    const client = await this.pool.connect().catch(failed);
    // A connection that breaks between two statements says so to nobody else, and would end the process.
    const ignore = () => {};
    client.on('error', ignore);
    const rows: Database['rows'] = (sql, given = []) =>
      client.query(statement(sql, given, answerMs)).then((result) => result.rows, failed);
    try {
      await rows(begin);
      const result = await work(rows);
      await rows('COMMIT');
      client.removeListener('error', ignore);
      client.release();
      return result;
    } catch (error) {
      // What was begun ends with its connection.
      client.release(true);
      throw error;
    }
  }

  close(): Promise<void> {
    return this.pool.end();
  }
}

/** `pg` takes the time for an answer with each statement, too; its types do not say so. */
const statement = (text: string, given: readonly Given[], query_timeout: number): QueryConfig =>
  ({ text, query_timeout, ...(given.length > 0 && { values: [...given] }) }) as QueryConfig;

/** Loaded only for who has such a store. */
async function packages() {
  try {
    return await Promise.all([import('pg'), import('pg-connection-string')]);
  } catch (cause) {
    throw new StoreFailure('--store needs the package pg, which is not installed: npm install pg.', {
      cause,
    });
  }
}

const failed = (cause: Error): never => {
  throw new StoreFailure(`the database failed: ${cause.message}`, { cause });
};

/** Whether the database itself said that it did nothing; else nobody knows what became of the statement. */
export function isRolledBack(error: unknown): boolean {
  const { code } = ((error as Error).cause ?? {}) as { code?: string };
  // SQLSTATE: five letters or figures. Class 08 and 57P: the connection or the database went away in the middle.
  return code !== undefined && /^[0-9A-Z]{5}$/.test(code) && !/^(08|57P)/.test(code);
}
