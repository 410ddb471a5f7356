import { openDataFolder } from '../../server/store/data-folder.ts';
import type { Connection, Driver } from '../../server/store/driver.ts';
import { chooseDriver } from '../../server/store/drivers.ts';

/**
 * Opens a data folder of an older version and is killed with -9 at the N-th thing that it asks of SQLite: just before it is
 * done, or just after. Prints "whole" where the migration asks fewer.
 */
const [folder = '', nth = '0', when = 'before'] = process.argv.slice(2);
let asked = 0;

function around<T>(work: () => T): T {
  asked += 1;
  const isTheOne = asked === Number(nth);
  if (isTheOne && when === 'before') process.kill(process.pid, 'SIGKILL');
  const result = work();
  if (isTheOne) process.kill(process.pid, 'SIGKILL');
  return result;
}

function mortal(db: Connection): Connection {
  return {
    exec: (sql) => around(() => db.exec(sql)),
    prepare: (sql) => {
      const statement = db.prepare(sql);
      // Only what changes the file is worth a death.
      if (!/wal_checkpoint/.test(sql)) return statement as never;
      return { ...statement, get: (...values: never[]) => around(() => statement.get(...values)) } as never;
    },
    close: () => db.close(),
  };
}

const driver = chooseDriver();
const mortalDriver: Driver = { ...driver, open: (file) => mortal(driver.open(file)) };
await openDataFolder(folder, mortalDriver).close();
process.stdout.write('whole');
