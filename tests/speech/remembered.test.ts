import { expect, it } from 'vitest';
import { remembered } from '../../src/speech/remembered.ts';

it('a hearer is asked about each text of an utterance once, also where it says nothing', () => {
  const asked: string[] = [];
  const answer = remembered((text: string) => {
    asked.push(text);
    return text === 'go' ? undefined : text.length;
  });
  expect(['five', 'go', 'five', 'go', 'nine'].map(answer)).toEqual([4, undefined, 4, undefined, 4]);
  expect(asked).toEqual(['five', 'go', 'nine']);
});
