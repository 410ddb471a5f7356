/** What the store needs of an SQLite, whichever it is: only what every one of them has. */
export interface Driver {
  /** For people. */
  readonly name: string;
  /** Throws an error of its own kind, which `faultOf` can tell. */
  open(file: string): Connection;
  faultOf(error: unknown): Fault | undefined;
  /** Copies a whole database, as it is when the copy ends, to a new file, while other work goes on where it can. */
  copy(db: Connection, file: string): Promise<void>;
}

/** In one statement, during which nothing else is done. */
export async function copyAtOnce(db: Connection, file: string): Promise<void> {
  db.prepare<[string]>('VACUUM INTO ?').run(file);
}

/** What an error of SQLite says of the file. */
export type Fault = 'damaged' | 'in use';

export interface Connection {
  exec(sql: string): unknown;
  prepare<Values extends Value[] = Value[], Row = unknown>(sql: string): Statement<Values, Row>;
  close(): unknown;
}

export type Value = string | number | Uint8Array | null;

export interface Statement<Values extends Value[], Row> {
  run(...values: Values): { changes: number | bigint };
  get(...values: Values): Row | undefined;
  all(...values: Values): Row[];
  iterate(...values: Values): Iterable<Row>;
}

/** What the connection itself says of one of its settings. */
export function pragma(db: Connection, name: string): unknown {
  const row = db.prepare<[], object>(`PRAGMA ${name}`).get();
  return row && Object.values(row)[0];
}
