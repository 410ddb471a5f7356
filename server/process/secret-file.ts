import { readFileSync } from 'node:fs';
import { StartFailure } from './start-failure.ts';

/** What a file holds that nobody else may know. `of`: for people, what it is. Throws `StartFailure`. */
export function secretIn(file: string, of: string): string {
  let secret: string;
  try {
    secret = readFileSync(file, 'utf8').trim();
  } catch (error) {
    throw new StartFailure(
      `${of} cannot be read from ${file} (${(error as NodeJS.ErrnoException).code}): see to its permissions.`,
    );
  }
  if (secret === '') throw new StartFailure(`the file ${file} is empty: write ${of} into it.`);
  return secret;
}
