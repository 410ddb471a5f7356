import { describe, expect, it } from 'vitest';
import { forgottenLight, hasUnseen } from '../../src/engine/explore.ts';
import type { Sample } from '../../src/engine/sample.ts';
import type { View } from '../../src/engine/view.ts';
import { at, beamOf, seen, viewOf } from './given.ts';

// Of a beam that falls to half at 9 eighths, with its peak at -4 dB.
const top = (value: number, sd = 0) => ({ value, sd });
const beam = beamOf({ tops: [[0, top(-4)]] });
const here = seen(at(0), -4, { seqs: [90] });

/** Readings that were given up, beside those that count. */
const given = (
  forgotten: readonly Sample[],
  samples: readonly Sample[] = [],
  more: Partial<View> = {},
): View => {
  const { search } = viewOf();
  const counted = [...samples, here];
  return viewOf({
    search: { ...search, samples: [...forgotten, ...samples] },
    samples: counted,
    here,
    beam,
    ...more,
  });
};
const asks = (view: View) => {
  const advice = forgottenLight(view)?.advice;
  expect(hasUnseen(view)).toBe(advice !== undefined);
  return advice;
};
const unknownLaw = (view: View): View => ({
  ...view,
  search: { ...view.search, meter: { ...view.search.meter, law: 'unknown' } },
});

/** 12 eighths off its peak the beam makes -9.3 dB; light from elsewhere is more than 3 dB brighter. */
const lost = (db: number | 'dark' = -5, more: Partial<Sample> = {}) =>
  seen(at(12), db, { seqs: [7], ...more });

describe('Light that was read and given up is looked at again', () => {
  it('where it was read, before anything is accepted', () => {
    expect(asks(given([lost()]))).toMatchObject({
      rule: 'second-peak',
      action: { kind: 'turn', axis: 'horizontal', eighths: 12 },
      because: [7, 90],
    });
  });

  it.each([
    ['the beam cannot make it: 3.03 dB brighter', [lost(-6.3)], true],
    ['the beam may make it: 2.93 dB brighter', [lost(-6.4)], false],
    ['it was dark', [lost('dark')], false],
    ['it was dark at a gain whose peak is not known', [lost('dark', { gain: 1 })], false],
    ['nothing was given up', [], false],
    ['it was read at a gain whose peak is not known', [lost(-30, { gain: 1 })], true],
  ])('or not, where %s', (_, forgotten, expected) => {
    expect(asks(given(forgotten))?.rule).toBe(expected ? 'second-peak' : undefined);
  });

  it('not while there is no beam, nor on a meter of unknown law', () => {
    expect(asks({ ...given([lost()]), beam: undefined })).toBeUndefined();
    expect(asks(unknownLaw(given([lost()])))).toBeUndefined();
  });

  it.each([
    ['known to less than 2 dB', 1.99, undefined],
    ['known no better than to 2 dB', 2, 'second-peak'],
  ])('at a gain whose peak is %s, though the beam may make it: %s', (_, sd, rule) => {
    const vague = beamOf({
      tops: [
        [0, top(-4)],
        [1, top(-4, sd)],
      ],
    });
    expect(asks(given([lost(-9.3, { gain: 1 })], [], { beam: vague }))?.rule).toBe(rule);
  });

  it('as is light that counts and was read at a gain that says nothing of this one', () => {
    const light = (gain: number) => seen(at(12), -5, { seqs: [7], gain });
    const of = (otherLight: readonly Sample[]) => beamOf({ tops: [[0, top(-4)]], more: { otherLight } });
    const told = (s: Sample) => forgottenLight(given([], [], { beam: of([s]) }))?.advice.because;
    expect(told(light(1))).toEqual([7, 90]);
    expect(told(light(0))).toBeUndefined();
  });

  it('the brightest at each gain, one gain after the other', () => {
    const bright = lost(-5, { seqs: [11] });
    const dim = seen(at(20), -6, { seqs: [12] });
    const second = seen(at(-20), -30, { seqs: [13], gain: 1 });
    const read = seen(at(12), -5, { seqs: [80] });
    expect(asks(given([dim, bright]))?.because).toEqual([11, 90]);
    expect(asks(given([bright, dim]))?.because).toEqual([11, 90]);
    expect(asks(given([bright, dim], [read]))).toBeUndefined();
    expect(asks(given([bright, dim, second], [read]))?.because).toEqual([13, 90]);
  });
});

describe('Light that was given up has been looked at', () => {
  const read = (horizontal: number, vertical: number, db: number | 'dark', more: Partial<Sample> = {}) =>
    seen(at(horizontal, vertical), db, more);

  it.each([
    ['three eighths away on both adjusters', read(15, 3, -5), true],
    ['three eighths away to the other sides', read(9, -3, -5), true],
    ['not four eighths away', read(16, 0, -5), false],
    ['not four eighths away on the other adjuster', read(12, 4, -5), false],
    ['less than 6 dB dimmer', read(15, 0, -10.9), true],
    ['not 6 dB dimmer', read(15, 0, -11), false],
    ['an eighth away, however dark', read(13, 1, 'dark'), true],
    ['not two eighths away and dark', read(14, 0, 'dark'), false],
    ['not two eighths away on the other adjuster and dark', read(12, 2, 'dark'), false],
    ['not at a gain whose peak is not known', read(12, 0, -5, { gain: 1 }), false],
  ])('where it was read %s', (_, sample, isLookedAt) => {
    expect(asks(given([lost()], [sample])) === undefined).toBe(isLookedAt);
  });

  it('where it was read at another gain as bright beside the peak', () => {
    const two = beamOf({
      tops: [
        [0, top(-4)],
        [1, top(2)],
      ],
    });
    const isLookedAt = (db: number) =>
      asks(given([lost()], [read(15, 0, db, { gain: 1 })], { beam: two })) === undefined;
    expect(isLookedAt(-4.9)).toBe(true);
    expect(isLookedAt(-5.1)).toBe(false);
  });

  it('where it was read at all, if its own gain tells nothing', () => {
    const unknown = lost(-5, { gain: 1 });
    expect(asks(given([unknown], [read(15, 3, 'dark')]))).toBeUndefined();
    expect(asks(given([unknown], [read(16, 3, 'dark')]))).toBeDefined();
  });

  it.each([
    ['beyond the end of the screw', 11, true],
    ['not at it', 12, false],
  ])('where it lies %s', (_, high, isLookedAt) => {
    const view = given([lost()]);
    const limits = { ...view.search.limits, horizontal: { low: -80, high } };
    const limited = { ...view, search: { ...view.search, limits } };
    expect(asks(limited) === undefined).toBe(isLookedAt);
  });
});

describe('Brighter light that was given up is gone from its place', () => {
  /** Read twice, and dark when it was looked at. */
  const bright = (db: number, more: Partial<Sample> = {}) => lost(db, { seqs: [7, 8], ...more });
  const dark = seen(at(12), 'dark');

  it('so the screws have slipped: aim again', () => {
    expect(asks(given([bright(-2.9)], [dark]))).toMatchObject({
      rule: 'brighter-before',
      action: { kind: 're-aim' },
      because: [8, 90],
    });
  });

  it.each([
    ['1 dB above the peak', -3, 0, false],
    ['more than 1 dB above the peak', -2.99, 0, true],
    ['not two standard deviations above the peak', -2.81, 0.6, false],
    ['two standard deviations above the peak', -2.79, 0.6, true],
  ])('or not: %s', (_, db, sd, isGone) => {
    const known = beamOf({ tops: [[0, top(-4, sd)]] });
    expect(asks(given([bright(db)], [dark], { beam: known }))?.rule).toBe(
      isGone ? 'brighter-before' : undefined,
    );
  });

  it.each([
    ['one reading: it may be a misread', [lost(-2)], undefined],
    ['two readings, at two places', [lost(-2), seen(at(13), -1, { seqs: [10] })], 10],
    ['two readings, the brighter first', [seen(at(13), -1, { seqs: [10] }), lost(-2)], 10],
    ['two readings, at two gains', [lost(-2), seen(at(13), 4.5, { seqs: [10], gain: 1 })], 7],
    [
      'two readings, one at a gain whose peak is known to 2 dB',
      [lost(-2), seen(at(13), 9, { seqs: [10], gain: 2 })],
      undefined,
    ],
    [
      'two readings, one at a gain whose peak is not known',
      [lost(-2), seen(at(13), 9, { seqs: [10], gain: 3 })],
      undefined,
    ],
    ['two readings, one not looked at again', [lost(-2), seen(at(40), -2.5, { seqs: [10] })], undefined],
    ['two readings, one as bright as the peak', [lost(-2), seen(at(13), -4, { seqs: [10] })], undefined],
  ])('as told by %s', (_, forgotten, because) => {
    const gains = beamOf({
      tops: [
        [0, top(-4)],
        [1, top(3)],
        [2, top(3, 2)],
      ],
    });
    const told = asks(given(forgotten, [dark], { beam: gains }));
    expect(told?.because).toEqual(because && [because, 90]);
  });

  it('not where it still counts', () => {
    expect(asks(given([], [bright(-2)]))).toBeUndefined();
  });

  it('not while there is no beam, nor on a meter of unknown law', () => {
    const view = given([bright(-2)], [dark]);
    expect(asks({ ...view, beam: undefined })).toBeUndefined();
    expect(asks(unknownLaw(view))).toBeUndefined();
  });

  it('after what has not been looked at', () => {
    const told = asks(given([bright(-2), seen(at(40), -30, { seqs: [10], gain: 1 })], [dark]));
    expect(told?.rule).toBe('second-peak');
  });
});
