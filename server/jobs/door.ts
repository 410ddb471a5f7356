import { randomInt } from 'node:crypto';
import type { Sitter } from '../../src/protocol/access.ts';
import type { AskAnswer } from '../../src/protocol/ask.ts';
import type { AskShown } from '../../src/protocol/ask-shown.ts';
import { CALL_WORDS } from '../../src/protocol/call-words.ts';
import type { Digest } from '../store/store.ts';

/** A phone that asks to come in, and what became of it. Times: the server's clock, ms. */
export interface Question {
  readonly id: AskShown['ask'];
  readonly mark: string;
  readonly sitter: Sitter;
  readonly expiresAt: number;
  /** Of the key that the phone gets its answer with, and after a yes its seat. */
  key: Digest;
  answer?: 'yes' | 'no';
}

/** Questions in a row that the panel did not answer with yes, until it gets no more for a time. */
const MOST_REFUSED = 3;

/** Far fewer than there are marks to draw from, and more questions than a screen that hangs could have missed. */
const MARKS_KEPT = 20;

/** The door of one job: one question at a time, and none for a while when they only disturb. */
export class Door {
  private question: Question | undefined;
  private readonly marks: string[] = [];
  private refused = 0;
  private shutUntil = 0;

  /** `word`: under which the panel of this job is asked. */
  constructor(
    readonly word: string,
    private readonly shutForMs: number,
  ) {}

  /** The question that waits for its answer now. */
  open(now: number): Question | undefined {
    const { question } = this;
    if (question && question.answer === undefined && question.expiresAt <= now) {
      this.question = undefined;
      this.failed(now);
    }
    return this.question?.answer === undefined ? this.question : undefined;
  }

  isShut(now: number): boolean {
    this.open(now);
    return this.shutUntil > now;
  }

  ask(question: Question): void {
    this.question = question;
  }

  /** For the next question: no mark that a screen may still show from one of those before it. */
  nextMark(draw: () => string = () => newCall(2)): string {
    let mark = draw();
    while (this.marks.includes(mark)) mark = draw();
    this.marks.push(mark);
    if (this.marks.length > MARKS_KEPT) this.marks.shift();
    return mark;
  }

  settle(question: Question, answer: 'yes' | 'no', now: number): void {
    question.answer = answer;
    this.question = undefined;
    if (answer === 'no') this.failed(now);
    else this.refused = 0;
  }

  private failed(now: number): void {
    this.refused += 1;
    if (this.refused < MOST_REFUSED) return;
    this.refused = 0;
    this.shutUntil = now + this.shutForMs;
  }
}

export const stateOf = ({ answer, mark, expiresAt }: Question, now: number): AskAnswer => {
  if (answer === 'no') return { state: 'turned-away' };
  return expiresAt <= now ? { state: 'unanswered' } : { state: 'waiting', mark, expiresAt };
};

/** A word of the radio and a number of so many figures. */
function newCall(figures: 2 | 3): string {
  const least = 10 ** (figures - 1);
  return `${CALL_WORDS[randomInt(CALL_WORDS.length)]} ${randomInt(least, 10 * least)}`;
}

/** A word that no other job has now; with four thousand in use, every sixth try finds one that is taken. */
export function newWord(isTaken: (word: string) => boolean): string {
  for (;;) {
    const word = newCall(3);
    if (!isTaken(word)) return word;
  }
}
