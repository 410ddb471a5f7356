const TEENS = 'thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(' ');
const TENS = 'thirty forty fifty sixty seventy eighty ninety'.split(' ');
const DIGITS = 'zero one two three four five six seven eight nine'.split(' ');

/** The parts of a number whose last two digits before the decimal are 13 to 19, or 30, 40 to 90. */
function trap(value: number) {
  const whole = Math.trunc(Math.abs(value));
  const last = whole % 100;
  const tens = Math.floor(last / 10);
  const units = last % 10;
  if (tens === 1 && units >= 3) return { whole, last, word: TEENS[units - 3], confusable: 10 * units };
  if (units === 0 && tens >= 3) return { whole, last, word: TENS[tens - 3], confusable: 10 + tens };
  return undefined;
}

/**
 * The number that sounds like this one: 30 for 13, 19 for 90, 150 for 115, 50.5 for 15.5. Undefined for
 * numbers without one.
 */
export function confusableWith(value: number): number | undefined {
  const found = trap(value);
  if (!found) return undefined;
  const confusable = Math.abs(value) - found.last + found.confusable;
  return Math.sign(value) * Number(confusable.toFixed(6));
}

/** Such a number as it was probably said, "thirteen" or "one fifty"; undefined for others, for fractions and beyond 999. */
export function confusableWord(value: number): string | undefined {
  const found = trap(value);
  if (!found || value !== found.whole || value > 999) return undefined;
  const before = [...String(Math.floor(value / 100))].map((figure) => DIGITS[Number(figure)]);
  return value < 100 ? found.word : [...before, found.word].join(' ');
}
