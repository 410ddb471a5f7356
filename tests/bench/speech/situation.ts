import { SAFE } from '../../../src/conversation/decide.ts';
import { ANSWERS, type Expectation, OFF_DB, REPORTS } from '../../../src/conversation/expectation.ts';
import { parse } from '../../../src/grammar/parse.ts';

/** Somebody was asked for the reading, and anything the meter can show is plausible. */
export const READING_ASKED: Expectation = {
  low: Number.NEGATIVE_INFINITY,
  high: Number.POSITIVE_INFINITY,
  asked: [...(REPORTS.read ?? []), ...SAFE],
};

const FACTOR = 10 ** (OFF_DB / 10);

/**
 * What a job would expect when this is said: the reading as widely as a job expects one, on a linear scale; the
 * report of what was asked to be done; yes or no to a question. What nobody asks for is said while a
 * reading is asked for, so that the expectation works against it.
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
