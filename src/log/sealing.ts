import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, concatBytes, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js';
import canonicalize from 'canonicalize';
import type { Entry } from '../model/entry.ts';
import { Salt } from '../model/forgotten.ts';
import type { Hash } from '../model/ids.ts';
import { type Names, namesIn, placeholdersOf } from './names.ts';

/** The text that is hashed behind the salt: RFC 8785 canonical JSON. */
export const namesText = (names: Names): string => canonicalize(names) as string;

/** SHA-256 of salt and text, one behind the other, in hexadecimal. */
export const namesHash = (salt: Salt, text: string): Hash =>
  bytesToHex(sha256(concatBytes(hexToBytes(salt), utf8ToBytes(text))));

/** Whether these are the names, and the salt, that the hash was made of. */
export const areSealed = (salt: string, text: string, sealed: Hash): boolean =>
  Salt.safeParse(salt).success && namesHash(salt, text) === sealed;

export type NamesFault = 'names' | 'names-missing' | 'names-back';

/** What is wrong with the names of one entry. `forgotten`: the log says that they are. */
export function namesFault({ fact, sealed, salt }: Entry, forgotten: boolean): NamesFault | undefined {
  if (sealed === undefined) return undefined;
  const names = namesIn(fact);
  if (salt !== undefined) {
    if (!names || !areSealed(salt, namesText(names), sealed)) return 'names';
    return forgotten ? 'names-back' : undefined;
  }
  if (!names || namesText(names) !== namesText(placeholdersOf(fact))) return 'names';
  return forgotten ? undefined : 'names-missing';
}
