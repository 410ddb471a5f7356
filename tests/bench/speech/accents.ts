import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT_FOLDER } from '../../../server/process/program.ts';
import { readSound } from '../../../server/speech/sound-file.ts';
import { type Utterance, withLength } from './recordings.ts';

/** English words as people say them who speak another language first: sounds, and what they become. */
const {
  words,
  vowels,
  plain,
  accents,
  held_out,
}: Record<'vowels' | 'held_out', string[]> & {
  words: Record<string, string>;
  plain: Record<string, string[]>;
  accents: Record<string, Record<string, string[]>>;
} = JSON.parse(readFileSync(join(ROOT_FOLDER, 'server', 'speech', 'training', 'accents.json'), 'utf8'));

const DIGITS = 'zero one two three four five six seven eight nine'.split(' ');
const VARIANTS = ['m1', 'f2', 'm5', 'f5', 'm8'];

/** One accent that no hearer was trained on, by one variant of the voice. */
interface Accented {
  accent: string;
  variant: string;
}
const speakerOf = ({ accent, variant }: Accented): string => `${accent}+${variant}`;
const ACCENTED: readonly Accented[] = held_out.flatMap((accent) =>
  VARIANTS.map((variant) => ({ accent, variant })),
);

type Pick = <T>(from: readonly T[]) => T;

/** What these say, with pace and sounds drawn; by espeak-ng where it is installed. */
function saidBy(
  set: string,
  voices: readonly Accented[],
  textOf: (i: number, pick: Pick) => string,
  rng: () => number,
): Utterance[] {
  const there = (process.env.PATH ?? '').split(':').some((path) => existsSync(join(path, 'espeak-ng')));
  if (!there) return [];
  const pick: Pick = (from) => from[Math.floor(rng() * from.length)] as (typeof from)[number];
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-accents-'));
  return voices.map((voice, i) => {
    const speaker = speakerOf(voice);
    const text = textOf(i, pick);
    const spoken = phonemes(text, voice.accent, pick);
    const pace = String(130 + Math.floor(90 * rng()));
    return {
      set,
      speaker,
      text,
      async sound() {
        const file = join(folder, `${i}.wav`);
        const said = execFileSync('espeak-ng', ['-v', speaker, '-s', pace, '--stdout', spoken]);
        writeFileSync(file, withLength(said));
        return readSound(file);
      },
    };
  });
}

/** Strings of two and three digits. */
export function accented(count: number, rng: () => number): Utterance[] {
  const voices = Array.from({ length: count }, (_, i) => ({
    accent: held_out[i % held_out.length] as string,
    variant: VARIANTS[i % VARIANTS.length] as string,
  }));
  const digits = (i: number, pick: Pick): string =>
    Array.from({ length: 2 + (i % 2) }, () => pick(DIGITS)).join(' ');
  return saidBy('accents', voices, digits, rng);
}

/** Each of these words alone, by each of these voices. */
function accentedEach(set: string, each: readonly string[], rng: () => number): Utterance[] {
  const voices = ACCENTED.flatMap((voice) => each.map(() => voice));
  return saidBy(set, voices, (i) => each[i % each.length] as string, rng);
}

export const accentedWords = (rng: () => number): Utterance[] =>
  accentedEach('accented-words', Object.keys(words), rng);

export const accentedDigits = (set: string, rng: () => number): Utterance[] => accentedEach(set, DIGITS, rng);

/** What espeak-ng takes for sounds, not letters: the first vowel of each word is stressed. */
function phonemes(text: string, accent: string, pick: (from: readonly string[]) => string): string {
  const table = { ...plain, ...accents[accent] };
  const said = text.split(' ').map((word) => {
    const sounds = (words[word] ?? '').split(' ');
    const stressed = sounds.findIndex((sound) => vowels.includes(sound));
    return sounds
      .map((sound, i) => (i === stressed ? "'" : '') + pick(table[sound] ?? ['']).replaceAll(' ', ''))
      .join('');
  });
  return `[[${said.join(' ')}]]`;
}
