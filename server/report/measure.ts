import type { Face, Fonts } from './fonts.ts';

/** Sizes of type, points. Nothing is smaller than 8: people read it on a site, and in copies of copies. */
export const SIZE = { title: 18, value: 13, head: 11, body: 9, small: 8 } as const;

/** Height of a line, as a part of its size. */
const LEADING = 1.22;
/** Stands for a letter that the typeface does not have. It can be seen, and a file for archives may hold it. */
const NO_LETTER = '\ufffd';

export const lineHeight = (size: number): number => size * LEADING;

interface Word {
  /** As it is printed. */
  readonly text: string;
  /** At size 1. */
  readonly width: number;
}

/** How wide words are, and where lines break. Each word is measured once. */
export class Measure {
  readonly #words: { readonly [face in Face]: Map<string, Word> } = {
    plain: new Map(),
    bold: new Map(),
    mono: new Map(),
  };

  constructor(private readonly fonts: Fonts) {}

  /** Width of a line as it will be printed, points. */
  width(line: string, face: Face, size: number): number {
    const words = wordsIn(line).map((word) => this.#word(word, face).width);
    const spaces = Math.max(0, words.length - 1) * this.#space(face);
    return (words.reduce((sum, width) => sum + width, 0) + spaces) * size;
  }

  /** Width of the widest word. */
  widest(text: string, face: Face, size: number): number {
    return Math.max(0, ...wordsIn(text).map((word) => this.#word(word, face).width)) * size;
  }

  /** Lines no wider than `room`, points. A word breaks only when it alone is wider. */
  lines(text: string, face: Face, size: number, room: number): string[] {
    const space = this.#space(face) * size;
    const lines: string[] = [];
    let line = '';
    let used = 0;
    for (const word of wordsIn(text).flatMap((each) => this.#fitting(each, face, size, room))) {
      const { text: shown, width } = this.#word(word, face);
      const wide = width * size;
      if (line !== '' && used + space + wide > room) {
        lines.push(line);
        line = '';
        used = 0;
      }
      used += (line === '' ? 0 : space) + wide;
      line = line === '' ? shown : `${line} ${shown}`;
    }
    return line === '' ? lines : [...lines, line];
  }

  /** The word, cut where a line is full. */
  #fitting(word: string, face: Face, size: number, room: number): string[] {
    if (this.#word(word, face).width * size <= room) return [word];
    const letters = [...word];
    const cut: string[] = [];
    for (let from = 0; from < letters.length; ) {
      const to = this.#fullAt(letters, from, face, size, room);
      cut.push(letters.slice(from, to).join(''));
      from = to;
    }
    return cut;
  }

  /** Where a line that begins with letter `from` is full; at least one letter stands on it. */
  #fullAt(letters: readonly string[], from: number, face: Face, size: number, room: number): number {
    let [full, over] = [from + 1, letters.length + 1];
    while (over - full > 1) {
      const at = Math.floor((full + over) / 2);
      if (this.#word(letters.slice(from, at).join(''), face).width * size > room) over = at;
      else full = at;
    }
    return full;
  }

  #word(word: string, face: Face): Word {
    const known = this.#words[face].get(word);
    if (known) return known;
    const font = this.fonts[face];
    const text = [...word]
      .map((letter) => (font.hasGlyphForCodePoint(letter.codePointAt(0) as number) ? letter : NO_LETTER))
      .join('');
    const made = { text, width: font.layout(text).advanceWidth / font.unitsPerEm };
    this.#words[face].set(word, made);
    return made;
  }

  #space(face: Face): number {
    const font = this.fonts[face];
    return font.glyphForCodePoint(32).advanceWidth / font.unitsPerEm;
  }
}

/** A number stays with its unit and its tolerance. */
const TIED = /(?<=\d) (?=(?:s|min|h|m|ft|cm|dB|%|turns|counts)\b|[%±])|(?<=±) /g;
/** A no-break space is part of a word. */
const wordsIn = (text: string): string[] =>
  text
    .replace(TIED, '\u00a0')
    .split(/[ \t\r\n]+/)
    .filter((word) => word !== '');
