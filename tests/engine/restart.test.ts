import { describe, expect, it } from 'vitest';
import { beginAgain } from '../../src/engine/restart.ts';
import { look } from '../../src/engine/view.ts';
import { Job } from './crew-of-two.ts';
import { at, seen } from './given.ts';
import { Proof } from './proven.ts';

/** So many places with light, after as many dark ones; then the newest, where the crew stands. */
const afterPlaces = (lit: number, dark = 0) => {
  const job = new Job();
  const places = [
    ...Array.from({ length: dark }, () => seen(at(0), 'dark')),
    ...Array.from({ length: lit }, (_, i) => seen(at(i), i % 7 === 1 ? 'dark' : -20 - i)),
  ];
  job.search = { ...job.search, samples: places };
  job.reads(40);
  return job;
};
const again = (job: Job) => beginAgain(look(job.search), job.at);

describe('A search begins again', () => {
  it('after 50 places since there was light', () => {
    const job = afterPlaces(50);
    expect(again(job)?.advice).toEqual({
      to: 'emitter',
      rule: 'begin-again',
      action: { kind: 're-aim' },
      because: [job.seq - 1],
      figures: { places: 50 },
    });
  });

  it.each([
    ['after 49', afterPlaces(49)],
    ['for dark places before them', afterPlaces(49, 3)],
    ['for dark places alone', afterPlaces(0, 60)],
  ])('not %s', (_, job) => {
    expect(again(job)).toBeUndefined();
  });

  it('not where all is proven with the screws', () => {
    const proof = new Proof().brackets();
    const lit = Array.from({ length: 50 }, () => seen(at(0), proof.course.top));
    proof.search = { ...proof.search, samples: [...lit, ...proof.search.samples] };
    expect(again(proof)).toBeUndefined();
    const unproven = new Proof({ above: 7 }).brackets();
    unproven.search = { ...unproven.search, samples: [...lit, ...unproven.search.samples] };
    expect(again(unproven)?.advice.rule).toBe('begin-again');
  });
});
