/** How a number is said figure by figure. */
export interface SpokenFigures {
  /** Nought to nine. */
  readonly figures: readonly string[];
  /** The sign before decimals, and how it is said. */
  readonly decimal: '.' | ',';
  readonly point: string;
  readonly minus: string;
}

export const ENGLISH_FIGURES: SpokenFigures = {
  figures: 'zero one two three four five six seven eight nine'.split(' '),
  decimal: '.',
  point: 'decimal',
  minus: 'minus',
};

/** Decimal places of a resolution, e.g. 2 for 0.01. */
const placesOf = (resolution: number): number => {
  const [, places = ''] = resolution.toFixed(6).replace(/0+$/, '').split('.');
  return places.length;
};

/**
 * A number digit by digit, as it is said on the radio: 142 is "one four two", 50.5 is "five zero decimal
 * five". With `resolution` it is rounded and filled to the places of that resolution, without it to at most
 * four. `parse` reads the result as the same number. Throws a RangeError for a number with more than six
 * digits before the decimal, or one that is not finite.
 */
export const speakNumber = (
  value: number,
  { resolution }: { resolution?: number } = {},
  language: SpokenFigures = ENGLISH_FIGURES,
): string => {
  if (!(Math.abs(value) < 999_999.5)) throw new RangeError(`Cannot be spoken figure by figure: ${value}`);
  const places = resolution === undefined ? 4 : Math.min(placesOf(resolution), 4);
  const fixed = Math.abs(value).toFixed(places);
  const figures = resolution === undefined ? fixed.replace(/\.?0+$/, '') : fixed;
  const words = [...figures].map((figure) =>
    figure === '.' ? language.point : language.figures[Number(figure)],
  );
  return [...(value < 0 && Number(figures) !== 0 ? [language.minus] : []), ...words].join(' ');
};

const WITH_POINT = /[-−]?(?<!\d)\d{1,6}(?:\.\d{1,4})?(?!\d)/g;
const WITH_COMMA = /[-−]?(?<!\d)\d{1,6}(?:,\d{1,4})?(?!\d)/g;

/** A sentence with its numbers digit by digit, as over a radio: "Heard 142." is said "Heard one four two." */
export const spoken = (text: string, language: SpokenFigures = ENGLISH_FIGURES): string =>
  text.replace(language.decimal === ',' ? WITH_COMMA : WITH_POINT, (number) => {
    const [whole = '', decimals = ''] = number.split(language.decimal);
    const value = Number(`${whole.replace('−', '-')}.${decimals || '0'}`);
    return speakNumber(value, { resolution: 10 ** -decimals.length }, language);
  });
