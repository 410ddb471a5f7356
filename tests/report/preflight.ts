import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { promisify } from 'node:util';

/** Where Debian's `libpdfbox2-java` and what it needs put their classes. */
const CLASSES = [
  'preflight',
  'pdfbox2',
  'fontbox2',
  'xmpbox',
  'commons-logging',
  'commons-io',
  'javax.activation',
  'jaxb-api',
].map((name) => `/usr/share/java/${name}.jar`);

const JAVA = [
  '/usr/bin/java',
  ...(process.env.PATH ?? '').split(delimiter).map((dir) => join(dir, 'java')),
].find(existsSync);

/** Whether this machine has the validator. */
export const HAS_PREFLIGHT = JAVA !== undefined && CLASSES.every(existsSync);

/**
 * What Apache PDFBox Preflight 2.0 finds wrong with a file as PDF/A-1b, each as "code : text".
 * @throws where the validator could not say anything of the file
 */
export async function preflight(file: Uint8Array): Promise<string[]> {
  const dir = await mkdtemp(join(tmpdir(), 'preflight-'));
  try {
    const path = join(dir, 'report.pdf');
    await writeFile(path, file);
    const args = ['-cp', CLASSES.join(delimiter), 'org.apache.pdfbox.preflight.Validator_A1b', path];
    // It ends with another status where it finds something; what it says is what counts.
    const said = await promisify(execFile)(JAVA ?? 'java', args).catch((failed) => failed);
    const lines = String(said.stdout)
      .split('\n')
      .map((line) => line.trim());
    const [verdict = '', ...faults] = lines.filter(Boolean);
    if (!/is (not )?a valid PDF\/A-1b file/.test(verdict)) throw new Error(`${verdict}${said.stderr}`);
    return faults;
  } finally {
    await rm(dir, { recursive: true });
  }
}
