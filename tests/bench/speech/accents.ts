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

/** Strings of two and three digits in the accents that no hearer was trained on, by espeak-ng where it is installed. */
export function accented(count: number, rng: () => number): Utterance[] {
  const there = (process.env.PATH ?? '').split(':').some((path) => existsSync(join(path, 'espeak-ng')));
  if (!there) return [];
  const pick = <T>(from: readonly T[]): T => from[Math.floor(rng() * from.length)] as T;
  const folder = mkdtempSync(join(tmpdir(), 'ladderline-accents-'));
  return Array.from({ length: count }, (_, i): Utterance => {
    const accent = held_out[i % held_out.length] as string;
    const variant = VARIANTS[i % VARIANTS.length] as string;
    const text = Array.from({ length: 2 + (i % 2) }, () => pick(DIGITS)).join(' ');
    const spoken = phonemes(text, accent, pick);
    const rate = String(130 + Math.floor(90 * rng()));
    return {
      set: 'accents',
      speaker: `${accent}+${variant}`,
      text,
      async sound() {
        const file = join(folder, `${i}.wav`);
        const voice = ['-v', `${accent}+${variant}`, '-s', rate, '--stdout', spoken];
        writeFileSync(file, withLength(execFileSync('espeak-ng', voice)));
        return readSound(file);
      },
    };
  });
}

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
