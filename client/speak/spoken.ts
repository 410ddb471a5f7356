import { speakNumber } from '../../src/grammar/speak.ts';

/** Numbers figure by figure, as over a radio: "Heard 142." is said "Heard one four two." */
export const spoken = (text: string): string =>
  text.replace(/[-−]?(?<!\d)\d{1,6}(?:\.\d{1,4})?(?!\d)/g, (number) => {
    const places = number.split('.')[1]?.length ?? 0;
    return speakNumber(Number(number.replace('−', '-')), { resolution: 10 ** -places });
  });
