import { chmodSync, existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { FILE_OF_OWNER } from './owner-only.ts';
import { StoreFailure } from './store.ts';

/** The text of a key file, without blanks around it; undefined where there is none. Throws `StoreFailure`. */
export function readKeyFile(file: string): string | undefined {
  try {
    if (!existsSync(file)) return undefined;
    // It may have been copied back from a backup that did not keep who may read it.
    chmodSync(file, FILE_OF_OWNER);
    return readFileSync(file, 'utf8').trim();
  } catch (error) {
    throw new StoreFailure(`the key file ${file} cannot be read (${codeOf(error)}): see to its permissions.`);
  }
}

/** Whole or not at all, also when the process is killed meanwhile. Throws `StoreFailure`. */
export function writeKeyFile(file: string, text: string): void {
  const half = `${file}.new`;
  try {
    writeFileSync(half, text, { mode: FILE_OF_OWNER, flush: true });
    chmodSync(half, FILE_OF_OWNER);
    renameSync(half, file);
  } catch (error) {
    throw new StoreFailure(
      `the key file ${file} cannot be written (${codeOf(error)}): see to the permissions of the data folder.`,
    );
  }
}

const codeOf = (error: unknown): string => (error as NodeJS.ErrnoException).code ?? (error as Error).message;
