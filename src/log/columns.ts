import type { Seq } from '../advice.ts';
import type { Cell } from '../csv.ts';
import type { Fact, FactOf } from '../facts.ts';
import { describe } from '../phrases/describe.ts';
import type { MeterProfile } from '../profile.ts';
import { toTurns } from '../turns.ts';
import { replaced } from './amendments.ts';
import type { Entry } from './entry.ts';

interface Context {
  meter: MeterProfile | undefined;
  takenBackBy: ReadonlyMap<Seq, Seq>;
}

const when = <T extends Fact['type']>(fact: Fact, type: T, cell: (fact: FactOf<T>) => Cell): Cell =>
  fact.type === type ? cell(fact as FactOf<T>) : undefined;

/** The columns of the CSV export, in order; one row an entry. */
export const COLUMNS: Record<string, (entry: Entry, context: Context) => Cell> = {
  seq: ({ seq }) => seq,
  /** ISO 8601, UTC, to the millisecond. */
  time_utc: ({ at }) => new Date(at).toISOString(),
  actor: ({ actor }) => actor,
  seat: ({ fact }) => ('seat' in fact ? fact.seat : undefined),
  type: ({ fact }) => fact.type,
  /** Words as they were said or shown; for facts without words, what the exchange shows for them. */
  text: ({ actor, fact }, { meter }) => ('text' in fact ? fact.text : describe({ actor, fact }, meter)?.text),
  /** Why an instruction was given. */
  why: ({ fact }) => when(fact, 'instruction', ({ why }) => why),
  via: ({ fact }) => when(fact, 'said', ({ via }) => via),
  confidence: ({ fact }) => when(fact, 'said', ({ confidence }) => confidence),
  /** "value", "none" or "saturated"; the number stands in `reading`, in `unit`. */
  reading_kind: ({ fact }) => ('reading' in fact ? fact.reading.kind : undefined),
  reading: ({ fact }) =>
    'reading' in fact && fact.reading.kind === 'value' ? fact.reading.value : undefined,
  unit: ({ fact }, { meter }) =>
    'reading' in fact && fact.reading.kind === 'value' ? meter?.unit : undefined,
  axis: ({ fact }) => ('axis' in fact ? fact.axis : undefined),
  /** Full turns, clockwise positive. */
  turns: ({ fact }) => when(fact, 'move', ({ eighths }) => toTurns(eighths)),
  gain: ({ fact }) => when(fact, 'gain', ({ change }) => change),
  gain_to: ({ fact }) => when(fact, 'gain', ({ to }) => to),
  /** The instruction acted on, refused or withdrawn. */
  instruction: ({ fact }) => ('instruction' in fact ? fact.instruction : undefined),
  /** The rule an instruction follows, and the entries it rests on. */
  rule: ({ fact }) => when(fact, 'instruction', ({ advice }) => advice.rule),
  because: ({ fact }) => when(fact, 'instruction', ({ advice }) => advice.because.join(' ')),
  /** The entry of the words it was understood from. */
  from: ({ fact }) => ('from' in fact ? fact.from : undefined),
  /** The entry that is read back, asked about, confirmed, taken back, corrected, found to fail or settled. */
  target: ({ fact }) => targetOf(fact),
  /** The entry that took this one back or corrected it: this one no longer counts. */
  retracted_by: ({ seq }, { takenBackBy }) => takenBackBy.get(seq),
  ref: ({ ref }) => ref,
  prev: ({ prev }) => prev,
  hash: ({ hash }) => hash,
};

function targetOf(fact: Fact): Seq | undefined {
  if ('of' in fact) return fact.of;
  if ('target' in fact) return fact.target;
  if ('about' in fact) return fact.about;
  return 'issue' in fact ? fact.issue : replaced(fact);
}
