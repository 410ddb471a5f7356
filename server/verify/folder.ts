import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { bodyOf, hashOf } from '../../src/log/chain.ts';
import { entryIn } from '../../src/log/json-lines.ts';
import { namesFault } from '../../src/log/sealing.ts';
import { wrongText } from '../../src/phrases/verify.ts';
import { fileFaults } from '../export/folder.ts';
import { ENTRIES_FILE, MANIFEST_FILE, Manifest } from '../export/manifest.ts';

export interface CheckedFolder {
  /** In sentences. */
  readonly wrong: readonly string[];
  /** What is whole. */
  readonly whole: string;
}

/**
 * Checks an export of one's data (`npm run export`): that no file is missing, changed or added, and each record or entry by its own
 * hashes. `wrongInRecord`: what is wrong with the record in a file, or whose end is another than this hash.
 */
export async function checkFolder(
  folder: string,
  wrongInRecord: (file: string, hash: string) => readonly string[],
): Promise<CheckedFolder> {
  const faults = await fileFaults(folder);
  if (faults.length > 0) return { wrong: faults, whole: '' };
  const manifest = Manifest.parse(JSON.parse(readFileSync(join(folder, MANIFEST_FILE), 'utf8')));
  if (manifest.of === 'person') {
    const text = readFileSync(join(folder, ENTRIES_FILE), 'utf8');
    const lines = text.split('\n').slice(0, -1);
    return {
      wrong: lines.flatMap(wrongInLine),
      whole: `${lines.length} entries of ${manifest.records.length} records, ${manifest.reads} lines of who read what`,
    };
  }
  return {
    wrong: manifest.records.flatMap(({ file, head }) =>
      wrongInRecord(join(folder, file), head.hash).map((text) => `${file}: ${text}`),
    ),
    whole: `${manifest.records.length} records, ${manifest.signedHeads} signed heads, ${manifest.reads} lines of who read what`,
  };
}

/** An entry alone: whether it is what its hash was taken over, and its names what they were sealed with. */
function wrongInLine(line: string, index: number): string[] {
  const read = entryIn(line);
  if ('fault' in read) return [wrongText({ kind: 'file', line: index + 1, ...read })];
  const { entry } = read;
  const { job, seq } = entry;
  const isForgotten = entry.sealed !== undefined && entry.salt === undefined;
  const fault = hashOf(bodyOf(entry)) === entry.hash ? namesFault(entry, isForgotten) : 'hash';
  return fault === undefined ? [] : [`${job}: ${wrongText({ kind: 'chain', seq, fault })}`];
}
