import { bytesToHex, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js';
import { strFromU8, unzipSync, type Zippable, zipSync } from 'fflate';
import type { Seq } from '../model/ids.ts';
import { PHOTO_BYTES_MOST } from '../model/photo.ts';
import { type Enclosure, SALT_BYTES } from './enclosure.ts';

/**
 * A log with what lies beside it, in one file (ZIP): `log.jsonl` is what `toJsonLines` wrote, `photos/N.jpg` the picture of
 * entry N, and `photos/N.salt` the bytes of its salt. So `cat N.salt N.jpg | sha256sum` gives the hash that the entry names.
 */
export const ARCHIVED_LOG = 'log.jsonl';
export const archivedPicture = (seq: Seq): string => `photos/${seq}.jpg`;
export const archivedSalt = (seq: Seq): string => `photos/${seq}.salt`;

const BESIDE = /^photos\/(0|[1-9]\d{0,8})\.(jpg|salt)$/;

/** What a reader makes room for, bytes. A JavaScript text cannot be longer than the log may be here. */
const LOG_BYTES_MOST = 256 * 1024 * 1024;

/** The first day that such a file can name: the same log gives the same bytes, whenever and wherever it is packed. */
const NO_TIME = '1980-01-01T00:00:00';

export function toArchive(log: string, enclosures: ReadonlyMap<Seq, Enclosure>): Uint8Array {
  const files: Zippable = { [ARCHIVED_LOG]: utf8ToBytes(log) };
  for (const [seq, { salt, content }] of enclosures) {
    // A JPEG is packed already.
    files[archivedPicture(seq)] = [content, { level: 0 }];
    files[archivedSalt(seq)] = [hexToBytes(salt), { level: 0 }];
  }
  return zipSync(files, { mtime: NO_TIME });
}

export interface Archive {
  readonly log: string;
  /** Of each entry that any file is named after; one of the two may be missing. */
  readonly beside: ReadonlyMap<Seq, Partial<Enclosure>>;
  /** Names of files that no such archive has, or has once only. */
  readonly strange: readonly string[];
}

/** Undefined for bytes that are no archive of a log. It checks the form only. */
export function readArchive(bytes: Uint8Array): Archive | undefined {
  const strange: string[] = [];
  const seen = new Set<string>();
  let files: Record<string, Uint8Array>;
  try {
    files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        // Programs that pack a folder again name the folder, too.
        if (name.endsWith('/')) return false;
        const isOurs = originalSize <= mostBytes(name) && !seen.has(name);
        if (!isOurs) strange.push(name);
        seen.add(name);
        return isOurs;
      },
    });
  } catch {
    return undefined;
  }
  const { [ARCHIVED_LOG]: log, ...others } = files;
  if (!log) return undefined;
  const beside = new Map<Seq, Partial<Enclosure>>();
  for (const [name, content] of Object.entries(others)) {
    const [, number, kind] = BESIDE.exec(name) ?? [];
    const seq = Number(number);
    const part = kind === 'jpg' ? { content } : { salt: bytesToHex(content) };
    beside.set(seq, { ...beside.get(seq), ...part });
  }
  return { log: strFromU8(log), beside, strange };
}

/** The most that a file of this name may hold; less than nothing for a name that we do not give. */
function mostBytes(name: string): number {
  if (name === ARCHIVED_LOG) return LOG_BYTES_MOST;
  const [, , kind] = BESIDE.exec(name) ?? [];
  if (kind === undefined) return -1;
  return kind === 'jpg' ? PHOTO_BYTES_MOST : SALT_BYTES;
}
