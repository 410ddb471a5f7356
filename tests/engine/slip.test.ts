import { describe, expect, it } from 'vitest';
import { predict } from '../../src/engine/beam.ts';
import type { PerAxis, Sample, Turn } from '../../src/engine/sample.ts';
import { bestSlip, difference, type Slip, slipsOf } from '../../src/engine/slip.ts';
import { DECIBELS } from './crew-of-two.ts';
import { at, beamOf, seen } from './given.ts';

describe('A turn that was not made as reported (wrong way, wrong adjuster, double, half: common practice, no source)', () => {
  const SIX: Turn = { axis: 'horizontal', eighths: 6 };

  it.each<[Turn, PerAxis<number>]>([
    [{ axis: 'horizontal', eighths: -6 }, at(-12)],
    [{ axis: 'vertical', eighths: 6 }, at(-6, 6)],
    [{ axis: 'vertical', eighths: -6 }, at(-6, -6)],
    [{ axis: 'horizontal', eighths: 12 }, at(6)],
    [{ axis: 'horizontal', eighths: 3 }, at(-3)],
  ])('%j: the emitter is %j from where it seems', (turn, by) => {
    expect(slipsOf(SIX)).toContainEqual(turn);
    expect(difference(SIX, turn)).toEqual(by);
  });

  it('and no half of a turn that has none in eighths', () => {
    expect(slipsOf({ axis: 'vertical', eighths: 3 })).toHaveLength(4);
  });

  /** Light as of a Gaussian 7 eighths to half power, dB; its peak at (2, -3) as the screws really stand. */
  const light = (h: number, v: number) => -4 - (3 * ((h - 2) ** 2 + (v + 3) ** 2)) / 49;

  /** Readings after each of these turns, of which turn number `wrong` was really `made`. */
  function readings(turns: readonly Turn[], wrong: number, made: Turn | undefined): Sample[] {
    const [seems, is, count] = [at(0) as Record<Turn['axis'], number>, { ...at(0) }, { ...at(0) }];
    const all = [seen(at(0), light(0, 0))];
    turns.forEach((turn, i) => {
      const real = i === wrong && made ? made : turn;
      seems[turn.axis] += turn.eighths;
      is[real.axis] += real.eighths;
      count[turn.axis] += 1;
      const move = { seq: 10 * i + 5, turn };
      all.push(
        seen({ ...seems }, light(is.horizontal, is.vertical), {
          seqs: [10 * i + 6],
          turns: { ...count },
          move,
        }),
      );
    });
    return all;
  }

  const TURNS: Turn[] = [
    { axis: 'horizontal', eighths: 6 },
    { axis: 'horizontal', eighths: -4 },
    { axis: 'vertical', eighths: 6 },
    { axis: 'vertical', eighths: -9 },
    { axis: 'horizontal', eighths: -8 },
    { axis: 'horizontal', eighths: 8 },
    { axis: 'vertical', eighths: -7 },
  ];
  const found = (all: readonly Sample[], confirmed: number[] = []): Slip | undefined =>
    bestSlip(all, DECIBELS, beamOf(), confirmed);

  it.each<[number, Turn]>([
    [2, { axis: 'vertical', eighths: -6 }],
    [3, { axis: 'horizontal', eighths: -9 }],
    [4, { axis: 'horizontal', eighths: 8 }],
  ])('turn %i is found to be %j from the readings after it', (wrong, made) => {
    const slip = found(readings(TURNS, wrong, made));
    expect(slip).toMatchObject({ turn: made, ago: TURNS.length - wrong, move: { seq: 10 * wrong + 5 } });
    expect(slip?.beam.chi2).toBeLessThan(TURNS.length + 6);
  });

  it('is never one that was asked about and confirmed', () => {
    const all = readings(TURNS, 3, { axis: 'horizontal', eighths: -9 });
    expect(found(all, [35])?.move.seq).not.toBe(35);
  });

  it('moves the readings before it to where they were taken, and no later one', () => {
    const all = readings(TURNS, 3, { axis: 'horizontal', eighths: -9 });
    const slip = found(all);
    expect(slip?.samples[3]?.turned).toEqual(at(2 + 9, 6 - 9));
    expect(slip?.samples.slice(4)).toEqual(all.slice(4));
  });
});

describe('Hands stray by an eighth of an eighth (common practice, no source), and it adds up', () => {
  // 9 eighths from the peak the light of this beam falls by 2 * 3 / 9 dB for each eighth.
  it.each([
    [0, 0],
    [1, (2 / 3) * (1 / 8)],
    [4, (2 / 3) * (1 / 8) * 2],
  ])('after %i turns a flank is foretold within %f dB', (turns, sd) => {
    const place = seen(at(9), -7, { turns: at(turns) });
    expect(predict(beamOf(), place)?.sd).toBeCloseTo(sd, 6);
  });

  it('at the peak nothing is lost by it', () => {
    expect(predict(beamOf(), seen(at(0), -4, { turns: at(9) }))?.sd).toBeCloseTo(0, 6);
  });
});
