import { describe, expect, it } from 'vitest';
import { memoryStorage } from '../../client/browser/storage.ts';
import { adjusterDraft, meterDraft, newDraft, parseDraft } from '../../client/profiles/profile-draft.ts';
import { forgetMeter, ownMeters, rememberMeter } from '../../client/profiles/saved-profiles.ts';
import { type MeterProfile, NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';

const filled = () => ({ ...newDraft(), site: 'Tamsin Quay, hall 3', pair: 'B2' });

function errorsOf(draft: ReturnType<typeof filled>): Readonly<Record<string, string>> {
  const parsed = parseDraft(draft);
  return parsed.kind === 'wrong' ? parsed.errors : {};
}

describe('the start form', () => {
  it.each(NEUTRAL_METERS.map((m) => [m.name, m] as const))(
    'opens a job with the neutral meter %s as it ships',
    (_, meter) => {
      const parsed = parseDraft({ ...filled(), meter: meterDraft(meter) });
      expect(parsed).toMatchObject({ kind: 'ok', setup: { meter, adjusters: NEUTRAL_ADJUSTERS } });
    },
  );

  it('takes a path length, and also works without one', () => {
    expect(parseDraft({ ...filled(), pathLength: '62,5' })).toMatchObject({ setup: { pathLength: 62.5 } });
    expect(parseDraft(filled())).not.toHaveProperty('setup.pathLength');
  });

  it('says for each empty field what to enter', () => {
    expect(errorsOf({ ...filled(), site: '  ', pair: '' })).toEqual({
      site: expect.stringMatching(/Name the site/),
      pair: expect.stringMatching(/Name the beam pair/),
    });
  });

  it('says beside the field that its text is not a number', () => {
    const draft = filled();
    expect(
      errorsOf({ ...draft, pathLength: 'far', meter: { ...draft.meter, bandLow: '', settle: 'soon' } }),
    ).toEqual({
      pathLength: expect.stringMatching(/^Enter a length, such as 62.5/),
      'meter.bandLow': 'Enter a number.',
      'meter.settle': 'Enter a number.',
    });
  });

  it('takes the path in feet, and says in the setup what the job reads', () => {
    const draft = { ...filled(), units: { length: 'ft', loss: 'percent' } as const };
    expect(parseDraft({ ...draft, pathLength: '200' })).toMatchObject({
      setup: { pathLength: 60.96, units: { length: 'ft', loss: 'percent' } },
    });
    expect(parseDraft({ ...draft, pathLength: '61 m' })).toMatchObject({ setup: { pathLength: 61 } });
    expect(errorsOf({ ...draft, pathLength: '1000' })).toEqual({ pathLength: 'From 3.29 to 984.25 ft.' });
  });

  it('explains a band with swapped limits, with the names on the form', () => {
    const draft = filled();
    const errors = errorsOf({ ...draft, meter: { ...draft.meter, bandLow: '70', bandHigh: '40' } });
    expect(errors['meter.bandHigh']).toBe('"Accept up to" (40) must lie above "Accept from" (70)');
  });

  it('asks for the decibels of a unit only on a logarithmic meter', () => {
    const draft = filled();
    const logarithmic = { ...draft.meter, law: 'logarithmic', dbPerUnit: '' };
    expect(errorsOf({ ...draft, meter: logarithmic })['meter.dbPerUnit']).toMatch(/Decibels in one unit/);
    expect(parseDraft({ ...draft, meter: { ...logarithmic, dbPerUnit: '1' } }).kind).toBe('ok');
  });

  it('shows adjusters in turns and keeps them in eighths', () => {
    const draft = {
      ...filled(),
      adjusters: { ...adjusterDraft(NEUTRAL_ADJUSTERS), maxStep: '0.75', travel: '4' },
    };
    expect(parseDraft(draft)).toMatchObject({ setup: { adjusters: { maxStep: 6, travel: 32 } } });
    expect(errorsOf({ ...draft, adjusters: { ...draft.adjusters, maxStep: '3' } })).toEqual({
      'adjusters.maxStep': 'From 0.25 to 1.5 turns, in eighths of a turn.',
    });
  });
});

describe("the user's own meters", () => {
  const neutral = NEUTRAL_METERS[0] as MeterProfile;
  const own = { ...neutral, name: 'Hall meter', bandLow: 45 };

  it('are remembered once they are used, newest first, each name once', () => {
    const storage = memoryStorage();
    rememberMeter(storage, own);
    rememberMeter(storage, { ...own, name: 'Other' });
    rememberMeter(storage, { ...own, bandLow: 50 });
    expect(ownMeters(storage).map((m) => [m.name, m.bandLow])).toEqual([
      ['Hall meter', 50],
      ['Other', 45],
    ]);
    forgetMeter(storage, 'Hall meter');
    expect(ownMeters(storage).map((m) => m.name)).toEqual(['Other']);
  });

  it('do not repeat a neutral meter that was used unchanged', () => {
    const storage = memoryStorage();
    rememberMeter(storage, neutral);
    expect(ownMeters(storage)).toEqual([]);
  });

  it('are still read when one of them is no longer valid', () => {
    const storage = memoryStorage();
    storage.write('meters', [{ name: 'from an older version' }, own]);
    expect(ownMeters(storage)).toEqual([own]);
  });
});
