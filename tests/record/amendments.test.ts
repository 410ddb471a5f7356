import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { amendments } from '../../src/log/amendments.ts';
import { series } from '../../src/log/series.ts';
import type { SearchFact } from '../../src/model/facts.ts';
import { valueReading } from '../../src/model/reading.ts';
import { searchOf } from '../../src/visit/search.ts';
import { countedOf, EMPTY, fold } from '../../src/visit/state.ts';
import { Script, SETUP } from './fixture.ts';

const scriptOf = (facts: readonly SearchFact[]): Script => {
  const s = new Script();
  s.add('server', { type: 'opened', setup: SETUP, logVersion: 1 });
  for (const fact of facts) s.add('panel', fact);
  return s;
};

const reading = (value: number, replaces?: number): SearchFact => ({
  type: 'reading',
  reading: valueReading(value),
  ...(replaces !== undefined && { replaces }),
});

test('a correction counts in the place of its target, and a later correction replaces it there', () => {
  const { entries } = scriptOf([
    reading(15),
    { type: 'move', axis: 'vertical', eighths: 2 },
    reading(50, 1),
    reading(51, 3),
  ]);
  const { takenBackBy, standIns } = amendments(entries);
  expect([...takenBackBy].sort()).toEqual([
    [1, 3],
    [3, 4],
  ]);
  expect(standIns.get(1)?.seq).toBe(4);
  const counted = series(entries).samples.filter(({ retractedBy }) => retractedBy === undefined);
  expect(counted).toMatchObject([{ seq: 4, reading: valueReading(51), position: { vertical: 0 } }]);
});

test('a correction that is taken back gives the place back to its target', () => {
  const { entries } = scriptOf([reading(15), reading(50, 1), { type: 'retract', target: 2, why: 'undo' }]);
  expect(series(entries).samples).toMatchObject([{ seq: 1, reading: valueReading(15) }]);
});

/** Any facts of the search. Their targets are earlier entries of any kind. */
const anyFacts = fc
  .array(
    fc.record({
      kind: fc.constantFrom('reading', 'move', 'correct', 'correct-move', 'retract', 'gain'),
      n: fc.nat(200),
      target: fc.nat(1000),
    }),
    { maxLength: 30 },
  )
  .map((steps) =>
    steps.map(({ kind, n, target: any }, index): SearchFact => {
      // Entry 0 opens the job, so that only entries from 1 on can be amended.
      const target = index === 0 ? undefined : 1 + (any % index);
      const move = { type: 'move', axis: n % 2 ? 'vertical' : 'horizontal', eighths: (n % 5) - 2 } as const;
      if (target === undefined || kind === 'reading') return reading(n);
      if (kind === 'correct') return reading(n, target);
      if (kind === 'correct-move') return { ...move, replaces: target };
      if (kind === 'retract') return { type: 'retract', target, why: 'undo' };
      return kind === 'gain' ? { type: 'gain', change: 'lowered' } : move;
    }),
  );

describe('what counts in the charts is what counts in the search', () => {
  test('the same readings, in the same order', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const { entries } = scriptOf(facts);
        const counted = countedOf(entries.reduce(fold, EMPTY)).filter((fact) => fact.type === 'reading');
        const shown = series(entries).samples.filter(({ retractedBy }) => retractedBy === undefined);
        expect(shown.map(({ seq, at }) => [seq, at])).toEqual(counted.map(({ seq, at }) => [seq, at]));
      }),
    );
  });

  test('the same, whether it was asked for after each entry, now and then, or only at the end', () => {
    fc.assert(
      fc.property(anyFacts, fc.infiniteStream(fc.boolean()), (facts, asked) => {
        const { entries } = scriptOf(facts);
        let state = EMPTY;
        for (const entry of entries) {
          const earlier = state;
          state = fold(state, entry);
          if (asked.next().value) countedOf(state);
          // A state before is asked again, as after an input that was refused.
          if (asked.next().value) countedOf(earlier);
        }
        expect(countedOf(state)).toEqual(countedOf(entries.reduce(fold, EMPTY)));
      }),
    );
  });

  test('the same positions and gain setting', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const { entries } = scriptOf(facts);
        const search = searchOf(entries.reduce(fold, EMPTY));
        const shown = series(entries);
        expect(shown.position).toEqual(search?.turned);
        expect(shown.gains.length - 1).toBe(search?.gain);
      }),
    );
  });
});
