import { describe, expect, it } from 'vitest';
import { SigningKey } from '../../server/notary/ed25519.ts';
import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import { toJsonLines } from '../../src/log/json-lines.ts';
import { MerkleTree, textLeaf } from '../../src/log/merkle.ts';
import { type HeadProof, headText, type SignedHead, treeText } from '../../src/log/signed-head.ts';
import type { Entry } from '../../src/model/entry.ts';
import { signedLines } from '../../src/phrases/verify.ts';
import { playedVisit } from '../findings/site.ts';
import { verified } from './checked.ts';

const LOG = playedVisit([]);
const HEAD = headAfter(LOG.at(-1) as Entry);
const ours = SigningKey.make();
const theirs = SigningKey.make();

const sign = (entries: readonly Entry[], count: number, by = ours): SignedHead => {
  const head = { count, hash: entries[count - 1]?.hash ?? '', at: 1_800_000_000_000 + count };
  return { ...head, key: by.public, signature: by.sign(headText(HEAD.job, head)) };
};

/** A tree of five heads, the last of which is this one. */
function treeWith(head: SignedHead, by = ours): HeadProof['tree'] {
  const tree = new MerkleTree();
  for (const other of ['a', 'b', 'c', 'd']) tree.push(textLeaf(other));
  tree.push(textLeaf(headText(HEAD.job, head)));
  const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex');
  const root = { size: 5, root: hex(tree.root()), at: 1_900_000_000_000 };
  return {
    ...root,
    key: by.public,
    signature: by.sign(treeText(root)),
    index: 4,
    path: tree.inclusion(4).map(hex),
  };
}

const proofOf = (entries: readonly Entry[]): HeadProof => {
  const last = sign(entries, entries.length);
  return { signed: [sign(entries, 20), last], tree: treeWith(last) };
};

/** The same log without entry `seq`, every hash made new. */
function without(seq: number): Entry[] {
  let head = emptyHead(HEAD.job);
  return LOG.slice(0, 12)
    .filter((entry) => entry.seq !== seq)
    .map(({ actor, fact, at }) => {
      const entry = seal(head, { actor, fact }, at);
      head = headAfter(entry);
      return entry;
    });
}

const check = (
  entries: readonly Entry[],
  proof: HeadProof | undefined,
  known: Parameters<typeof verified>[1] = {},
) => verified(toJsonLines(entries, headAfter(entries.at(-1) as Entry), proof), known);

describe('a log that a server signed', () => {
  it('is proven to whoever knows the key, up to the last signed head', () => {
    const key = ours.fingerprint;
    expect(check(LOG, proofOf(LOG), { key })).toMatchObject({
      ok: true,
      signed: { kind: 'signed', key, count: LOG.length, first: 1_800_000_000_020 },
    });
    expect(check(LOG, { signed: [sign(LOG, 20)] }, { key })).toMatchObject({ signed: { count: 20 } });
  });

  it.each([
    ['no signed head', undefined, {}, 'none', 'NOT PROVEN: who wrote it'],
    ['a key that nobody named', proofOf(LOG), {}, 'nobodys', 'NOT PROVEN: who wrote it'],
    [
      'another key than the one named',
      proofOf(LOG),
      { key: theirs.fingerprint },
      'other-key',
      'NOT PROVEN: it is not',
    ],
  ] as const)('with %s: whole, and what is not proven is said loudly', (_, proof, known, kind, words) => {
    const result = check(LOG, proof, known);
    expect(result).toMatchObject({ ok: true, signed: { kind } });
    expect(result.ok && signedLines(result.signed, LOG.length)[0]).toContain(words);
  });

  it('says that entries after the last signed head are not proven', () => {
    const result = check(LOG, { signed: [sign(LOG, 20)] }, { key: ours.fingerprint });
    expect(result.ok && signedLines(result.signed, LOG.length).join('\n')).toContain(
      `the ${LOG.length - 20} entries after`,
    );
  });

  // All of these pass every check of the chain.
  it.each<[string, readonly Entry[], HeadProof, kind: string]>([
    ['entries cut off', LOG.slice(0, 20), proofOf(LOG), 'signed-head'],
    ['an entry taken out and every hash made new', without(7), { signed: [sign(LOG, 9)] }, 'signed-head'],
    [
      'a head that was signed by somebody else in our name',
      LOG,
      { signed: [{ ...sign(LOG, 20, theirs), key: ours.public }] },
      'bad-signature',
    ],
    ['a signature moved to another time', LOG, { signed: [{ ...sign(LOG, 20), at: 1 }] }, 'bad-signature'],
    [
      'a tree that does not hold its head',
      LOG,
      { signed: [sign(LOG, 20)], tree: treeWith(sign(LOG, 21)) },
      'bad-signature',
    ],
    [
      'a tree that somebody else signed',
      LOG,
      {
        signed: [sign(LOG, 20)],
        tree: { ...(treeWith(sign(LOG, 20), theirs) as object), key: ours.public } as HeadProof['tree'],
      },
      'bad-signature',
    ],
  ])('is wrong with %s', (_, entries, proof, kind) => {
    expect(check(entries, proof)).toMatchObject({ ok: false, wrong: { kind } });
  });

  it('is wrong when a head kept elsewhere is not one of it, whoever signed the file', () => {
    const forged = without(7);
    const proof = { signed: [sign(forged, forged.length)] };
    expect(check(forged, proof, { key: ours.fingerprint })).toMatchObject({
      ok: true,
      signed: { kind: 'signed' },
    });
    expect(check(forged, proof, { kept: [sign(LOG, 9)] })).toMatchObject({
      wrong: { kind: 'signed-head', seq: 8 },
    });
    expect(check(LOG, proofOf(LOG), { kept: [sign(LOG, 9)] })).toMatchObject({ ok: true });
  });
});
