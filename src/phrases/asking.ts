import type { Intent } from '../grammar/intent.ts';
import type { MeterProfile } from '../profile.ts';
import { readingText } from './readings.ts';

/** What to say to words that were no sentence of ours. */
export function unclearText(unknown: readonly string[]): string {
  if (unknown.length === 0) return 'Say again, please.';
  return `I did not understand "${unknown.join(' ')}". Say it another way, or type it.`;
}

/** "142 or 140? Say which." */
export function optionsText(options: readonly Intent[][], meter: MeterProfile | undefined): string {
  const names = options.map((intents) => intents.map((intent) => intentText(intent, meter)).join(', '));
  const [only, ...more] = names;
  return more.length === 0 ? `Did you say: ${only}?` : `${names.join(', or ')}? Say which.`;
}

function intentText(intent: Intent, meter: MeterProfile | undefined): string {
  switch (intent.kind) {
    case 'reading':
    case 'correct':
      return meter ? readingText(intent.reading, meter) : 'a reading';
    case 'path':
      return `beam ${intent.state}`;
    case 'gain':
      return `gain ${intent.change}`;
    default:
      return intent.kind.replace('-', ' ');
  }
}
