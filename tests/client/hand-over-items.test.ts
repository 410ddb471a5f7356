import { describe, expect, it } from 'vitest';
import { itemsOf, nextOpen, withWaiting } from '../../client/hand-over/items.ts';
import type { Pending } from '../../client/link/link.ts';
import type { HandOverFact } from '../../src/model/hand-over.ts';
import { NOTHING_HANDED_OVER } from '../../src/visit/hand-over.ts';
import { SETUP } from '../server/phone.ts';

const setup = { ...SETUP, steps: [{ cause: 'Mains off', effect: 'A fault' }] };
const waiting = (...facts: HandOverFact[]): Pending[] =>
  facts.map((fact, i) => ({ letter: { t: 'hand-over', id: `letter-${i}`, fact }, since: 7, dueAt: 0 }));
const shownAs = (facts: HandOverFact[], key: string): string | undefined =>
  itemsOf(setup, withWaiting(NOTHING_HANDED_OVER, waiting(...facts), 9)).find((item) => item.key === key)
    ?.value;

describe('what a crew can write down about its pair', () => {
  it('begins with the steps, has every value of the form of the desk, and says nothing that nobody wrote', () => {
    const items = itemsOf(setup, NOTHING_HANDED_OVER);
    expect(items[0]).toMatchObject({ kind: 'step', name: 'Mains off' });
    expect(items.map(({ key }) => key)).toEqual(
      expect.arrayContaining(['signal', 'pointsAt', 'sun', 'weather', 'building', 'variation', 'next']),
    );
    expect(items.filter(({ value }) => value !== '')).toEqual([]);
  });

  it.each<[string, HandOverFact, string, string]>([
    ['a step', { type: 'step', cause: 'Mains off', result: 'failed' }, 'step Mains off', 'FAILED'],
    ['a value', { type: 'as-left', values: { alarmDelay: 10 } }, 'alarmDelay', '10 s'],
    ['the sun', { type: 'conditions', sun: 'near' }, 'sun', 'sun near the receiver'],
    ['the building', { type: 'conditions', building: ['dusty'] }, 'building', 'dust in the air'],
    [
      'a variation',
      { type: 'variation', what: 'No cover', agreedWith: 'W. Example' },
      'variation',
      'No cover (agreed with W. Example)',
    ],
    ['what is next', { type: 'next-due', what: 'Clean', on: '2027-01-31' }, 'next', 'Clean, by 2027-01-31'],
  ])('shows %s that still waits on the phone', (_, fact, key, value) => {
    expect(shownAs([fact], key)).toBe(value);
  });

  it('passes on to what is not written: after the present one first, then from the top; never to a variation', () => {
    const facts: HandOverFact[] = [
      { type: 'step', cause: 'Mains off', result: 'passed' },
      { type: 'as-left', values: { gain: '3' } },
    ];
    const items = itemsOf(setup, withWaiting(NOTHING_HANDED_OVER, waiting(...facts), 9));
    expect(nextOpen(items, undefined)?.key).toBe('signal');
    expect(nextOpen(items, 'signal')?.key).toBe('threshold');
    expect(nextOpen(items, 'building')?.key).toBe('next');
    expect(nextOpen(items, 'next')?.key).toBe('signal');
    expect(
      nextOpen(
        items.filter(({ value, key }) => value !== '' || key === 'variation'),
        'gain',
      ),
    ).toBeUndefined();
  });
});
