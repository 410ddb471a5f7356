import { SAFE } from '../../../src/conversation/decide.ts';
import { ANSWERS, type Expectation, OFF_DB, REPORTS } from '../../../src/conversation/expectation.ts';
import { parse } from '../../../src/grammar/parse.ts';

/** Someone was asked for the reading, and every value that the meter can show is plausible. */
export const READING_ASKED: Expectation = {
  low: Number.NEGATIVE_INFINITY,
  high: Number.POSITIVE_INFINITY,
  asked: [...(REPORTS.read ?? []), ...SAFE],
};

const FACTOR = 10 ** (OFF_DB / 10);

/**
 * What a job would expect when this is said: for a reading, the usual range around it, on a linear scale; for a report,
 * the move that was asked for; for yes or no, a question. Anything else is said while a reading is asked for, so that
 * the expectation works against it.
 */
export function situationOf(text: string): Expectation {
  const understood = parse(text);
  const intents = understood.kind === 'understood' ? understood.intents : [];
  for (const intent of intents) {
    if (!('reading' in intent) || intent.reading.kind !== 'value') continue;
    const { value } = intent.reading;
    const [near, far] = [value / FACTOR, value * FACTOR];
    return { ...READING_ASKED, low: Math.min(near, far), high: Math.max(near, far) };
  }
  const said = intents.map(({ kind }) => kind);
  const asked = OTHERS.find((kinds) => said.some((kind) => kinds?.includes(kind)));
  return asked ? { ...READING_ASKED, asked: [...asked, ...SAFE] } : READING_ASKED;
}

const OTHERS = [
  REPORTS.read,
  REPORTS.turn,
  ANSWERS['is-it-so'],
  REPORTS['watch-panel'],
  REPORTS['offer-accept'],
];
