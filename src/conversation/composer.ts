import type { Question } from '../model/advice.ts';
import type { Draft } from '../model/entry.ts';
import type { Actor, Fact } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import type { TurnSoFar } from '../model/turns.ts';
import { askedAgain } from '../phrases/questions.ts';
import { fold, type JobState, timesAsked } from '../visit/state.ts';

/**
 * Collects the facts that one input leads to. Each is folded in at once, so that the next rule sees what the
 * last one did. Local to one call of `respond`.
 */
export class Composer {
  readonly drafts: Draft[] = [];

  constructor(
    public state: JobState,
    readonly now: number,
  ) {}

  /** Adds a fact and returns the sequence number that it will have in the log. */
  put(actor: Actor, fact: Fact): Seq {
    const seq = this.state.count;
    this.drafts.push({ actor, fact });
    this.state = fold(this.state, { seq, at: this.now, actor, fact });
    return seq;
  }

  /** Asks about entry `of`; a question that was just asked gets another way out. */
  ask(
    of: Seq,
    question: string,
    { meant, turn }: { meant?: Question; turn?: TurnSoFar | undefined } = {},
  ): void {
    const text = askedAgain(question, timesAsked(this.state, question));
    this.put('engine', { type: 'query', of, text, ...(meant && { question: meant }), ...(turn && { turn }) });
  }

  readback(of: Seq, text: string): void {
    this.put('engine', { type: 'readback', of, text });
  }

  notice(code: string, text: string): void {
    this.put('engine', { type: 'notice', code, text });
  }
}
