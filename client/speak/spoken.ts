const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** Numbers digit by digit, as over a radio: "Heard 142." is said "Heard one four two." */
export const spoken = (text: string): string =>
  text
    .replace(/[-−](?=\d)/g, 'minus ')
    .replace(/\d+(?:\.\d+)?/g, (number) =>
      [...number].map((c) => (c === '.' ? 'point' : (DIGITS[Number(c)] as string))).join(' '),
    );
