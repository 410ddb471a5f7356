import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isBeginning, isIncluded, leafHash, MerkleTree, type TreeHash } from '../../src/log/merkle.ts';

/**
 * The test vectors of the Certificate Transparency project for the tree of RFC 6962: eight leaves, and the root after
 * each. From memory; the two independent checks below (the definition itself, and the proofs) hold them up.
 */
const LEAVES = [
  '',
  '00',
  '10',
  '2021',
  '3031',
  '40414243',
  '5051525354555657',
  '606162636465666768696a6b6c6d6e6f',
];
const ROOTS = [
  'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
  '6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d',
  'fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125',
  'aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77',
  'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
  '4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4',
  '76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef',
  'ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c',
  '5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328',
];

const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex');
const leafOf = (text: string): TreeHash => leafHash(Buffer.from(text, 'hex'));
const treeOf = (leaves: readonly string[]): MerkleTree => {
  const tree = new MerkleTree();
  for (const leaf of leaves) tree.push(leafOf(leaf));
  return tree;
};

/** MTH of RFC 6962, section 2.1, word for word and with another SHA-256. */
function byDefinition(leaves: readonly string[]): Buffer {
  const sha = (...parts: Buffer[]) => createHash('sha256').update(Buffer.concat(parts)).digest();
  const [only] = leaves;
  if (only === undefined) return sha();
  if (leaves.length === 1) return sha(Buffer.of(0), Buffer.from(only, 'hex'));
  const k = 2 ** Math.floor(Math.log2(leaves.length - 1));
  return sha(Buffer.of(1), byDefinition(leaves.slice(0, k)), byDefinition(leaves.slice(k)));
}

describe('the hash tree of RFC 6962', () => {
  it.each(ROOTS.map((root, size) => [size, root]))('has the published root of %i leaves', (size, root) => {
    expect(hex(treeOf(LEAVES.slice(0, size as number)).root())).toBe(root);
    expect(hex(treeOf(LEAVES).root(size as number))).toBe(root);
    expect(byDefinition(LEAVES.slice(0, size as number)).toString('hex')).toBe(root);
  });

  // RFC 6962, section 2.1.3: the paths and proofs of its example of seven leaves, by their places in the tree.
  it('gives the paths and proofs of the RFC’s example', () => {
    const seven = LEAVES.slice(0, 7);
    const tree = treeOf(seven);
    const of = (from: number, to: number) => byDefinition(seven.slice(from, to)).toString('hex');
    const [b, c, d, f, g, h, i, j, k, l] = [
      of(1, 2),
      of(2, 3),
      of(3, 4),
      of(5, 6),
      of(0, 2),
      of(2, 4),
      of(4, 6),
      of(6, 7),
      of(0, 4),
      of(4, 7),
    ];
    expect(tree.inclusion(0).map(hex)).toEqual([b, h, l]);
    expect(tree.inclusion(3).map(hex)).toEqual([c, g, l]);
    expect(tree.inclusion(4).map(hex)).toEqual([f, j, k]);
    expect(tree.inclusion(6).map(hex)).toEqual([i, k]);
    expect(tree.consistency(3).map(hex)).toEqual([c, d, g, l]);
    expect(tree.consistency(4).map(hex)).toEqual([l]);
    expect(tree.consistency(6).map(hex)).toEqual([i, j, k]);
  });

  const many = Array.from({ length: 40 }, (_, i) => i.toString(16).padStart(4, '0'));
  const tree = treeOf(many);

  it('shows every leaf in every tree, and no other leaf, place or root', () => {
    for (let size = 1; size <= many.length; size++) {
      const root = tree.root(size);
      for (let index = 0; index < size; index++) {
        const path = tree.inclusion(index, size);
        const leaf = leafOf(many[index] as string);
        expect(isIncluded(leaf, index, size, path, root)).toBe(true);
        expect(isIncluded(leafOf('ffff'), index, size, path, root)).toBe(false);
        expect(isIncluded(leaf, index + 1, size, path, root)).toBe(false);
        expect(isIncluded(leaf, index, size, [...path, root], root)).toBe(false);
        expect(isIncluded(leaf, index, size, path, tree.root(size - 1))).toBe(false);
      }
    }
  });

  it('shows every tree to be the beginning of every later one, and of no other', () => {
    const other = treeOf(many.map((leaf, i) => (i === 2 ? 'ffff' : leaf)));
    for (let size = 1; size <= many.length; size++) {
      for (let from = 0; from <= size; from++) {
        const proof = tree.consistency(from, size);
        const was = { size: from, root: tree.root(from) };
        const is = { size, root: tree.root(size) };
        expect(isBeginning(was, is, proof)).toBe(true);
        if (from > 2) {
          expect(isBeginning(was, { size, root: other.root(size) }, other.consistency(from, size))).toBe(
            false,
          );
          expect(isBeginning({ size: from, root: other.root(from) }, is, proof)).toBe(false);
        }
        if (proof.length > 0) expect(isBeginning(was, is, proof.slice(1))).toBe(false);
      }
    }
    expect(isBeginning({ size: 3, root: tree.root(3) }, { size: 2, root: tree.root(2) }, [])).toBe(false);
  });

  it('takes no proof with any single bit changed', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 40 }), fc.nat(), fc.nat(), fc.nat(255), (size, at, pick, bit) => {
        const index = at % size;
        const path = tree.inclusion(index, size).map((hash) => Uint8Array.from(hash));
        const step = path[pick % path.length] as Uint8Array;
        step[bit >> 3] = (step[bit >> 3] as number) ^ (1 << (bit & 7));
        expect(isIncluded(leafOf(many[index] as string), index, size, path, tree.root(size))).toBe(false);
      }),
    );
  });

  it('has no proof about leaves that are not there', () => {
    for (const ask of [
      () => tree.root(41),
      () => tree.inclusion(3, 3),
      () => tree.inclusion(-1),
      () => tree.consistency(9, 8),
      () => tree.consistency(1.5),
    ]) {
      expect(ask).toThrow(RangeError);
    }
  });
});
