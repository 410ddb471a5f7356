import type { Entry } from '../model/entry.ts';
import type { Fact } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';

/** What later entries did to earlier ones. */
export interface Amendments {
  /** Entries that no longer count, each with the entry that took it back or replaced it. */
  takenBackBy: ReadonlyMap<Seq, Seq>;
  /** Entries that another one replaces now. */
  standIns: ReadonlyMap<Seq, Entry>;
}

/** The entry that a correction replaces. */
export const replaced = (fact: Fact): Seq | undefined => ('replaces' in fact ? fact.replaces : undefined);

/** Read from the newest to the oldest, as the search does: an entry that was taken back takes nothing back. */
export function amendments(entries: readonly Entry[]): Amendments {
  const takenBackBy = new Map<Seq, Seq>();
  const standIns = new Map<Seq, Entry>();
  for (const entry of entries.toReversed()) {
    const { seq, fact } = entry;
    const target = replaced(fact);
    const standIn = standIns.get(seq);
    if (target !== undefined) {
      if (takenBackBy.has(seq) && !standIn) continue;
      // A corrected correction passes its place on.
      if (standIn) standIns.delete(seq);
      standIns.set(target, standIn ?? entry);
      takenBackBy.set(target, seq);
    } else if (fact.type === 'retract' && !takenBackBy.has(seq)) {
      takenBackBy.set(fact.target, seq);
    }
  }
  return { takenBackBy, standIns };
}
