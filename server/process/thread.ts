import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker, type WorkerOptions } from 'node:worker_threads';
import { folderWith, ROOT_FOLDER } from './program.ts';

const HERE = dirname(fileURLToPath(import.meta.url));
const FROM_SOURCES = import.meta.url.endsWith('.ts');

/** A thread with a program of this server. `source`: its file from the root; `built`: its name beside the bundle. */
export function startThread(
  { source, built }: { source: string; built: string },
  options: WorkerOptions = {},
): Worker {
  return FROM_SOURCES
    ? new Worker(join(ROOT_FOLDER, 'server', 'process', 'thread-from-sources.mjs'), {
        ...options,
        argv: [join(ROOT_FOLDER, source)],
      })
    : new Worker(join(folderWith(built, HERE), built), options);
}
