import { bytesToHex, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js';
import { strFromU8, unzipSync, type Zippable, zipSync } from 'fflate';
import { SALT_BYTES } from '../model/forgotten.ts';
import type { Seq } from '../model/ids.ts';
import { PHOTO_BYTES_MOST } from '../model/photo.ts';
import { SOUND_BYTES_MOST } from '../model/sound.ts';
import type { Enclosure } from './enclosure.ts';

/**
 * A log with what lies beside it, in one file (ZIP): `log.jsonl` is what `toJsonLines` wrote, `photos/N.jpg` the picture of
 * entry N, `sounds/N.wav` its sound, and `N.salt` beside it the bytes of its salt. So `cat N.salt N.jpg | sha256sum` gives the
 * hash that the entry names.
 */
export const ARCHIVED_LOG = 'log.jsonl';
const KINDS = {
  photos: { ending: 'jpg', most: PHOTO_BYTES_MOST },
  sounds: { ending: 'wav', most: SOUND_BYTES_MOST },
} as const;
export type ArchivedKind = keyof typeof KINDS;
export const archivedContent = (kind: ArchivedKind, seq: Seq): string =>
  `${kind}/${seq}.${KINDS[kind].ending}`;
export const archivedSalt = (kind: ArchivedKind, seq: Seq): string => `${kind}/${seq}.salt`;

/** The name of the file that is there of the two. */
export const archivedName = (kind: ArchivedKind, seq: Seq, { content }: Partial<Enclosure>): string =>
  content ? archivedContent(kind, seq) : archivedSalt(kind, seq);

const BESIDE = /^(photos|sounds)\/(0|[1-9]\d{0,8})\.(jpg|wav|salt)$/;

/** What lies beside a log, by the kind and by the entry that names it. */
export type Beside<E> = Readonly<Record<ArchivedKind, ReadonlyMap<Seq, E>>>;

/** What a reader makes room for, bytes. A JavaScript text cannot be longer than the log may be here. */
const LOG_BYTES_MOST = 256 * 1024 * 1024;

/**
 * And for all that lies beside the log. The pictures of a record are 12 MB at most; all that a long day says, as sound, is less than
 * half of this.
 */
export const UNPACKED_BYTES_MOST = 1024 ** 3;

/** The first day that such a file can name: the same log gives the same bytes, whenever and wherever it is packed. */
const NO_TIME = '1980-01-01T00:00:00';

export function toArchive(log: string, beside: Beside<Enclosure>): Uint8Array {
  const files: Zippable = { [ARCHIVED_LOG]: utf8ToBytes(log) };
  for (const kind of Object.keys(KINDS) as ArchivedKind[]) {
    for (const [seq, { salt, content }] of beside[kind]) {
      // A JPEG is packed already, and a salt never gets smaller.
      files[archivedContent(kind, seq)] = [content, { level: kind === 'photos' ? 0 : 6 }];
      files[archivedSalt(kind, seq)] = [hexToBytes(salt), { level: 0 }];
    }
  }
  return zipSync(files, { mtime: NO_TIME });
}

export interface Archive extends Beside<Partial<Enclosure>> {
  readonly log: string;
  /** Names of files that no such archive has, or has once only. */
  readonly strange: readonly string[];
}

/** Undefined for bytes that are no archive of a log. It checks the form only. */
export function readArchive(bytes: Uint8Array): Archive | undefined {
  if (!isBearable(bytes)) return undefined;
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
  const beside = { photos: new Map<Seq, Partial<Enclosure>>(), sounds: new Map<Seq, Partial<Enclosure>>() };
  for (const [name, content] of Object.entries(others)) {
    const { kind, seq, ending } = partsOf(name) as Parts;
    const part = ending === 'salt' ? { salt: bytesToHex(content) } : { content };
    beside[kind].set(seq, { ...beside[kind].get(seq), ...part });
  }
  return { log: strFromU8(log), ...beside, strange };
}

/**
 * Whether it can be unpacked: a small file can name the same bytes a thousand times, each time for another picture. No part gets
 * larger than the archive says.
 */
function isBearable(bytes: Uint8Array): boolean {
  let sum = 0;
  try {
    unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (originalSize <= mostBytes(name)) sum += originalSize;
        return false;
      },
    });
  } catch {
    return false;
  }
  return sum <= UNPACKED_BYTES_MOST;
}

interface Parts {
  readonly kind: ArchivedKind;
  readonly seq: Seq;
  readonly ending: string;
}

/** Undefined for a name that we do not give. */
function partsOf(name: string): Parts | undefined {
  const [, kind, seq, ending = ''] = BESIDE.exec(name) ?? [];
  if (kind !== 'photos' && kind !== 'sounds') return undefined;
  return ending === 'salt' || ending === KINDS[kind].ending ? { kind, seq: Number(seq), ending } : undefined;
}

/** The most that a file of this name may hold; less than nothing for a name that we do not give. */
function mostBytes(name: string): number {
  if (name === ARCHIVED_LOG) return LOG_BYTES_MOST;
  const parts = partsOf(name);
  if (!parts) return -1;
  return parts.ending === 'salt' ? SALT_BYTES : KINDS[parts.kind].most;
}
