import { describe, expect, it } from 'vitest';
import { GUIDANCES, type Guidance } from '../../src/model/guidance.ts';
import type { PairPlan } from '../../src/model/pair-plan.ts';
import { heldOnSite, heldOnSiteText, heldText, NO_GUIDANCE } from '../../src/phrases/held.ts';
import { heldPlan, heldSetup } from '../../src/plan/held.ts';
import { SETUP } from '../findings/site.ts';

const [BS, NFPA] = GUIDANCES as [Guidance, Guidance];
const BARE: PairPlan = { id: 'B2', name: 'B2' };
const SPACED: PairPlan = { ...BARE, spacing: 14 };
const FULL: PairPlan = {
  ...SPACED,
  wallDistance: 7,
  emitterHeight: 9.4,
  receiverHeight: 9.4,
  ceilingHeight: 9.9,
};

describe('what was held against a guidance', () => {
  it('is what the plan and the guidance both have a value for, and nothing else', () => {
    const { ran = [], not = [] } = heldPlan(FULL, BS) ?? {};
    expect(not).toEqual([]);
    expect(ran).toHaveLength(8);
    expect(heldPlan(FULL, NFPA)?.ran).toEqual([
      { id: 'reach', side: 'most' },
      { id: 'wall-distance', side: 'most' },
    ]);
    expect(new Set(heldPlan(FULL, NFPA)?.not.map(({ why }) => why))).toEqual(new Set(['no-limit']));
    expect(heldPlan(SPACED, BS)?.ran).toEqual([{ id: 'reach', side: 'most' }]);
    expect(heldPlan(BARE, BS)?.ran).toEqual([]);
    expect(heldPlan(FULL, undefined)).toBeUndefined();
  });

  it('is told with what was not checked, and why', () => {
    expect(heldText(heldPlan(SPACED, NFPA))).toBe(
      'Held against NFPA 72 style (NFPA 72 annex, smooth ceiling, from memory): reach to each side. ' +
        'Not checked, the guidance has no value: how near to a wall, height of the ceiling, ' +
        'how near the emitter is to the ceiling, how far the emitter is below it, ' +
        'how near the receiver is to the ceiling, how far the receiver is below it. ' +
        'Not checked, the plan has no value: how far from a wall.',
    );
    expect(heldText(heldPlan(BARE, BS))).toMatch(/^Nothing was held against BS 5839-1 style .*from memory/);
    expect(heldText(undefined)).toBe(NO_GUIDANCE);
  });

  it('is, of a visit, what its own record names', () => {
    const setup = { ...SETUP, plan: FULL };
    expect(heldSetup(setup)).toBeUndefined();
    expect(heldSetup({ ...setup, guidance: BS })?.ran).toHaveLength(8);
  });

  it('is counted over the pairs of a site, with the records that name no guidance', () => {
    const all = [heldPlan(FULL, BS), heldPlan(SPACED, BS), heldPlan(BARE, BS), undefined];
    const { text, not } = heldOnSite(BS, all);
    expect(text).toBe('2 of 4 pairs held against BS 5839-1 style (BS 5839-1, from memory).');
    expect(not).toContain('reach to each side: the plan has no value, 1 pair');
    expect(not).toContain('how far from a wall: the plan has no value, 2 pairs');
    expect(not.at(-1)).toBe('everything: the record does not name the guidance, 1 pair');
    expect(heldOnSite(BS, [heldPlan(FULL, BS)])).toMatchObject({ not: [] });
    expect(heldOnSite(BS, [heldPlan(BARE, BS)]).text).toMatch(/^No pair was held against BS 5839-1 style/);
    expect(heldOnSiteText(heldOnSite(undefined, [undefined]))).toContain(NO_GUIDANCE);
  });
});
