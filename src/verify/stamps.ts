import { hexToBytes } from '@noble/hashes/utils.js';
import type { Wrong } from '../log/fault.ts';
import { isIncluded, textLeaf } from '../log/merkle.ts';
import {
  type CheckSignature,
  type HeadProof,
  headText,
  type TimeStamp,
  treeText,
} from '../log/signed-head.ts';
import { type CheckStamp, type StampDoubt, type Stamped, stampText } from '../log/time-stamp.ts';
import type { Head } from '../model/ids.ts';

/**
 * What the time stamps of an export prove. Each must be whole, of a tree that was signed, and that tree must hold a signed head of this
 * log. Whose key signed the tree does not matter for the time: the authority vouches for that, and for nothing else.
 */
export function checkStamps(
  { job }: Head,
  { signed = [], stamps = [] }: Partial<HeadProof>,
  checkSignature: CheckSignature,
  checkStamp: CheckStamp,
): { readonly stamped: Stamped } | { readonly wrong: Wrong } {
  const proven: Extract<Stamped, { kind: 'stamped' }>['stamps'][number][] = [];
  const doubts: StampDoubt[] = [];
  for (const stamp of stamps) {
    const { count, tree } = stamp;
    const wrong = (fault: Extract<Wrong, { kind: 'stamp' }>['fault']) => ({
      wrong: { kind: 'stamp', seq: count - 1, fault } as const,
    });
    const isPlaced = signed.some((head) => head.count === count && isIn(headText(job, head), tree));
    if (!isPlaced || !checkSignature(tree.key, treeText(tree), tree.signature)) return wrong('tree');
    const checked = checkStamp(stampText(tree), stamp);
    if (checked.kind === 'wrong') return wrong(checked.fault);
    if (checked.kind === 'unproven') doubts.push(checked.doubt);
    else proven.push({ ...checked, count });
  }
  if (proven.length > 0) return { stamped: { kind: 'stamped', stamps: proven, unproven: doubts.length } };
  const [doubt] = doubts;
  return { stamped: doubt === undefined ? { kind: 'none' } : { kind: 'unproven', doubt } };
}

const isIn = (text: string, { index, size, path, root }: TimeStamp['tree']): boolean =>
  isIncluded(textLeaf(text), index, size, path.map(hexToBytes), hexToBytes(root));
