import type { Fact } from '../../src/model/facts.ts';
import type { Seq } from '../../src/model/ids.ts';
import { isReported } from '../../src/model/reported.ts';
import type { Passage } from '../../src/record/exchange.ts';

/** What was understood from words, in the words of its read-back. */
export interface Made {
  seq: Seq;
  text: string;
  type: Fact['type'];
  /** False: it was taken back or corrected. */
  counts: boolean;
  /** The crew reported it, so the crew can take it back. */
  reported: boolean;
}

/** What was understood from one passage. A fact reported without words is itself in the list. */
export function madeOf(passage: Passage): Made[] {
  const made: Made[] = [];
  for (const { seq, text, fact, amended } of [passage, ...passage.madeOfIt]) {
    const reported = isReported(fact);
    if (seq === passage.seq && !reported) continue;
    const readBack = fact.type === 'readback' && made.find((one) => one.seq === fact.of);
    if (readBack) readBack.text = text;
    else made.push({ seq, text, type: fact.type, counts: amended === undefined, reported });
  }
  return made;
}
