import { chmodSync, copyFileSync, existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import * as z from 'zod/mini';
import { enclosedIn } from '../../src/log/enclosure.ts';
import type { Head, JobId } from '../../src/model/ids.ts';
import { AUTHORITY_FILE, CERT_FILE } from '../network/certificate.ts';
import { SIGNING_KEY_FILE } from '../notary/ed25519.ts';
import { wholeLog } from '../record/files.ts';
import { ACCOUNTS_FILE } from '../store/accounts.ts';
import { lostEnclosures } from '../store/check.ts';
import { DATABASE_FILE, openDataFolder } from '../store/data-folder.ts';
import { FILE_OF_OWNER } from '../store/owner-only.ts';
import { PASSPHRASE_FILE } from '../store/passphrase.ts';
import { StoreFailure } from '../store/store.ts';
import { SUMMARY_KEY_FILE } from '../store/summary-key.ts';
import { METRICS_TOKEN_FILE } from '../telemetry/token.ts';

export const MANIFEST_FILE = 'backup.json';

const manifest = {
  format: z.literal('ladderline-backup'),
  /** When it was begun, ms since 1970. */
  at: z.int(),
  /** SHA-256 of the database file, hexadecimal. */
  sha256: z.string(),
  logs: z.int(),
  entries: z.int(),
};

/** What a backup says of itself. Version 1 has the database beside it, version 2 names its pieces in their order. */
export const Manifest = z.discriminatedUnion('version', [
  z.object({ ...manifest, version: z.literal(1) }),
  z.object({
    ...manifest,
    version: z.literal(2),
    pieces: z.array(z.string().check(z.regex(/^[0-9a-f]{64}$/))),
  }),
]);
export type Manifest = z.infer<typeof Manifest>;

export interface Backup {
  readonly folder: string;
  readonly manifest: Manifest;
}

/** Everything beside the database that a data folder needs to go on as it was. */
export const KEY_FILES = [
  SIGNING_KEY_FILE,
  SUMMARY_KEY_FILE,
  AUTHORITY_FILE,
  CERT_FILE,
  PASSPHRASE_FILE,
  ACCOUNTS_FILE,
  METRICS_TOKEN_FILE,
];

/** Copies the keys that are there, readable by the owner only, and returns their names. */
export function copyKeys(from: string, to: string): string[] {
  const there = KEY_FILES.filter((name) => existsSync(join(from, name)));
  for (const name of there) {
    copyFileSync(join(from, name), join(to, name));
    chmodSync(join(to, name), FILE_OF_OWNER);
  }
  return there;
}

export interface Checked {
  /** Of every log. */
  readonly heads: readonly Head[];
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
    return { heads: await store.jobs(), damaged, lost };
  } finally {
    await store.close();
  }
}

/** Behind the name of a folder that is not yet a backup, or no longer. */
export const UNFINISHED = '.unfinished';

/** The backups in a folder, newest first. */
export const backupsIn = (folder: string): Backup[] =>
  (existsSync(folder) && statSync(folder).isDirectory() ? readdirSync(folder) : [])
    .flatMap((name) => {
      const found = name.endsWith(UNFINISHED) ? undefined : manifestOf(join(folder, name));
      return found ? [{ folder: join(folder, name), manifest: found }] : [];
    })
    .sort((a, b) => b.manifest.at - a.manifest.at);

/** A backup, or the newest in a folder of them. Throws `StoreFailure` when there is none. */
export function backupIn(folder: string): Backup {
  const itself = manifestOf(folder);
  if (itself) return { folder, manifest: itself };
  const [newest] = backupsIn(folder);
  if (!newest)
    throw new StoreFailure(`there is no backup in ${folder}: name the folder that npm run backup made.`);
  return newest;
}

/** How many entries each log had, one log a line, packed: so that a damaged backup still says what was in it. */
export const HEADS_FILE = 'logs.gz';

export const headsText = (heads: readonly Head[]): string =>
  heads.map(({ job, count }) => `${job} ${count}\n`).join('');

/** Undefined where that file is missing or damaged. */
export function headsOf(folder: string): ReadonlyMap<JobId, number> | undefined {
  try {
    const lines = gunzipSync(readFileSync(join(folder, HEADS_FILE)))
      .toString('utf8')
      .split('\n')
      .slice(0, -1);
    return new Map(lines.map((line) => line.split(' ')).map(([job = '', count]) => [job, Number(count)]));
  } catch {
    return undefined;
  }
}

function manifestOf(folder: string): Manifest | undefined {
  try {
    return Manifest.safeParse(JSON.parse(readFileSync(join(folder, MANIFEST_FILE), 'utf8'))).data;
  } catch {
    return undefined;
  }
}

export const databaseIn = (folder: string): string => join(folder, DATABASE_FILE);
