import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import type { WordModel } from '../../src/speech/second.ts';
import { type ModelFolder, SECOND } from './model-folder.ts';
import { loadNetwork } from './network.ts';

/** The second hearer of a model's folder. Undefined where it has none: then the letters are judged alone. */
export async function loadSecondHearer({ path, name, json }: ModelFolder): Promise<WordModel | undefined> {
  if (!existsSync(join(path, SECOND, 'words.json'))) return undefined;
  const words = z.array(z.string()).parse(json(`${SECOND}/words.json`));
  return { words, logits: await loadNetwork(`${name}/${SECOND}`, true) };
}
