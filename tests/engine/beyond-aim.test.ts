import { describe, expect, it } from 'vitest';
import { forgottenLight, hasUnseen } from '../../src/engine/explore.ts';
import type { View } from '../../src/engine/view.ts';
import { at, beamOf, seen, viewOf } from './given.ts';

/** A beam that falls to half at 8 eighths and peaks so far from where the eye aimed. */
const peakAt = (horizontal: number, vertical: number, more: Partial<View> = {}): View => {
  const here = seen(at(horizontal, vertical), -4, { seqs: [9] });
  const beam = beamOf({ peak: at(horizontal, vertical), half: at(8, 8) });
  return viewOf({ beam, here, samples: [here], ...more });
};
const asks = (view: View) => {
  const advice = forgottenLight(view)?.advice;
  expect(hasUnseen(view)).toBe(advice !== undefined);
  return advice;
};

describe('The place as far beyond the aim as the peak is before it', () => {
  it('is looked at', () => {
    expect(asks(peakAt(20, 0))).toMatchObject({
      rule: 'beyond-aim',
      action: { kind: 'turn', axis: 'horizontal', eighths: -12 },
      because: [9],
    });
    expect(asks(peakAt(0, -20))?.action).toMatchObject({ axis: 'vertical', eighths: 12 });
  });

  it.each([
    ['2.4 half-widths away', 19.2, 0, true],
    ['less than 2.4 half-widths away', 19.15, 0, false],
    ['as far away to the other side', -19.2, 0, true],
    ['as far away along both adjusters together', 14, 14, true],
    ['not as far away along both', 13, 14, false],
  ])('is looked at, or not, where the peak is %s', (_, horizontal, vertical, expected) => {
    expect(asks(peakAt(horizontal, vertical)) !== undefined).toBe(expected);
  });

  it.each([
    ['read as near as three eighths', seen(at(-17, 3), 'dark'), false],
    ['read four eighths away', seen(at(-16), 'dark'), true],
    ['read four eighths away on the other adjuster', seen(at(-20, 4), 'dark'), true],
    ['read on the side of the peak', seen(at(20), 'dark'), true],
  ])('is looked at, or not, where it was %s', (_, sample, expected) => {
    expect(asks(peakAt(20, 0, { samples: [seen(at(20), -4), sample] })) !== undefined).toBe(expected);
  });

  it.each([
    ['at the end of the screw', { horizontal: { low: -20, high: 80 } }, {}, true],
    ['beyond the end of the screw', { horizontal: { low: -19, high: 80 } }, {}, false],
    ['beyond the end of the other screw', { vertical: { low: -80, high: -1 } }, {}, false],
    ['that of an aim of which nobody knows after a slip', {}, { restarts: 1 }, false],
  ])('is looked at, or not, where it is %s', (_, limits, more, expected) => {
    const { search } = viewOf();
    const limited = { ...search, ...more, limits: { ...search.limits, ...limits } };
    expect(asks(peakAt(20, 0, { search: limited })) !== undefined).toBe(expected);
  });

  it('is not looked at while there is no beam', () => {
    expect(asks(viewOf())).toBeUndefined();
  });
});
