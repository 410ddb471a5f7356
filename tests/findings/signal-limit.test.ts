import { describe, expect, it } from 'vitest';
import { reviewSite } from '../../src/findings/across-visits.ts';
import type { PairOutcome, VisitOutcome } from '../../src/findings/outcome.ts';
import { signalHistory } from '../../src/findings/signal-history.ts';
import type { MeterProfile } from '../../src/model/profile.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { siteFindingText } from '../../src/phrases/findings.ts';

const [PERCENT] = NEUTRAL_METERS as [MeterProfile];
const STEPPED: MeterProfile = { ...PERCENT, gain: 'stepped', gainDbPerStep: 0.5 };
const DAY = 86_400_000;
/** A reading that many decibels below 60 percent, on a linear meter from 0: 60 / 10^(dB / 10). */
const down = (db: number) => 60 / 10 ** (db / 10);

interface Left {
  day: number;
  value: number;
  /** Undefined: the setting was left as it was. */
  gain?: number | 'not named' | undefined;
  dueDay?: number;
  meter?: MeterProfile;
}

function visit({ day, value, gain, dueDay, meter = STEPPED }: Left): VisitOutcome {
  return {
    job: `day-${day}`,
    accepted: { seq: 10, reading: { kind: 'value', value } },
    left: { seq: 30, at: day * DAY, value },
    due: dueDay === undefined ? undefined : dueDay * DAY,
    signed: true,
    commission: {
      setup: { meter, adjusters: NEUTRAL_ADJUSTERS },
      counted:
        gain === undefined
          ? []
          : [{ type: 'gain', seq: 5, change: 'set', to: gain === 'not named' ? undefined : gain }],
    },
  };
}

type Limits = Pick<PairOutcome['plan'], 'leastSignal' | 'mostLoss'>;
const pair = (limits: Limits, ...visits: Left[]): PairOutcome[] => [
  { pair: 'B2', pathLength: 60, plan: { id: 'B2', name: 'Hall', ...limits }, visits: visits.map(visit) },
];
/** Without `weaker-since`, which looks at the last two visits alone. */
const found = (pairs: PairOutcome[]) => reviewSite(pairs).filter(({ id }) => id.startsWith('signal-'));
const ids = (pairs: PairOutcome[]) => found(pairs).map(({ id, severity }) => `${id} ${severity}`);

describe('the signal that the last visit left, against the limits of the plan', () => {
  it.each<[string, Limits, Left[], string[]]>([
    ['at the least signal', { leastSignal: 40 }, [{ day: 0, value: 40 }], []],
    ['just under it', { leastSignal: 40 }, [{ day: 0, value: 39.999 }], ['signal-limit serious']],
    [
      'under it once, and cleaned since',
      { leastSignal: 40 },
      [
        { day: 0, value: 39 },
        { day: 9, value: 41 },
      ],
      [],
    ],
    [
      'just the most loss',
      { mostLoss: 3 },
      [
        { day: 0, value: 60 },
        { day: 9, value: down(3) },
      ],
      [],
    ],
    [
      'a thousandth of a decibel more',
      { mostLoss: 3 },
      [
        { day: 0, value: 60 },
        { day: 9, value: down(3.001) },
      ],
      ['signal-limit serious'],
    ],
    [
      'the same reading behind 3.5 dB more gain',
      { mostLoss: 3 },
      [
        { day: 0, value: 60, gain: 20 },
        { day: 9, value: 60, gain: 27 },
      ],
      ['signal-limit serious'],
    ],
    [
      'a weaker reading behind as much less gain',
      { mostLoss: 3 },
      [
        { day: 0, value: 60, gain: 20 },
        { day: 9, value: down(4), gain: 12 },
      ],
      [],
    ],
    [
      'a loss behind a gain that nobody named',
      { mostLoss: 3 },
      [
        { day: 0, value: 60, gain: 20 },
        { day: 9, value: down(4), gain: 'not named' },
      ],
      [],
    ],
    [
      'a loss behind a gain that nobody named, and nobody changed since',
      { mostLoss: 3 },
      [
        { day: 0, value: 60, gain: 'not named' },
        { day: 9, value: down(4) },
      ],
      ['signal-limit serious'],
    ],
    ['no limit', {}, [{ day: 0, value: 1 }], []],
    [
      'a loss that another meter does not show',
      { mostLoss: 3 },
      [
        { day: 0, value: 60 },
        { day: 9, value: 6, meter: { ...STEPPED, name: 'Another' } },
      ],
      [],
    ],
    [
      'the least signal on a meter whose law nobody knows',
      { leastSignal: 40 },
      [{ day: 0, value: 39, meter: { ...STEPPED, law: 'unknown' } }],
      ['signal-limit serious'],
    ],
  ])('%s', (_, limits, visits, expected) => {
    expect(ids(pair(limits, ...visits))).toEqual(expected);
  });

  it('says nothing where a later visit left nothing proven', () => {
    const [one] = pair({ leastSignal: 40 }, { day: 0, value: 39 }, { day: 9, value: 39 });
    const visits = (one as PairOutcome).visits.map((each, i) =>
      i === 1 ? { ...each, left: undefined } : each,
    );
    expect(ids([{ ...(one as PairOutcome), visits }])).toEqual([]);
  });

  it('says by how much, and never a figure that lies on the other side of its limit', () => {
    const [both] = found(
      pair({ leastSignal: 40, mostLoss: 3 }, { day: 0, value: 60 }, { day: 9, value: down(3.001) }),
    );
    expect(both && siteFindingText(both)).toBe(
      `Pair B2 was left beyond a limit of its plan: it shows ${down(3.001)}, and the least is 40; it lost 3.001 dB since the first visit, and the most is 3 dB. Clean it, or align it anew.`,
    );
    expect(both?.entries).toEqual([{ job: 'day-9', seq: 30 }]);
  });
});

describe('the rate at which the signal falls', () => {
  /** A decibel every hundred days, so that 3 dB are reached on day 300. */
  const falling = (dueDay: number | undefined, ...days: number[]): Left[] =>
    days.map((day, i) => ({
      day,
      value: down(day / 100),
      ...(i === days.length - 1 && dueDay !== undefined && { dueDay }),
    }));

  it.each<[string, Limits, Left[], string[]]>([
    [
      'the limit on the day the next visit is due',
      { mostLoss: 3 },
      falling(300, 0, 100, 200),
      ['signal-falling question'],
    ],
    ['a day after it', { mostLoss: 3 }, falling(299, 0, 100, 200), []],
    [
      'the least signal likewise',
      { leastSignal: down(3) },
      falling(300, 0, 100, 200),
      ['signal-falling question'],
    ],
    ['after it, too', { leastSignal: down(3) }, falling(299, 0, 100, 200), []],
    [
      'no day written down: as long as between the last two',
      { mostLoss: 3 },
      falling(undefined, 0, 100, 200),
      ['signal-falling question'],
    ],
    [
      'no day written down, visits nearer to each other',
      { mostLoss: 3 },
      falling(undefined, 0, 101, 200),
      [],
    ],
    ['two visits are no rate', { mostLoss: 3 }, falling(300, 0, 200), []],
    ['due further ahead than the visits reach back', { mostLoss: 3 }, falling(900, 100, 150, 190), []],
    [
      'rising',
      { mostLoss: 3 },
      [
        { day: 0, value: 40 },
        { day: 100, value: 50 },
        { day: 200, value: 60 },
      ],
      [],
    ],
    [
      'steady at the limit',
      { leastSignal: 60 },
      [
        { day: 0, value: 60 },
        { day: 100, value: 60 },
        { day: 200, value: 60 },
      ],
      [],
    ],
    [
      'all on one day',
      { mostLoss: 3 },
      [
        { day: 5, value: 60 },
        { day: 5, value: 50 },
        { day: 5, value: 40 },
      ],
      [],
    ],
    ['no limit in the plan', {}, falling(300, 0, 100, 200), []],
  ])('%s', (_, limits, visits, expected) => {
    expect(ids(pair(limits, ...visits))).toEqual(expected);
  });

  it('is told with the time that is left', () => {
    const [finding] = found(pair({ mostLoss: 3 }, ...falling(300, 0, 100, 200)));
    expect(finding && siteFindingText(finding)).toBe(
      'The signal of pair B2 falls: over 3 visits by 3.7 dB a year. At this rate it reaches its limit in about 100 days, before the next visit.',
    );
    expect(finding?.entries).toHaveLength(3);
  });

  it('holds the least signal against readings at the gain of the last visit alone', () => {
    const [zero, ...rest] = falling(300, 0, 100, 150, 200);
    // What was read behind the first gain says nothing: without it the rate is the same, with it it would be none.
    const visits = [
      { ...(zero as Left), value: 10, gain: 10 },
      { ...(rest[0] as Left), gain: 20 },
      ...rest.slice(1),
    ];
    expect(signalHistory(pair({}, ...visits)[0]?.visits ?? []).map(({ setting }) => setting)).toEqual([
      '10',
      '20',
      '20',
      '20',
    ]);
    expect(ids(pair({ leastSignal: down(3) }, ...visits))).toEqual(['signal-falling question']);
    expect(ids(pair({ leastSignal: down(3) }, ...visits.slice(0, 3)))).toEqual([]);
  });
});
