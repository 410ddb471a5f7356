import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, concatBytes, hexToBytes } from '@noble/hashes/utils.js';
import type { Hash } from '../model/ids.ts';

/**
 * Something that an entry names by its hash, and that lies beside the chain: a picture. It can be removed, and the chain
 * still holds. The salt keeps the hash, which stays, from saying anything of what was removed.
 */
export interface Enclosure {
  /** 16 random bytes or more, in hexadecimal. */
  readonly salt: string;
  readonly content: Uint8Array;
}

/** SHA-256 of salt and content, one behind the other, in hexadecimal. */
export const enclosureHash = ({ salt, content }: Enclosure): Hash =>
  bytesToHex(sha256(concatBytes(hexToBytes(salt), content)));

/** Whether it is the one that an entry names. A salt that is no hexadecimal is none that was ever given. */
export const isEnclosed = (enclosure: Enclosure, hash: Hash): boolean =>
  /^([0-9a-f]{2}){16,64}$/.test(enclosure.salt) && enclosureHash(enclosure) === hash;
