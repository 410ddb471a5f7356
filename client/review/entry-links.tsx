import type { Seq } from '../../src/model/ids.ts';
import type { Picks } from '../charts/marker.tsx';

/** Entry numbers. Each one leads to its entry in the exchange. */
export function EntryLinks({ seqs, onPick }: { seqs: readonly Seq[] } & Picks) {
  return (
    <>
      {seqs.map((seq) => (
        <button key={seq} type="button" class="entry-link" onClick={() => onPick(seq)}>
          #{seq}
        </button>
      ))}
    </>
  );
}

export const entryId = (seq: Seq): string => `entry-${seq}`;

/** Brings an entry into view. The focus on it also marks it. */
export function showEntry(seq: Seq): void {
  const element = document.getElementById(entryId(seq));
  element?.scrollIntoView({ block: 'center', behavior: 'smooth' });
  element?.focus({ preventScroll: true });
}
