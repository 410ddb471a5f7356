import { createHash } from 'node:crypto';
import {
  chmodSync,
  copyFileSync,
  createReadStream,
  existsSync,
  readdirSync,
  readFileSync,
  statSync,
} from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { z } from 'zod';
import { enclosedIn } from '../../src/log/enclosure.ts';
import { AUTHORITY_FILE, CERT_FILE } from '../network/certificate.ts';
import { SIGNING_KEY_FILE } from '../notary/ed25519.ts';
import { wholeLog } from '../record/files.ts';
import { lostEnclosures } from '../store/check.ts';
import { DATABASE_FILE, openDataFolder } from '../store/data-folder.ts';
import { FILE_OF_OWNER } from '../store/owner-only.ts';
import { PASSPHRASE_FILE } from '../store/passphrase.ts';
import { StoreFailure } from '../store/store.ts';
import { SUMMARY_KEY_FILE } from '../store/summary-key.ts';

export const MANIFEST_FILE = 'backup.json';

/** What a backup says of itself. */
export const Manifest = z.object({
  format: z.literal('ladderline-backup'),
  version: z.literal(1),
  /** When it was begun, ms since 1970. */
  at: z.number().int(),
  /** SHA-256 of the database file, hexadecimal. */
  sha256: z.string(),
  logs: z.number().int(),
  entries: z.number().int(),
});
export type Manifest = z.infer<typeof Manifest>;

/** Everything beside the database that a data folder needs to go on as it was. */
export const KEY_FILES = [SIGNING_KEY_FILE, SUMMARY_KEY_FILE, AUTHORITY_FILE, CERT_FILE, PASSPHRASE_FILE];

/** Copies the keys that are there, readable by the owner only, and returns their names. */
export function copyKeys(from: string, to: string): string[] {
  const there = KEY_FILES.filter((name) => existsSync(join(from, name)));
  for (const name of there) {
    copyFileSync(join(from, name), join(to, name));
    chmodSync(join(to, name), FILE_OF_OWNER);
  }
  return there;
}

export async function sha256Of(file: string): Promise<string> {
  const hash = createHash('sha256');
  await pipeline(createReadStream(file), hash);
  return hash.digest('hex');
}

export interface Checked {
  readonly logs: number;
  readonly entries: number;
  /** Every log that fails its check, and where. */
  readonly damaged: readonly string[];
  /** Every picture that is lost, or is another than its log names. */
  readonly lost: readonly string[];
}

/** Checks every log in a folder from end to end, and what lies beside it. Rejects with `StoreFailure` when it cannot be read at all. */
export async function checkFolder(folder: string): Promise<Checked> {
  const store = openDataFolder(folder);
  try {
    const damaged: string[] = [];
    const lost: string[] = [];
    for (const job of await store.logs()) {
      const fault = await store.audit(job);
      if (fault) damaged.push(`${job} at entry ${fault.seq} (${fault.fault})`);
      const enclosed = enclosedIn((await wholeLog(store, job)).entries);
      for (const seq of await lostEnclosures(store, job, enclosed)) lost.push(`${job} at entry ${seq}`);
    }
    const heads = await store.jobs();
    return { logs: heads.length, entries: heads.reduce((sum, { count }) => sum + count, 0), damaged, lost };
  } finally {
    await store.close();
  }
}

/** A backup, or the newest in a folder of them. Throws `StoreFailure` when there is none. */
export function backupIn(folder: string): { folder: string; manifest: Manifest } {
  const manifest = manifestOf(folder);
  if (manifest) return { folder, manifest };
  const inside = (existsSync(folder) && statSync(folder).isDirectory() ? readdirSync(folder) : []).flatMap(
    (name) => {
      const found = manifestOf(join(folder, name));
      return found ? [{ folder: join(folder, name), manifest: found }] : [];
    },
  );
  const newest = inside.sort((a, b) => b.manifest.at - a.manifest.at)[0];
  if (!newest)
    throw new StoreFailure(`there is no backup in ${folder}: name the folder that npm run backup made.`);
  return newest;
}

function manifestOf(folder: string): Manifest | undefined {
  try {
    return Manifest.safeParse(JSON.parse(readFileSync(join(folder, MANIFEST_FILE), 'utf8'))).data;
  } catch {
    return undefined;
  }
}

export const databaseIn = (folder: string): string => join(folder, DATABASE_FILE);
