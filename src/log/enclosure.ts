import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, concatBytes, hexToBytes } from '@noble/hashes/utils.js';
import type { Entry } from '../model/entry.ts';
import type { Fact } from '../model/facts.ts';
import { Salt } from '../model/forgotten.ts';
import type { Hash, Seq } from '../model/ids.ts';
import type { KeptSound } from '../model/sound.ts';

/**
 * Something that an entry names by its hash, and that lies beside the chain: a picture, a sound. It can be removed, and the chain
 * still holds. The salt keeps the hash, which stays, from saying anything of what was removed.
 */
export interface Enclosure {
  readonly salt: Salt;
  readonly content: Uint8Array;
}

/** SHA-256 of salt and content, one behind the other, in hexadecimal. */
export const enclosureHash = ({ salt, content }: Enclosure): Hash =>
  bytesToHex(sha256(concatBytes(hexToBytes(salt), content)));

/** Whether it is the one that an entry names. A salt that is no hexadecimal is none that was ever given. */
export const isEnclosed = (enclosure: Enclosure, hash: Hash): boolean =>
  Salt.safeParse(enclosure.salt).success && enclosureHash(enclosure) === hash;

/** The pictures that must lie beside a log: the hash that each entry names, but for those from which it was removed. */
export function enclosedIn(entries: Iterable<Pick<Entry, 'seq' | 'fact'>>): ReadonlyMap<Seq, Hash> {
  const enclosed = new Map<Seq, Hash>();
  for (const { seq, fact } of entries) {
    if (fact.type === 'photo') enclosed.set(seq, fact.hash);
    if (fact.type === 'photo-removed') enclosed.delete(fact.photo);
  }
  return enclosed;
}

/** The sounds that a log names. Each lies beside it until its time is over, or until its medium loses it: nobody depends on it. */
export function soundsIn(entries: Iterable<Pick<Entry, 'seq' | 'fact'>>): ReadonlyMap<Seq, KeptSound> {
  const sounds = new Map<Seq, KeptSound>();
  for (const { seq, fact } of entries) {
    const sound = soundOf(fact);
    if (sound) sounds.set(seq, sound);
  }
  return sounds;
}

/** The sound that a fact names, where one was kept. */
export const soundOf = (fact: Fact): KeptSound | undefined => ('sound' in fact ? fact.sound : undefined);
