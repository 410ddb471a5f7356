import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT_FOLDER } from '../../server/process/program.ts';

/** The WAV file in which a synthetic voice says these words: 16 kHz, 16 bit, mono. See make.sh. */
export function spokenFile(words: string): string {
  const file = join(ROOT_FOLDER, 'tests', 'sounds', `${words.replaceAll(' ', '-')}.wav`);
  if (!existsSync(file)) {
    throw new Error(
      `No file says "${words}": add it to tests/sounds/phrases.txt and run tests/sounds/make.sh.`,
    );
  }
  return file;
}
