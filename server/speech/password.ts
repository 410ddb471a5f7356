import { readFileSync } from 'node:fs';
import { StartFailure } from '../process/start-failure.ts';

/** Throws `StartFailure`. */
export function passwordIn(file: string): string {
  let password: string;
  try {
    password = readFileSync(file, 'utf8').trim();
  } catch (error) {
    throw new StartFailure(
      `the password of the speech service cannot be read from ${file} (${(error as NodeJS.ErrnoException).code}): see to its permissions.`,
    );
  }
  if (password === '') throw new StartFailure(`the file ${file} is empty: write a password into it.`);
  return password;
}
