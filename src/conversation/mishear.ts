import { confusableWith } from '../grammar/confusable.ts';
import { parse } from '../grammar/parse.ts';
import type { MeterProfile } from '../model/profile.ts';
import { valueText } from '../phrases/readings.ts';
import { countedOf } from '../visit/state.ts';
import type { Composer } from './composer.ts';
import type { Input } from './input.ts';

type Spoken = Extract<Input, { kind: 'words' }>;

/** So many readings are heard right before one is heard wrong, and up to `VARIES` - 1 more. */
const RIGHT_BEFORE = 2;
const VARIES = 3;

/**
 * Words as they arrive. Only in a practice job that asks for it, and only once, a number from the panel arrives as
 * another, as in a loud hall; the log keeps what was really said. In any other job words come through as they are.
 */
export function asHeard(job: Composer, input: Spoken): Spoken {
  const { setup, misheard } = job.state;
  if (!setup?.practice?.troubles.includes('misheard') || misheard || input.seat !== 'panel') return input;
  const readings = countedOf(job.state).filter(({ type }) => type === 'reading').length;
  if (readings < RIGHT_BEFORE + (setup.practice.seed % VARIES)) return input;
  const other = otherNumber(input.text, setup.meter);
  if (other === undefined) return input;
  job.put('server', { type: 'practised', act: { did: 'misheard', meant: input.text } });
  // What else the recogniser thought would give it away.
  const { alternatives: _, ...words } = input;
  return { ...words, text: valueText(other, setup.meter) };
}

/** A number that this one could be taken for, and that the meter could show. Undefined if the words are no number. */
function otherNumber(text: string, meter: MeterProfile): number | undefined {
  const understood = parse(text, { meter });
  if (understood.kind !== 'understood') return undefined;
  const [only, ...more] = understood.intents;
  if (only?.kind !== 'reading' || only.reading.kind !== 'value' || more.length > 0) return undefined;
  const { value } = only.reading;
  const ten = 10 ** Math.floor(Math.log10(Math.max(1, meter.max / 10)));
  return [confusableWith(value), value + ten, value - ten]
    .filter((other) => other !== undefined)
    .find((other) => other > meter.lostAt && other < meter.saturatedAt);
}
