import { sha256 } from '@noble/hashes/sha2.js';
import { concatBytes, utf8ToBytes } from '@noble/hashes/utils.js';

/**
 * The hash tree of RFC 6962, section 2.1 (the same in RFC 9162, section 2.1), over SHA-256: it only grows, its root
 * stands for all that is in it, a leaf can be shown to be in it, and a tree to be the beginning of a later one.
 */

/** 32 bytes. */
export type TreeHash = Uint8Array;

const LEAF = Uint8Array.of(0);
const NODE = Uint8Array.of(1);

export const leafHash = (leaf: Uint8Array): TreeHash => sha256(concatBytes(LEAF, leaf));
export const textLeaf = (text: string): TreeHash => leafHash(utf8ToBytes(text));
const nodeHash = (left: TreeHash, right: TreeHash): TreeHash => sha256(concatBytes(NODE, left, right));

/** The largest power of two below `size`, for a size above 1. */
const split = (size: number): number => {
  let half = 1;
  while (half * 2 < size) half *= 2;
  return half;
};

/** Keeps every whole subtree, so that a root or a proof costs as many steps as the tree has levels. */
export class MerkleTree {
  /** `levels[n][i]`: of the leaves from `i * 2^n` on, 2^n of them. */
  private readonly levels: TreeHash[][] = [[]];

  get size(): number {
    return this.levels[0]?.length ?? 0;
  }

  /** `leaf`: its `leafHash`. */
  push(leaf: TreeHash): void {
    let hash = leaf;
    for (let level = 0; ; level++) {
      const row = this.levels[level] ?? [];
      this.levels[level] = row;
      row.push(hash);
      const left = row.at(-2);
      if (row.length % 2 === 1 || !left) return;
      hash = nodeHash(left, hash);
    }
  }

  /** Of its first `size` leaves. @throws {RangeError} when it has fewer */
  root(size = this.size): TreeHash {
    this.holds(size);
    return size === 0 ? sha256(new Uint8Array()) : this.over(0, size);
  }

  /** What shows that leaf `index` is in the tree of the first `size` leaves. @throws {RangeError} when it is not */
  inclusion(index: number, size = this.size): TreeHash[] {
    this.holds(size);
    if (!(Number.isInteger(index) && index >= 0 && index < size)) throw new RangeError(`no leaf ${index}`);
    return this.path(index, 0, size);
  }

  /** What shows that the tree of `from` leaves is the beginning of that of `size`. @throws {RangeError} */
  consistency(from: number, size = this.size): TreeHash[] {
    this.holds(size);
    if (!(Number.isInteger(from) && from >= 0 && from <= size)) throw new RangeError(`no tree of ${from}`);
    return from === 0 || from === size ? [] : this.kept(from, 0, size, true);
  }

  private holds(size: number): void {
    if (!(Number.isInteger(size) && size >= 0 && size <= this.size))
      throw new RangeError(`no tree of ${size}`);
  }

  /** Of the leaves from `start`, `size` of them. */
  private over(start: number, size: number): TreeHash {
    const level = Math.log2(size);
    const whole = Number.isInteger(level) ? this.levels[level]?.[start / size] : undefined;
    if (whole) return whole;
    const left = split(size);
    return nodeHash(this.over(start, left), this.over(start + left, size - left));
  }

  private path(index: number, start: number, size: number): TreeHash[] {
    if (size === 1) return [];
    const left = split(size);
    return index < left
      ? [...this.path(index, start, left), this.over(start + left, size - left)]
      : [...this.path(index - left, start + left, size - left), this.over(start, left)];
  }

  /** SUBPROOF of the RFC. `known`: whoever checks has the root of these `size` leaves. */
  private kept(from: number, start: number, size: number, known: boolean): TreeHash[] {
    if (from === size) return known ? [] : [this.over(start, size)];
    const left = split(size);
    return from <= left
      ? [...this.kept(from, start, left, known), this.over(start + left, size - left)]
      : [...this.kept(from - left, start + left, size - left, false), this.over(start, left)];
  }
}

/** RFC 9162, section 2.1.3.2. */
export function isIncluded(
  leaf: TreeHash,
  index: number,
  size: number,
  path: readonly TreeHash[],
  root: TreeHash,
): boolean {
  if (!(index >= 0 && index < size)) return false;
  let at = index;
  let last = size - 1;
  let hash = leaf;
  for (const beside of path) {
    if (last === 0) return false;
    if (at % 2 === 1 || at === last) {
      hash = nodeHash(beside, hash);
      while (at % 2 === 0 && at !== 0) {
        at /= 2;
        last = Math.floor(last / 2);
      }
    } else hash = nodeHash(hash, beside);
    at = Math.floor(at / 2);
    last = Math.floor(last / 2);
  }
  return last === 0 && isEqual(hash, root);
}

/** A tree: how many leaves, and its root. */
export interface TreeRoot {
  readonly size: number;
  readonly root: TreeHash;
}

/** RFC 9162, section 2.1.4.2: whether the tree `from` is the beginning of `to`. */
export function isBeginning(from: TreeRoot, to: TreeRoot, proof: readonly TreeHash[]): boolean {
  if (from.size > to.size) return false;
  if (from.size === to.size) return proof.length === 0 && isEqual(from.root, to.root);
  if (from.size === 0) return proof.length === 0;
  const path = isPowerOfTwo(from.size) ? [from.root, ...proof] : [...proof];
  let at = from.size - 1;
  let last = to.size - 1;
  while (at % 2 === 1) {
    at = Math.floor(at / 2);
    last = Math.floor(last / 2);
  }
  const first = path.shift();
  if (!first) return false;
  let [was, is] = [first, first];
  for (const beside of path) {
    if (last === 0) return false;
    if (at % 2 === 1 || at === last) {
      was = nodeHash(beside, was);
      is = nodeHash(beside, is);
      while (at % 2 === 0 && at !== 0) {
        at /= 2;
        last = Math.floor(last / 2);
      }
    } else is = nodeHash(is, beside);
    at = Math.floor(at / 2);
    last = Math.floor(last / 2);
  }
  return last === 0 && isEqual(was, from.root) && isEqual(is, to.root);
}

const isPowerOfTwo = (size: number): boolean => Number.isInteger(Math.log2(size));

const isEqual = (one: TreeHash, other: TreeHash): boolean =>
  one.length === other.length && one.every((byte, i) => byte === other[i]);
