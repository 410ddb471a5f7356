import { type Connection, copyAtOnce, type Driver, type Fault } from './driver.ts';

/** As far as it is used here. Our types are those of Node 20, which has no such module. */
interface NodeSqlite {
  DatabaseSync: new (file: string) => Connection;
  /** From 22.16 and 23.8 on. */
  backup?: (db: Connection, file: string) => Promise<unknown>;
}

/** The SQLite that Node brings along from 22.13 on; undefined where it brings none. */
export function nodeSqlite(): Driver | undefined {
  const sqlite = load();
  return (
    sqlite && {
      name: 'node:sqlite',
      open: (file) => new sqlite.DatabaseSync(file),
      faultOf,
      copy: async (db, file) => void (await (sqlite.backup ?? copyAtOnce)(db, file)),
    }
  );
}

/** Node 22 and the first of 24 warn that the module may still change: nothing that who runs us could mend. */
function load(): NodeSqlite | undefined {
  const { emitWarning } = process;
  process.emitWarning = (...said: unknown[]) => {
    if (said[1] !== 'ExperimentalWarning') Reflect.apply(emitWarning, process, said);
  };
  try {
    return process.getBuiltinModule?.('node:sqlite') as NodeSqlite | undefined;
  } finally {
    process.emitWarning = emitWarning;
  }
}

/** SQLite's result codes (sqlite.org/rescode.html); what stands above the low byte only says more closely. */
const FAULTS: Record<number, Fault> = { 5: 'in use', 11: 'damaged', 26: 'damaged' };

function faultOf(error: unknown): Fault | undefined {
  const { errcode = 0 } = error as { errcode?: number };
  return FAULTS[errcode & 0xff];
}
