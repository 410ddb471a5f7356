import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder, the same from the sources and from the bundle. */
export const ROOT_FOLDER = folderWith('package.json', dirname(fileURLToPath(import.meta.url)));
export const CLIENT_FOLDER = join(ROOT_FOLDER, 'dist', 'client');
export const DEFAULT_MODEL_FOLDER = join(ROOT_FOLDER, 'server', 'speech', 'model');
export const VERSION: string = JSON.parse(readFileSync(join(ROOT_FOLDER, 'package.json'), 'utf8')).version;

/** The nearest folder, from this one upwards, that has this file. */
export function folderWith(file: string, start: string): string {
  let folder = start;
  while (!existsSync(join(folder, file)) && folder !== dirname(folder)) folder = dirname(folder);
  return folder;
}
