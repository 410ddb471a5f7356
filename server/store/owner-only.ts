import { chmodSync, closeSync, existsSync, openSync, statSync } from 'node:fs';

/** Only the user who runs the server. */
export const FILE_OF_OWNER = 0o600;
export const FOLDER_OF_OWNER = 0o700;

const OTHERS = 0o077;

/**
 * Takes from others what they may do with a file or folder of ours. `false` where that cannot be done: it belongs to
 * another user, or lies on a disk that knows no permissions.
 */
export function closeToOthers(path: string, mode: number): boolean {
  try {
    if ((statSync(path).mode & OTHERS) !== 0) chmodSync(path, mode);
    return (statSync(path).mode & OTHERS) === 0;
  } catch {
    return false;
  }
}

/** An empty file that is closed to others from its first moment on; one that is there stays as it is. */
export function makeClosed(file: string): void {
  if (!existsSync(file)) closeSync(openSync(file, 'a', FILE_OF_OWNER));
}
