/** What is said otherwise in America: the rest of our English is the same there. */
const WORDS: Readonly<Record<string, string>> = {
  anticlockwise: 'counterclockwise',
  metre: 'meter',
  metres: 'meters',
  centimetre: 'centimeter',
  centimetres: 'centimeters',
  colour: 'color',
  licence: 'license',
};

const ANY = new RegExp(`\\b(?:${Object.keys(WORDS).join('|')})\\b`, 'gi');

const capitalAs = (word: string, model: string): string =>
  /^\p{Lu}/u.test(model) ? word.charAt(0).toUpperCase() + word.slice(1) : word;

/** A text of ours in American words. */
export const inAmerican = (text: string): string =>
  text.replace(ANY, (word) => capitalAs(WORDS[word.toLowerCase()] ?? word, word));
