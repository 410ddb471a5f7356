import { createRng } from '../../../src/simulator/rng.ts';
import { accented } from './accents.ts';
import { chatter } from './chatter.ts';
import { KINDS, noisy } from './noise.ts';
import { meaningOf } from './outcome.ts';
import { people, spoken, type Utterance, voices } from './recordings.ts';
import { strings } from './strings.ts';

export const SEED = 20261127;

/** What is said to the bench of strangers, set by set: of each set at most `each`. Every draw of noise has a seed of its own. */
export function sets(recordings: string, each: number): Utterance[] {
  const rng = createRng(SEED);
  const drawn = <T>(from: readonly T[], count: number): T[] => {
    const left = [...from];
    const next = (): T => left.splice(Math.floor(rng() * left.length), 1)[0] as T;
    return Array.from({ length: Math.min(count, left.length) }, next);
  };
  const all = people(recordings);
  const isOurs = ({ text }: Utterance): boolean => meaningOf(text) !== undefined;
  const kinds = Object.values(KINDS);
  const single = all.filter(({ set }) => set !== 'digits');
  const digits = all.filter(({ set }) => set === 'digits');
  const inNoise = (set: string, from: readonly Utterance[]): Utterance[] =>
    from.map((one, i) => ({
      ...one,
      set,
      sound: async () =>
        noisy(
          await one.sound(),
          kinds[i % kinds.length] as (typeof kinds)[number],
          10,
          createRng(SEED + 1 + i),
        ),
    }));
  const named = (set: string, some: readonly Utterance[]): Utterance[] =>
    some.map((one) => ({ ...one, set }));
  const clean = drawn(single.filter(isOurs), each);
  return [
    ...named('clean', clean),
    ...inNoise('noise', drawn(single.filter(isOurs), each)),
    ...named('digits', drawn(digits, each)),
    ...strings(digits, each, rng),
    ...voices(Math.ceil(each / 2), rng),
    ...accented(Math.ceil(each / 2), rng),
    ...named(
      'others',
      drawn(
        single.filter((one) => !isOurs(one)),
        each,
      ),
    ),
    ...named(
      'chatter',
      spoken(Array.from({ length: Math.ceil(each / 2) }, () => chatter(rng))).filter((one) => !isOurs(one)),
    ),
  ];
}
