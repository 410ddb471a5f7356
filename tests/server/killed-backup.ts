import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

/**
 * A backup that is killed with -9 at the N-th thing that it does to the disk of the backups: just before it, or just after.
 * Prints "whole" where it does fewer.
 */
const [data = '', into = '', at = '0', nth = '0', when = 'before'] = process.argv.slice(2);
let done = 0;

const CHANGES = ['mkdirSync', 'writeFileSync', 'renameSync', 'rmSync', 'fsyncSync', 'copyFileSync'] as const;

for (const name of CHANGES) {
  const real = fs[name] as (...args: unknown[]) => unknown;
  const mortal = (...args: unknown[]): unknown => {
    done += 1;
    const isTheOne = done === Number(nth);
    if (isTheOne && when === 'before') process.kill(process.pid, 'SIGKILL');
    const result = real(...args);
    if (isTheOne) process.kill(process.pid, 'SIGKILL');
    return result;
  };
  Object.assign(fs, { [name]: mortal });
}
syncBuiltinESMExports();

const { backUp } = await import('../../server/backup/backup.ts');
await backUp(data, into, Number(at), 2);
process.stdout.write('whole');
