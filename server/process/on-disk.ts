import { createHash } from 'node:crypto';
import { closeSync, createReadStream, fsyncSync, openSync } from 'node:fs';
import { pipeline } from 'node:stream/promises';

/** Of a file, hexadecimal. */
export async function sha256Of(file: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(file), hash);
  return hash.digest('hex');
}

/** What was renamed or made in a folder stays so when the power goes. */
export function syncFolder(folder: string): void {
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
