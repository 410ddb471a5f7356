import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import * as z from 'zod/mini';
import { FILE_OF_OWNER } from '../store/owner-only.ts';
import { StoreFailure } from '../store/store.ts';

const TURN_FILE = 'backup.lock';
const Held = z.object({ host: z.string(), process: z.int() });

/**
 * `work`, while no other backup works in the folder: one would take away pieces that the other is just counting on. A turn
 * whose process was killed is over. Rejects with `StoreFailure` while another has it.
 */
export async function inTurn<T>(folder: string, work: () => Promise<T>): Promise<T> {
  const file = join(folder, TURN_FILE);
  const mine = JSON.stringify({ host: hostname(), process: process.pid } satisfies z.infer<typeof Held>);
  if (!take(file, mine)) {
    if (isHeld(file))
      throw new StoreFailure(
        `another backup works in ${folder}: wait for it, or where none does, remove ${file}.`,
      );
    rmSync(file, { force: true });
    if (!take(file, mine)) throw new StoreFailure(`another backup began in ${folder}: wait for it.`);
  }
  try {
    return await work();
  } finally {
    rmSync(file, { force: true });
  }
}

function take(file: string, text: string): boolean {
  try {
    writeFileSync(file, text, { flag: 'wx', mode: FILE_OF_OWNER });
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
    throw error;
  }
}

/** Of a process of another machine nobody here can say whether it still runs. */
function isHeld(file: string): boolean {
  const held = Held.safeParse(read(file)).data;
  if (!held) return false;
  if (held.host !== hostname()) return true;
  try {
    process.kill(held.process, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Undefined for half a file: who wrote it was killed. */
function read(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}
