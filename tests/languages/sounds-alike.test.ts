import { describe, expect, it } from 'vitest';
import { confusableWith } from '../../src/grammar/confusable.ts';
import type { Intent } from '../../src/grammar/intent.ts';
import { translator } from '../../src/languages/translate.ts';
import { valueReading } from '../../src/model/reading.ts';
import { optionsText } from '../../src/phrases/asking.ts';
import { SETUP } from '../findings/site.ts';
import { LANGUAGES } from './languages.ts';

const shows = (value: number): Intent[] => [{ kind: 'reading', reading: valueReading(value) }];

describe.each(LANGUAGES)('a question about numbers that sound alike, in $code', ({ language }) => {
  const translate = translator(language);

  it.each([13, 19, 30, 50, 90, 115, 150, 970])('has the figures of %d and no English word', (value) => {
    const other = confusableWith(value) as number;
    for (const options of [[shows(value)], [shows(value), shows(other)]]) {
      const asked = optionsText(options, SETUP.meter);
      expect(asked).toMatch(/teen|ty/);
      const said = translate(asked) ?? '';
      expect(said).toContain(String(value));
      expect(said).not.toMatch(/teen|(?:thir|for|fif|six|seven|eigh|nine)ty/);
    }
  });
});
