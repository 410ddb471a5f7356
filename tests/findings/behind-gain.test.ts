import { describe, expect, it } from 'vitest';
import { reviewSite } from '../../src/findings/across-visits.ts';
import type { PairOutcome, VisitOutcome } from '../../src/findings/outcome.ts';
import type { MeterProfile } from '../../src/model/profile.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { siteFindingText } from '../../src/phrases/findings.ts';

const [PERCENT] = NEUTRAL_METERS as [MeterProfile];
/** Half a decibel a step, as a maker might state it. */
const STEPPED: MeterProfile = { ...PERCENT, gain: 'stepped', gainDbPerStep: 0.5 };
const { gainDbPerStep: _, ...UNSTATED } = STEPPED;

type Gain = number | 'full' | undefined;

function visit(job: string, value: number, gain: Gain, meter: MeterProfile = STEPPED): VisitOutcome {
  const change = gain === 'full' ? 'full' : 'set';
  const changed = { type: 'gain', seq: 5, change, to: gain === 'full' ? undefined : gain };
  // A change after the acceptance is not the gain that it was accepted at.
  const later = { type: 'gain', seq: 20, change: 'set', to: 1 };
  const counted = gain === undefined ? [later] : [changed, later];
  const accepted = { seq: 10, reading: { kind: 'value', value } } as const;
  return {
    job,
    accepted,
    signed: false,
    commission: { setup: { meter, adjusters: NEUTRAL_ADJUSTERS }, counted },
  };
}

const site = (...pairs: VisitOutcome[][]): PairOutcome[] =>
  pairs.map((visits, index) => ({
    pair: `P${index + 1}`,
    pathLength: 60,
    plan: { id: `P${index + 1}`, name: `Pair ${index + 1}` },
    visits,
  }));
const ids = (pairs: PairOutcome[]) => reviewSite(pairs).map(({ id, pair }) => `${id} ${pair}`);

describe('signal and gain together, against the neighbours', () => {
  /** The third pair against two at 55 percent and step 20. Linear meter: 10 log10(55 / reading). */
  it.each<[string, number, Gain, string[]]>([
    ['the same', 55, 20, []],
    ['the same reading behind 5 dB more gain', 55, 30, ['weak-neighbour P3']],
    ['the same reading behind exactly 1 dB more', 55, 22, ['weak-neighbour P3']],
    ['the same reading behind half a decibel more', 55, 21, []],
    ['a weaker reading behind as much less gain', 55 / 10 ** 0.2, 16, []],
    ['a reading 0.6 dB weaker behind half a decibel more', 55 / 10 ** 0.06, 21, ['weak-neighbour P3']],
    ['a reading 2 dB weaker at a setting nobody named', 55 / 10 ** 0.2, undefined, ['weak-neighbour P3']],
    ['the same reading at a setting nobody named', 55, undefined, []],
  ])('%s', (_, value, gain, found) => {
    expect(ids(site([visit('a', 55, 20)], [visit('b', 55, 20)], [visit('c', value, gain)]))).toEqual(found);
  });

  it('is not compared where settings differ and nobody said what a step is', () => {
    const of = (job: string, value: number, gain: Gain) => [visit(job, value, gain, UNSTATED)];
    expect(ids(site(of('a', 55, 20), of('b', 55, 20), of('c', 30, 30)))).toEqual([]);
    expect(ids(site(of('a', 55, 20), of('b', 55, 20), of('c', 30, 20)))).toEqual(['weak-neighbour P3']);
  });

  it('says how much gain hides it, or that the gains are not known', () => {
    const text = (gain: Gain, value: number) =>
      reviewSite(site([visit('a', 55, 20)], [visit('b', 55, 20)], [visit('c', value, gain)])).map((found) =>
        siteFindingText(found),
      );
    expect(text(30, 55)).toEqual([
      'Pair P3 is 5.0 dB weaker than others of its length (55 against 55). Its gain is 5.0 dB higher.',
    ]);
    expect(text(undefined, 30)[0]).toContain('The gains are not known: only the readings are compared.');
  });
});

describe('signal and gain together, against the visit before', () => {
  it.each<[string, VisitOutcome, VisitOutcome, string[]]>([
    ['3 dB weaker behind 3 dB more gain', visit('a', 55, 20), visit('b', 55, 26), ['weaker-since P1']],
    ['just 1 dB', visit('a', 55, 20), visit('b', 55, 22), ['weaker-since P1']],
    ['half a decibel', visit('a', 55, 20), visit('b', 55, 21), []],
    ['3 dB stronger', visit('a', 55, 26), visit('b', 55, 20), []],
    [
      'half the reading at full gain both times',
      visit('a', 55, 'full'),
      visit('b', 28, 'full'),
      ['weaker-since P1'],
    ],
    ['half the reading at settings nobody named', visit('a', 55, undefined), visit('b', 28, undefined), []],
    ['half the reading, once at full', visit('a', 55, 20), visit('b', 28, 'full'), []],
    ['on another meter', visit('a', 55, 20), visit('b', 55, 30, { ...STEPPED, name: 'Another' }), []],
    ['with nothing said of the steps', visit('a', 55, 20, UNSTATED), visit('b', 40, 30, UNSTATED), []],
    [
      'the same setting, nothing said of the steps',
      visit('a', 55, 20, UNSTATED),
      visit('b', 40, 20, UNSTATED),
      ['weaker-since P1'],
    ],
  ])('%s', (_, before, after, found) => {
    expect(ids(site([before, after]))).toEqual(found);
  });

  it('tells how much weaker, and how much more gain', () => {
    const [found] = reviewSite(site([visit('a', 55, 20), visit('b', 55, 26)]));
    expect(found?.figures).toEqual({ weaker: 3, moreGain: 3, reading: 55, before: 55 });
    expect(found?.entries).toEqual([
      { job: 'a', seq: 10 },
      { job: 'b', seq: 10 },
    ]);
  });
});
