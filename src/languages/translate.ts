import type { SpokenFigures } from '../grammar/speak.ts';

/**
 * A language's sentences: ours in English, and each as that language says it. Slots: `{n}`, `{n1}` … a number; `{x}`,
 * `{x1}` … words of people, kept as they are; any other name: words of ours, which have their own line.
 */
export type Sentences = Readonly<Record<string, string>>;

/** A text of ours in another language, or undefined: it has no line yet. Numbers and empty texts are always known. */
export type Translate = (text: string) => string | undefined;

const NUMBER = String.raw`[+−-]?\d[\d.:]*`;
export const SLOT = /\{(\w+)\}/g;
const isNumber = (slot: string): boolean => /^n\d?$/.test(slot);
const isVerbatim = (slot: string): boolean => /^x\d?$/.test(slot);

interface Pattern {
  readonly matches: RegExp;
  readonly slots: readonly string[];
  readonly into: string;
  /** Letters that are not slots: the more, the surer. */
  readonly fixed: number;
}

const literal = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');

function patternOf([english, into]: readonly [string, string]): Pattern {
  const slots = [...english.matchAll(SLOT)].map(([, slot = '']) => slot);
  const [first = '', ...rest] = english.split(/\{\w+\}/);
  const body = rest.map((text, i) => {
    const slot = slots[i] as string;
    return `(${isNumber(slot) ? NUMBER : '.+?'})${literal(text)}`;
  });
  return {
    matches: new RegExp(`^${literal(first)}${body.join('')}$`, 's'),
    slots,
    into,
    fixed: [first, ...rest].join('').length,
  };
}

const BETWEEN_SENTENCES = /(?<=[.?!]) (?=\S)/;
/** What joins texts of ours, the weakest last: a remark in brackets, lists. */
const JOINTS: readonly { at: RegExp; ours: string }[] = [
  { at: / (?=\([^()]*\)[.:]?$)/, ours: ' ' },
  { at: /; /, ours: '; ' },
  { at: /, or /, ours: ', or ' },
  { at: /, /, ours: ', ' },
  { at: /: /, ours: ': ' },
];

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** At most so many texts are remembered: a page left open for days must not grow. */
const MOST_REMEMBERED = 5000;

/** What a screen needs of a language. */
export interface Language {
  readonly sentences: Sentences;
  readonly spoken: SpokenFigures;
  /** What stands between two things to choose from, with its spaces. */
  readonly or: string;
  /** How its signs are set, where a plain space would let a line begin with them. */
  readonly typeset?: (text: string) => string;
}

export function translator(language: Language): Translate {
  const {
    sentences,
    spoken: { decimal },
    or,
    typeset = (text) => text,
  } = language;
  const whole = new Map(Object.entries(sentences).filter(([english]) => !english.includes('{')));
  const patterns = Object.entries(sentences)
    .filter(([english]) => english.includes('{'))
    .map(patternOf)
    .sort((a, b) => b.fixed - a.fixed);
  const remembered = new Map<string, string | undefined>();

  const number = (text: string): string => (decimal === '.' ? text : text.replace(/(\d)[.](?=\d)/g, '$1,'));

  function fill({ slots, into }: Pattern, values: readonly string[]): string | undefined {
    const filled = new Map<string, string>();
    for (const [i, slot] of slots.entries()) {
      const value = values[i] ?? '';
      const said = isVerbatim(slot) ? value : isNumber(slot) ? number(value) : translate(value);
      if (said === undefined) return undefined;
      filled.set(slot, said);
    }
    return into.replace(SLOT, (_, slot: string) => filled.get(slot) ?? '');
  }

  function byPattern(text: string): string | undefined {
    for (const pattern of patterns) {
      const [, ...values] = pattern.matches.exec(text) ?? [];
      const said = values.length > 0 ? fill(pattern, values) : undefined;
      if (said !== undefined) return said;
    }
    return undefined;
  }

  /** One after the other; a line of the table may hold several, with what joins them. */
  function inTurn(parts: readonly string[], ours: string, theirs: string): string | undefined {
    for (let first = parts.length - 1; first > 0; first--) {
      const said = translate(parts.slice(0, first).join(ours));
      const rest = said === undefined ? undefined : translate(parts.slice(first).join(ours));
      if (rest !== undefined) return `${said}${theirs}${rest}`;
    }
    return undefined;
  }

  function inParts(text: string): string | undefined {
    const sentences = inTurn(text.split(BETWEEN_SENTENCES), ' ', ' ');
    if (sentences !== undefined) return sentences;
    for (const { at, ours } of JOINTS) {
      const said = inTurn(text.split(at), ours, ours === ', or ' ? or : ours);
      if (said !== undefined) return said;
    }
    const [, open = '', inner = '', close = ''] = /^([("“«]?)(.*?)([)"”».:,;?!…]*)$/s.exec(text) ?? [];
    const said = open + close === '' ? undefined : translate(inner);
    return said === undefined ? undefined : `${open}${said}${close}`;
  }

  function work(text: string): string | undefined {
    if (!/\p{L}/u.test(text)) return number(text);
    const exact = whole.get(text);
    if (exact !== undefined) return exact;
    const lower = whole.get(lowerFirst(text));
    if (lower !== undefined) return upperFirst(lower);
    const patterned = byPattern(text) ?? inParts(text);
    if (patterned !== undefined || lowerFirst(text) === text) return patterned;
    const small = byPattern(lowerFirst(text));
    return small === undefined ? undefined : upperFirst(small);
  }

  function translate(text: string): string | undefined {
    if (remembered.has(text)) return remembered.get(text);
    const own = work(text);
    const said = own === undefined ? undefined : typeset(own);
    if (remembered.size < MOST_REMEMBERED) remembered.set(text, said);
    return said;
  }

  return translate;
}
