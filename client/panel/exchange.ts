import type { Seq } from '../../src/advice.ts';
import type { SearchFact } from '../../src/facts.ts';
import { isReported } from '../../src/job/amend.ts';
import type { JobState } from '../../src/job/state.ts';
import type { Entry } from '../../src/log/entry.ts';
import { describe, type Line } from '../../src/phrases/describe.ts';

/** One turn of the talk: words or a message, with what was made of them. */
export interface Turn extends Line {
  seq: Seq;
  at: number;
  made: Made[];
}

/** A fact that was understood from words, in the words it was read back in. */
export interface Made {
  seq: Seq;
  text: string;
  type: SearchFact['type'] | 'other';
  /** False once it was taken back or corrected. */
  counts: boolean;
  /** The crew reported it, so the crew can take it back. */
  reported: boolean;
}

/** The log as a talk, oldest first: facts and their read-backs stand under the words they were made from. */
export function toTurns(entries: readonly Entry[], { setup, counted }: JobState): Turn[] {
  const counting = new Set(counted.map((fact) => fact.seq));
  const turns: Turn[] = [];
  const home = new Map<Seq, Turn>();

  for (const entry of entries) {
    const { seq, at, fact } = entry;
    const line = describe(entry, setup?.meter);
    if (!line) continue;
    const readbackOf = fact.type === 'readback' ? home.get(fact.of) : undefined;
    const from = 'from' in fact && fact.from !== undefined ? home.get(fact.from) : undefined;
    if (fact.type === 'readback' && readbackOf) {
      const made = readbackOf.made.find((m) => m.seq === fact.of);
      if (made) made.text = fact.text;
      else readbackOf.made.push({ seq, text: fact.text, type: 'other', counts: true, reported: false });
      continue;
    }
    const reported = isReported(fact);
    const made: Made = {
      seq,
      text: line.text,
      type: reported ? fact.type : 'other',
      counts: !reported || counting.has(seq),
      reported,
    };
    if (from) {
      from.made.push(made);
      home.set(seq, from);
      continue;
    }
    const turn: Turn = { ...line, seq, at, made: reported ? [made] : [] };
    turns.push(turn);
    home.set(seq, turn);
  }
  return turns;
}
