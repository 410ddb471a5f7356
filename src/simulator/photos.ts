import { utf8ToBytes } from '@noble/hashes/utils.js';
import { type Enclosure, enclosureHash } from '../log/enclosure.ts';
import type { FactOf } from '../model/facts.ts';

/** In the place of a picture: the simulator has no camera, and what is signed and checked is only the hash. */
export const enclosureOf = (name: string): Enclosure => ({
  salt: '000102030405060708090a0b0c0d0e0f',
  content: utf8ToBytes(name),
});

/** A photo as a phone would take it, with the picture `enclosureOf` the same name. */
export function photoOf(name: string): FactOf<'photo'> {
  const enclosure = enclosureOf(name);
  const { length: bytes } = enclosure.content;
  const hash = enclosureHash(enclosure);
  return { type: 'photo', hash, bytes, width: 640, height: 480, shows: 'emitter', caption: name };
}
