import { timingSafeEqual } from 'node:crypto';
import { join } from 'node:path';
import { digest, newToken } from '../guard/secrets.ts';
import { readKeyFile, writeKeyFile } from '../store/key-file.ts';

export const METRICS_TOKEN_FILE = 'metrics.token';

/** Which callers may read the metrics: who can read this file of the data folder. It is made when it is not there. Throws `StoreFailure`. */
export function metricsTokenOf(folder: string): string {
  const file = join(folder, METRICS_TOKEN_FILE);
  const known = readKeyFile(file);
  if (known) return known;
  const made = newToken();
  writeKeyFile(file, made);
  return made;
}

/** Whether an Authorization header has the token. The time that it takes tells nothing of it. */
export const isBearer = (header: string | undefined, token: string): boolean =>
  timingSafeEqual(Buffer.from(digest(header ?? '')), Buffer.from(digest(`Bearer ${token}`)));
