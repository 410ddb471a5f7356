import { amendments, replaced } from '../log/amendments.ts';
import type { Entry } from '../model/entry.ts';
import type { Fact, FactOf } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import { isTouch, type Placed } from '../model/placed.ts';
import type { Reading } from '../model/reading.ts';
import { isUpkeep } from '../model/upkeep.ts';
import { countedOf, type JobState } from '../visit/state.ts';

/** What a supervisor wants to know about a job before reading its log. */
export interface Overview {
  alignment: AlignmentStatus;
  /** Times of the first entry and of the acceptance, or else of the last entry, ms. */
  from?: number;
  to?: number;
  /** Who sat where, in order; a phone that only came back is not listed again. */
  people: Placed<'seated'>[];
  /** How many of each count, and how many were taken back. */
  moves: Count;
  readings: Count;
  gainChanges: Count;
  /** Where to look: entries that corrected or undid another, asked a question, or gave no words. */
  corrections: Seq[];
  undone: Seq[];
  takeovers: Seq[];
  questions: Seq[];
  unheard: Seq[];
}

export interface Count {
  counted: number;
  takenBack: number;
}

export type AlignmentStatus =
  | { kind: 'empty' }
  | { kind: 'aligning' }
  | { kind: 'paused' }
  | { kind: 'stopped' }
  | {
      kind: 'accepted';
      seq: Seq;
      at: number;
      reading: Reading;
      override?: NonNullable<FactOf<'accept'>['override']>;
      /** Turns, gain changes and aims made after it: then the accepted reading proves nothing. */
      changedBy: Seq[];
    };

/** `state`: the fold of these entries. */
export function overviewOf(entries: readonly Entry[], state: JobState): Overview {
  const { takenBackBy } = amendments(entries);
  const where = (test: (fact: Fact) => boolean): Seq[] =>
    entries.filter(({ fact }) => test(fact)).map(({ seq }) => seq);
  const many = (type: Fact['type']): Count => {
    const of = entries.filter(({ fact }) => fact.type === type);
    const takenBack = of.filter(({ seq }) => takenBackBy.has(seq)).length;
    return { counted: of.length - takenBack, takenBack };
  };
  const people = entries.flatMap(({ seq, at, fact }) =>
    fact.type === 'seated' ? [{ ...fact, seq, at }] : [],
  );
  const first = entries[0];
  const last = entries.findLast(({ fact }) => !isUpkeep(fact));
  const alignment = alignmentOf(entries, state);
  return {
    alignment,
    ...(first && last && { from: first.at, to: alignment.kind === 'accepted' ? alignment.at : last.at }),
    people,
    moves: many('move'),
    readings: many('reading'),
    gainChanges: many('gain'),
    corrections: where(
      (fact) => replaced(fact) !== undefined || (fact.type === 'retract' && fact.why === 'correction'),
    ),
    undone: where((fact) => fact.type === 'retract' && fact.why === 'undo'),
    takeovers: where((fact) => fact.type === 'seated' && fact.takeover),
    questions: where((fact) => fact.type === 'query'),
    unheard: where((fact) => fact.type === 'unheard'),
  };
}

function alignmentOf(entries: readonly Entry[], state: JobState): AlignmentStatus {
  const { accepted } = state;
  if (entries.length === 0) return { kind: 'empty' };
  if (accepted) {
    const { seq, at, reading, override } = accepted;
    const changedBy = countedOf(state)
      .filter((fact) => fact.seq > seq && isTouch(fact))
      .map((fact) => fact.seq);
    return { kind: 'accepted', seq, at, reading, ...(override && { override }), changedBy };
  }
  if (state.stopped) return { kind: 'stopped' };
  return { kind: state.paused ? 'paused' : 'aligning' };
}
