const DIGITS = 'zero one two three four five six seven eight nine'.split(' ');

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
export const speakNumber = (value: number, { resolution }: { resolution?: number } = {}): string => {
  if (!(Math.abs(value) < 999_999.5)) throw new RangeError(`Cannot be spoken figure by figure: ${value}`);
  const places = resolution === undefined ? 4 : Math.min(placesOf(resolution), 4);
  const fixed = Math.abs(value).toFixed(places);
  const figures = resolution === undefined ? fixed.replace(/\.?0+$/, '') : fixed;
  const words = [...figures].map((figure) => (figure === '.' ? 'decimal' : DIGITS[Number(figure)]));
  return [...(value < 0 && Number(figures) !== 0 ? ['minus'] : []), ...words].join(' ');
};

/** A sentence with its numbers digit by digit, as over a radio: "Heard 142." is said "Heard one four two." */
export const spoken = (text: string): string =>
  text.replace(/[-−]?(?<!\d)\d{1,6}(?:\.\d{1,4})?(?!\d)/g, (number) => {
    const places = number.split('.')[1]?.length ?? 0;
    return speakNumber(Number(number.replace('−', '-')), { resolution: 10 ** -places });
  });
