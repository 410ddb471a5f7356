import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/model/facts.ts';
import { NO_SIGNAL, valueReading } from '../../src/model/reading.ts';
import { type Attempt, attemptsOf, panelShows } from '../../src/visit/attempts.ts';
import { accepted, commissionAfter, covered, panel, reads, type Step, turned, uncovered } from './record.ts';

const half = covered('partial');
const full = covered('blocked');
const dark = reads(NO_SIGNAL);
const light = reads(valueReading(70));

/** One fact a second; the first is entry 1. */
const steps = (...facts: Fact[]): Step[] => facts.map((fact, i): Step => ['', i + 1, fact]);

/** "alarm of 1: covered 2, shown 3": which entries an attempt is made of. */
const inWords = ({ proof, accept, covered, ...rest }: Attempt): string => {
  const parts = (['reading', 'shown', 'cleared', 'restored'] as const).flatMap((part) =>
    rest[part] ? [`${part} ${rest[part].seq}`] : [],
  );
  return [`${proof} of ${accept}: covered ${covered.seq}`, ...parts].join(', ');
};

describe('a go at a test', () => {
  it.each<[string, Fact[], string[]]>([
    ['begins with a cover under an acceptance', [accepted, half], ['alarm of 1: covered 2']],
    ['is one at the fault where all is covered', [accepted, full], ['fault of 1: covered 2']],
    ['is none before an acceptance', [half, panel('alarm'), accepted, uncovered], []],
    ['is none after a turn', [accepted, turned, half], []],
    ['is none after a change of the gain', [accepted, { type: 'gain', change: 'raised' }, half], []],
    ['is none after an aim by eye', [accepted, { type: 're-aimed' }, half], []],
    ['ends with a turn', [accepted, half, turned, panel('alarm'), uncovered], ['alarm of 1: covered 2']],
    [
      'ends with the gain',
      [accepted, half, { type: 'gain', change: 'full' }, uncovered],
      ['alarm of 1: covered 2'],
    ],
    ['ends with an aim by eye', [accepted, half, { type: 're-aimed' }, uncovered], ['alarm of 1: covered 2']],
    ['ends with a new acceptance', [accepted, half, accepted, panel('alarm')], ['alarm of 1: covered 2']],
    ['is of the newest acceptance', [accepted, accepted, half], ['alarm of 2: covered 3']],
    [
      'holds what was read, shown, cleared and restored',
      [accepted, half, light, panel('alarm'), uncovered, panel('normal')],
      ['alarm of 1: covered 2, reading 3, shown 4, cleared 5, restored 6'],
    ],
    [
      'holds the last reading under the cover',
      [accepted, half, dark, light, uncovered],
      ['alarm of 1: covered 2, reading 4, cleared 5'],
    ],
    [
      'holds no reading from after it',
      [accepted, half, light, uncovered, dark],
      ['alarm of 1: covered 2, reading 3, cleared 4'],
    ],
    [
      'holds the first thing shown',
      [accepted, half, panel('fault'), panel('alarm')],
      ['alarm of 1: covered 2, shown 3'],
    ],
    [
      'takes no normal for something shown',
      [accepted, half, panel('normal'), panel('alarm')],
      ['alarm of 1: covered 2, shown 4'],
    ],
    [
      'takes nothing shown after it for shown',
      [accepted, half, uncovered, panel('alarm')],
      ['alarm of 1: covered 2, cleared 3'],
    ],
    [
      'holds the first normal after it',
      [accepted, half, uncovered, panel('normal'), panel('normal')],
      ['alarm of 1: covered 2, cleared 3, restored 4'],
    ],
    [
      'is restored by a normal that comes late',
      [accepted, half, uncovered, panel('fault'), panel('normal')],
      ['alarm of 1: covered 2, cleared 3, restored 5'],
    ],
    ['is cleared once', [accepted, half, uncovered, uncovered], ['alarm of 1: covered 2, cleared 3']],
    ['is nothing without a cover', [accepted, uncovered, light, panel('alarm'), panel('normal')], []],
    [
      'ends where one cover is put in the place of another',
      [accepted, half, full, panel('fault'), uncovered],
      ['alarm of 1: covered 2, cleared 3', 'fault of 1: covered 3, shown 4, cleared 5'],
    ],
    [
      'that was cleared is left as it was by the next cover',
      [accepted, half, uncovered, full],
      ['alarm of 1: covered 2, cleared 3', 'fault of 1: covered 4'],
    ],
  ])('%s', (_, facts, attempts) => {
    expect(attemptsOf(commissionAfter(steps(...facts))).map(inWords)).toEqual(attempts);
  });

  it('counts from what was accepted where nobody read the meter since', () => {
    const [attempt] = attemptsOf(commissionAfter(steps(accepted, half)));
    expect(attempt?.clearReading).toEqual(valueReading(140));
    expect(attempt).not.toHaveProperty('before');
  });
});

describe('the readings with the path clear, before a cover and after it', () => {
  const clear = (value: number) => reads(valueReading(value));
  /** One fact every ten seconds, so that each has settled. */
  const slowly = (...facts: Fact[]): Step[] => facts.map((fact, i): Step => ['', (i + 1) * 10, fact]);
  const checked: Fact = { type: 'checked', instruction: 0 };

  it.each<[string, Fact[], string[]]>([
    ['are none where nobody read', [accepted, half, light, uncovered], ['- 140 -']],
    [
      'are the last before, with those that agree with it, and the first after',
      [accepted, clear(139), clear(138), half, light, uncovered, clear(137), clear(120)],
      ['3 138.5 7'],
    ],
    ['are not from before the acceptance', [clear(150), accepted, half], ['- 140 -']],
    [
      'serve two tests where they lie between their covers',
      [accepted, clear(139), half, uncovered, clear(138), full, uncovered, clear(137)],
      ['2 139 5', '5 138 8'],
    ],
    [
      'are not from before the cover before',
      [accepted, clear(139), half, uncovered, full, uncovered, clear(138)],
      ['2 139 - closed', '- 140 7'],
    ],
    [
      'are from before both covers where one was put on the other',
      [accepted, clear(139), half, full, uncovered, clear(138)],
      ['2 139 - closed', '2 139 6'],
    ],
    [
      'are not from after something was looked into',
      [accepted, clear(139), half, uncovered, checked, clear(138)],
      ['2 139 - closed'],
    ],
    [
      'are not from after a turn',
      [accepted, clear(139), half, uncovered, turned, clear(90)],
      ['2 139 - closed'],
    ],
    [
      'are not from after a new acceptance',
      [accepted, clear(139), half, uncovered, accepted, clear(138)],
      ['2 139 - closed'],
    ],
    [
      'are left as they are by what comes later',
      [accepted, clear(139), half, uncovered, clear(138), checked, clear(90)],
      ['2 139 5'],
    ],
  ])('%s', (_, facts, expected) => {
    const found = attemptsOf(commissionAfter(slowly(...facts))).map(
      ({ before, clearReading, after, closed }) => {
        const counted = clearReading.kind === 'value' ? clearReading.value : clearReading.kind;
        return `${before?.seq ?? '-'} ${counted} ${after?.seq ?? '-'}${closed ? ' closed' : ''}`;
      },
    );
    expect(found).toEqual(expected);
  });
});

describe('the panel shows', () => {
  it.each<[string, Fact[], string | undefined]>([
    ['nothing known before an acceptance', [panel('normal')], undefined],
    ['nothing known since the acceptance, whatever it showed before', [panel('normal'), accepted], undefined],
    ['what was said last since the acceptance', [accepted, panel('alarm'), panel('normal'), light], 'normal'],
    ['what was said right after the acceptance', [accepted, panel('fault')], 'fault'],
    ['nothing known of an alignment that no longer stands', [accepted, panel('normal'), turned], undefined],
  ])('%s', (_, facts, shows) => {
    expect(panelShows(commissionAfter(steps(...facts)))).toBe(shows);
  });
});
