import { confusableWord } from '../grammar/confusable.ts';

/**
 * A number that sounds like another one when it is said in English is asked in figures and in words: "50, fifty". In another
 * language the figures alone are clear: they are read, and spoken one by one.
 */
export const SOUNDS_ALIKE: Readonly<Record<string, string>> = Object.fromEntries(
  Array.from({ length: 1000 }, (_, number) => confusableWord(number)).flatMap((word) =>
    word === undefined ? [] : [[`{n}, ${word}`, '{n}']],
  ),
);
