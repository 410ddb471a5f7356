import { describe, expect, it } from 'vitest';
import { LONG_GAP_MS } from '../../src/model/finding.ts';
import { ladderTime } from '../../src/record/ladder-time.ts';

const MINUTE = 60_000;

/** Who said something, and after how many minutes. */
const log = (...said: [actor: 'panel' | 'emitter' | 'server', minutes: number][]) =>
  said.map(([actor, minutes], seq) => ({ seq, actor, at: minutes * MINUTE }));

describe('time on the ladder', () => {
  it.each([
    ['nobody at the emitter', log(['panel', 0], ['panel', 5]), undefined, undefined],
    ['one word there', log(['panel', 0], ['emitter', 5]), undefined, 0],
    [
      'from its first word to its last',
      log(['panel', 0], ['emitter', 3], ['panel', 6], ['emitter', 9]),
      undefined,
      6,
    ],
    [
      'what the panel says after it does not count',
      log(['emitter', 0], ['emitter', 4], ['panel', 9]),
      undefined,
      4,
    ],
    [
      'nothing after the acceptance counts',
      log(['emitter', 0], ['emitter', 4], ['panel', 5], ['emitter', 9]),
      2,
      4,
    ],
    ['a silence of ten minutes is still work', log(['emitter', 0], ['emitter', 10]), undefined, 10],
    [
      'one that is longer is a break',
      log(['emitter', 0], ['emitter', 10.001], ['emitter', 12.001]),
      undefined,
      2,
    ],
    [
      'a clock that was set back takes nothing away',
      log(['emitter', 60], ['emitter', 0], ['emitter', 3]),
      undefined,
      3,
    ],
  ] as const)('%s', (_name, entries, accepted, minutes) => {
    const ms = ladderTime(entries, accepted);
    if (minutes === undefined) expect(ms).toBeUndefined();
    else expect((ms ?? Number.NaN) / MINUTE).toBeCloseTo(minutes);
  });

  it('the break is the one that a long gap is, for the findings too', () => {
    expect(LONG_GAP_MS).toBe(10 * MINUTE);
  });
});
