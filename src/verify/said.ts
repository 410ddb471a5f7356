import { isSame } from '../formats/same.ts';
import type { FactOf } from '../model/facts.ts';
import type { Seq } from '../model/ids.ts';
import { type Reading, valueReading } from '../model/reading.ts';
import { understand } from '../understand/understand.ts';
import type { JobState } from '../visit/state.ts';

/** What the words of a log can have said of the meter, so that no reading stands there that nobody said. */
export class Said {
  private readonly readings = new Map<Seq, readonly Reading[]>();

  /** `state`: before these words. */
  hear(seq: Seq, { text, language, alternatives = [] }: FactOf<'said'>, state: JobState): void {
    const meter = state.setup?.meter;
    // Without the meter, too: an earlier version of the program did not look at it.
    const contexts = meter ? [{ meter }, {}] : [{}];
    const intents = [text, ...alternatives.map((each) => each.text)].flatMap((words) =>
      contexts.flatMap((context) => {
        const heard = understand(words, language, context);
        if (heard.kind === 'unclear') return [];
        return heard.kind === 'understood' ? heard.intents : heard.options.flat();
      }),
    );
    const named = intents.flatMap((intent) => ('reading' in intent ? [intent.reading] : []));
    const yes = intents.some(({ kind }) => kind === 'yes');
    this.readings.set(seq, yes ? [...named, ...offered(state)] : named);
  }

  /** A correction by hand has no words: it says what it replaces. */
  holds({ reading, from, replaces }: FactOf<'reading'>): boolean {
    if (from === undefined) return replaces !== undefined;
    return this.readings.get(from)?.some((each) => isSame(each, reading)) ?? false;
  }
}

/** What the crew was asked about, and can say yes to. */
function offered({ query, instruction }: JobState): Reading[] {
  const action = instruction?.advice.action;
  const question = query?.question ?? (action?.kind === 'ask' ? action.question : undefined);
  return question?.kind === 'which-value' ? question.options.map(valueReading) : [];
}
