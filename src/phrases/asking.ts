import { confusableWith, confusableWord } from '../grammar/confusable.ts';
import type { Intent } from '../grammar/intent.ts';
import type { MeterProfile } from '../model/profile.ts';
import type { Reading } from '../model/reading.ts';
import { readingText } from './readings.ts';

/** What to say to words that the grammar does not know. */
export function unclearText(unknown: readonly string[]): string {
  if (unknown.length === 0) return 'Say again, please.';
  return `I did not understand "${unknown.join(' ')}". Try other words, or type.`;
}

/**
 * "142, or 140? Say which." Numbers that sound alike are asked in figures and in words, "13, thirteen, or 30,
 * thirty?", because figures are spoken one by one.
 */
export function optionsText(options: readonly Intent[][], meter: MeterProfile | undefined): string {
  const names = options.map((intents) => intents.map((intent) => intentText(intent, meter)).join(', '));
  const [only, ...more] = names;
  if (more.length === 0) return `Did you say: ${only}?`;
  const values = options.flat().flatMap((intent) => valueIn(intent) ?? []);
  const soundAlike = values.some((value) => values.includes(confusableWith(value) ?? Number.NaN));
  return `${names.join(', or ')}? ${soundAlike ? 'Say it figure by figure.' : 'Say which.'}`;
}

/** The number that was heard: a reading, or the grade of a filter. */
function valueIn(intent: Intent): number | undefined {
  if (intent.kind === 'path') return intent.filter;
  return 'reading' in intent && intent.reading.kind === 'value' ? intent.reading.value : undefined;
}

function valueName(intent: Intent & { reading: Reading }, meter: MeterProfile): string {
  return inWordsToo(readingText(intent.reading, meter), valueIn(intent));
}

function inWordsToo(text: string, value: number | undefined): string {
  const word = value === undefined ? undefined : confusableWord(value);
  return word === undefined ? text : `${text}, ${word}`;
}

function pathName({ state, by, filter }: Extract<Intent, { kind: 'path' }>): string {
  if (by === 'half') return 'half covered';
  if (by !== 'filter') return `beam ${state}`;
  return filter === undefined ? 'filter on' : `${inWordsToo(String(filter), filter)}, percent filter on`;
}

function intentText(intent: Intent, meter: MeterProfile | undefined): string {
  switch (intent.kind) {
    case 'reading':
    case 'correct':
      return meter ? valueName(intent, meter) : 'a reading';
    case 'path':
      return pathName(intent);
    case 'rough':
      return `about ${inWordsToo(String(intent.value), intent.value)}`;
    case 'gain':
      return `gain ${intent.change}`;
    case 'trend':
      return intent.trend;
    default:
      return intent.kind.replace('-', ' ');
  }
}
