import { isReported } from '../../src/conversation/amend.ts';
import type { Fact } from '../../src/model/facts.ts';
import type { Seq } from '../../src/model/ids.ts';
import type { Turn } from '../../src/record/exchange.ts';

/** Something that was understood from words, in the words it was read back in. */
export interface Made {
  seq: Seq;
  text: string;
  type: Fact['type'];
  /** False once it was taken back or corrected. */
  counts: boolean;
  /** The crew reported it, so the crew can take it back. */
  reported: boolean;
}

/** What was made of one turn of the talk; a fact reported without words was made of itself. */
export function madeOf(turn: Turn): Made[] {
  const made: Made[] = [];
  for (const { seq, text, fact, amended } of [turn, ...turn.madeOfIt]) {
    const reported = isReported(fact);
    if (seq === turn.seq && !reported) continue;
    const readBack = fact.type === 'readback' && made.find((one) => one.seq === fact.of);
    if (readBack) readBack.text = text;
    else made.push({ seq, text, type: fact.type, counts: amended === undefined, reported });
  }
  return made;
}
