import { closeSync, openSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { AccountBook, type Changed, EMPTY_BOOK } from './account-book.ts';
import { readKeyFile, writeKeyFile } from './key-file.ts';
import { FILE_OF_OWNER } from './owner-only.ts';
import { StoreFailure } from './store.ts';

export const ACCOUNTS_FILE = 'accounts.json';

/** Where the accounts lie. */
export interface AccountsFile {
  /** As it is now. Throws `StoreFailure` where the file is damaged: then nobody is let in. */
  read(): AccountBook;
  /** Changes it, whole or not at all; nobody else changes it meanwhile. Throws `StoreFailure`. */
  change(to: (book: AccountBook) => Changed): Changed;
}

/** Looks at the file each time: what `npm run account` changes holds at once. */
export function accountsOf(folder: string): AccountsFile {
  const file = join(folder, ACCOUNTS_FILE);
  const read = (): AccountBook => {
    const text = readKeyFile(file);
    if (text === undefined) return EMPTY_BOOK;
    const book = AccountBook.safeParse(parsed(text));
    if (!book.success)
      throw new StoreFailure(
        `${file} is damaged: bring it back from a backup, or remove it and invite everybody anew (npm run account).`,
      );
    return book.data;
  };
  return {
    read,
    change: (to) =>
      alone(`${file}.lock`, () => {
        const outcome = to(read());
        if (outcome.kind === 'changed') writeKeyFile(file, `${JSON.stringify(outcome.book, undefined, 1)}\n`);
        return outcome;
      }),
  };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** A change takes milliseconds: who holds the lock for longer was killed. */
const KILLED_AFTER_MS = 10_000;
const TRY_EVERY_MS = 20;
const TRIES = 100;

/** The server and the command line are two programs: one at a time. */
function alone<T>(lock: string, work: () => T): T {
  take(lock);
  try {
    return work();
  } finally {
    rmSync(lock, { force: true });
  }
}

function take(lock: string): void {
  for (let i = 0; i < TRIES; i++) {
    try {
      closeSync(openSync(lock, 'wx', FILE_OF_OWNER));
      return;
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code !== 'EEXIST')
        throw new StoreFailure(
          `the accounts cannot be changed (${code}): see to the permissions of the data folder.`,
        );
      if (ageOf(lock) > KILLED_AFTER_MS) rmSync(lock, { force: true });
      else Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, TRY_EVERY_MS);
    }
  }
  throw new StoreFailure('somebody else is changing the accounts: try again.');
}

function ageOf(file: string): number {
  return Date.now() - (statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
}
