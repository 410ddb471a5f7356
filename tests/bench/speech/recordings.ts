import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT_FOLDER } from '../../../server/process/program.ts';
import { readSound } from '../../../server/speech/sound-file.ts';
import { sample } from '../../../src/grammar/sample.ts';

/** One utterance of a speaker the model never heard. */
export interface Utterance {
  set: string;
  speaker: string;
  /** What was said. */
  text: string;
  /** Of people: the recordings that it is made of. */
  recordings?: readonly string[];
  sound(): Promise<Float32Array>;
}

const SPLIT: { held_out: Record<string, string[]> } = JSON.parse(
  readFileSync(join(ROOT_FOLDER, 'server', 'speech', 'training', 'split.json'), 'utf8'),
);
const DIGITS = 'zero one two three four five six seven eight nine'.split(' ');

const rows = (file: string): string[][] =>
  readFileSync(file, 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split('\t'));

/** The held-out people of AN4, of the digits and of Speech Commands, in the folders that the training's README names. */
export function people(folder: string): Utterance[] {
  const from = (set: string, table: string): Utterance[] =>
    rows(join(folder, set, table)).map(([file = '', speaker = '', text = '']) => ({
      set,
      speaker,
      text,
      recordings: [file],
      sound: () => readSound(join(folder, set, 'audio', file)),
    }));
  const digits = readdirSync(join(folder, 'digits', 'audio'))
    .sort()
    .map((file): Utterance => {
      const [digit = '', speaker = ''] = file.split('_');
      const text = DIGITS[Number(digit)] ?? '';
      const sound = () => readSound(join(folder, 'digits', 'audio', file));
      return { set: 'digits', speaker, text, recordings: [file], sound };
    });
  return [...from('an4', 'transcripts.tsv'), ...digits, ...from('commands', 'labels.tsv')].filter(
    ({ set, speaker }) => SPLIT.held_out[set]?.includes(speaker),
  );
}

/** Voices of espeak-ng and flite that were held out of the training. */
const VOICES: readonly (readonly [string, ...string[]])[] = [
  ['espeak-ng', '-v', 'en-us+Annie', '-s', '150'],
  ['espeak-ng', '-v', 'en-gb+Denis', '-s', '165'],
  ['espeak-ng', '-v', 'en-us+m7', '-s', '135'],
  ['espeak-ng', '-v', 'en-gb-scotland+f4', '-s', '150'],
  ['flite', '-voice', 'awb'],
];

/** Sentences of the grammar, spoken by held-out synthetic voices if these are installed. */
export function voices(count: number, rng: () => number): Utterance[] {
  const rules = ['level', 'moved', 'gain', 'command', 'correct', 'path', 'panel'] as const;
  return spoken(Array.from({ length: count }, (_, i) => sample(rng, rules[i % rules.length])));
}

const installed = (): typeof VOICES =>
  VOICES.filter(([program]) => (process.env.PATH ?? '').split(':').some((p) => existsSync(join(p, program))));

/** Each of these texts by each of the held-out synthetic voices. */
export const spokenByEach = (texts: readonly string[]): Utterance[] =>
  spoken(texts.flatMap((text) => installed().map(() => text)));

/** Texts, spoken by held-out synthetic voices in turn if these are installed. */
export function spoken(texts: readonly string[]): Utterance[] {
  const there = installed();
  if (there.length === 0) return [];
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-voices-'));
  return texts.map((text, i): Utterance => {
    const [program, ...options] = there[i % there.length] as (typeof VOICES)[number];
    return {
      set: 'voices',
      speaker: options.join(' '),
      text,
      async sound() {
        const file = join(folder, `${i}.wav`);
        if (program === 'flite') execFileSync('flite', [...options, '-t', text, '-o', file]);
        else writeFileSync(file, withLength(execFileSync(program, [...options, '--stdout', text])));
        return readSound(file);
      },
    };
  });
}

/** A WAV file written to a pipe has no length in its header. This adds it. */
export function withLength(wav: Buffer): Buffer {
  wav.writeUInt32LE(wav.length - 8, 4);
  wav.writeUInt32LE(wav.length - 44, 40);
  return wav;
}

/** Speakers at even places in the list of their set fit the confidence; the one speaker of the digits does not. */
export function isForFit({ set, speaker }: Utterance): boolean {
  const speakers =
    set === 'voices' ? VOICES.map(([, ...options]) => options.join(' ')) : (SPLIT.held_out[set] ?? []);
  return set !== 'digits' && speakers.indexOf(speaker) % 2 === 0;
}
