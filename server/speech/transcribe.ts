/**
 * The text that the speech engine hears in sound files, one JSON line for each file:
 *
 *     npm run transcribe -- [--open] [--expect LO..HI] [--model FOLDER] FILE…
 */
import { Command, InvalidArgumentError } from 'commander';
import { decide } from '../../src/conversation/decide.ts';
import type { Intent } from '../../src/grammar/intent.ts';
import { parse } from '../../src/grammar/parse.ts';
import type { Heard } from '../../src/speech/heard.ts';
import { DEFAULT_MODEL_FOLDER } from '../process/program.ts';
import { loadRecogniser } from './recogniser.ts';
import { BadSoundFile, readSound } from './sound-file.ts';
import { SpeechUnavailable } from './transcriber.ts';

const range = (text: string): { low: number; high: number } => {
  const [, low, high] = /^(-?[\d.]+)\.\.(-?[\d.]+)$/.exec(text) ?? [];
  if (low === undefined || high === undefined || !(Number(low) <= Number(high))) {
    throw new InvalidArgumentError('give two numbers, e.g. 100..160');
  }
  return { low: Number(low), high: Number(high) };
};

interface Options {
  open?: boolean;
  expect?: { low: number; high: number };
  model: string;
}

const program = new Command('transcribe')
  .argument('<file...>', 'WAV or FLAC files')
  .option('--open', 'the letters as heard, without the grammar')
  .option('--expect <lo..hi>', 'the readings to expect', range)
  .option('--model <folder>', 'folder of the speech model', DEFAULT_MODEL_FOLDER)
  .parse();

/** The readings that a sentence gives: a number, `none` or `saturated`. */
const valuesOf = (intents: readonly Intent[]): (number | string)[] =>
  intents.flatMap((intent) => {
    if (!('reading' in intent) || !intent.reading) return [];
    return [intent.reading.kind === 'value' ? intent.reading.value : intent.reading.kind];
  });

async function main(files: string[], { open, expect, model }: Options): Promise<void> {
  const recogniser = await loadRecogniser(model);
  for (const file of files) {
    try {
      const samples = await readSound(file);
      const begun = performance.now();
      const heard = await recogniser.hear(samples, expect && { expect });
      const ms = Math.round(performance.now() - begun);
      console.log(JSON.stringify({ file, ...(open ? { text: heard.freeText } : judged(heard)), ms }));
    } catch (error) {
      // The other files may be good.
      complain(error);
    }
  }
}

function judged({ text, confidence, alternatives, freeText }: Heard): object {
  const decision = text === '' ? undefined : decide({ via: 'voice', text, confidence, alternatives });
  const understood = parse(text);
  const intents = understood.kind === 'understood' ? understood.intents : [];
  const [value] = valuesOf(intents);
  return {
    text,
    outcome: decision?.kind ?? 'silence',
    intent: intents.map(({ kind }) => kind),
    ...(value !== undefined && { value }),
    confidence,
    alternatives,
    open: freeText,
  };
}

function complain(error: unknown): void {
  const known = error instanceof BadSoundFile || error instanceof SpeechUnavailable;
  console.error(known ? `transcribe: ${error.message}` : error);
  process.exitCode = 1;
}

main(program.args, program.opts<Options>()).catch(complain);
