import { describe, expect, it } from 'vitest';
import { headingText } from '../../src/phrases/record-heading.ts';
import { headingOf } from '../../src/record/heading.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { PLANTS, type Plant } from '../../src/simulator/plants.ts';
import { playedVisit, SETUP } from '../findings/site.ts';

const record = (plants: Plant[] = [], setup = SETUP) =>
  new VisitRecord({ entries: playedVisit(plants, 1, setup) });
const told = (visit: VisitRecord) => {
  const heading = headingOf(visit, []);
  return [headingText(heading), heading.look];
};

describe('what stands above the record of a visit', () => {
  it.each<[string, Plant[], text: string, look: string]>([
    ['signed, and nothing to ask', [], 'Signed', 'calm'],
    ['signed, with something to know only', ['misread'], 'Signed', 'calm'],
    ['signed, with a question', ['late-alarm'], 'Signed: 1 to be asked', 'plain'],
    ['a path beyond the maker’s range', ['path-too-long'], 'Needs attention: 1 serious', 'heed'],
    [
      'signed with a test that was only answered for',
      ['excused'],
      'Signed, not proven: 1 serious, 1 to be asked',
      'heed',
    ],
    ['turned after it was signed', ['touched-since'], 'Needs attention: 2 serious', 'heed'],
    ['left with the outputs isolated', ['left-isolated'], 'Needs attention: 1 serious', 'heed'],
  ])('of one that is %s', (_, plants, text, look) => {
    expect(told(record(plants))).toEqual([text, look]);
  });

  it('is never calm beside a serious finding or a question, whatever went wrong', () => {
    for (const plant of Object.keys(PLANTS) as Plant[]) {
      const visit = record([plant]);
      const heading = headingOf(visit, []);
      const worst = visit.findings.map(({ severity }) => severity);
      if (worst.includes('serious')) expect(heading.look, plant).toBe('heed');
      else if (worst.includes('question')) expect(heading.look, plant).not.toBe('calm');
      expect(headingText(heading).includes('serious'), plant).toBe(worst.includes('serious'));
    }
  });

  it('is plain where only the alignment was asked for: nothing is proven', () => {
    expect(told(record([], { ...SETUP, scope: 'alignment' }))[1]).not.toBe('calm');
  });
});
