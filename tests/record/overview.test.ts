import { describe, expect, test } from 'vitest';
import { valueReading } from '../../src/model/reading.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { accepted, alignment, overridden, type Script } from './fixture.ts';

const overviewOf = (script: Pick<Script, 'entries'>) => new VisitRecord(script).overview;

describe('an overview', () => {
  test('of an accepted alignment says so, with its reading', () => {
    const script = accepted();
    expect(overviewOf(script)).toMatchObject({
      alignment: { kind: 'accepted', reading: valueReading(142), seq: script.head.count - 1, changedBy: [] },
    });
  });

  test('counts what is valid apart from what was taken back', () => {
    const { entries } = accepted();
    const overview = overviewOf({ entries });
    const made = (type: string) => entries.filter(({ fact }) => fact.type === type).length;
    expect(overview.moves).toEqual({ counted: made('move') - 1, takenBack: 1 });
    expect(overview.readings).toEqual({ counted: made('reading') - 1, takenBack: 1 });
    expect(overview.gainChanges).toEqual({ counted: 2, takenBack: 0 });
  });

  test('says where to look', () => {
    const { entries } = accepted();
    const overview = overviewOf({ entries });
    const [correction, undo, takeover] = [overview.corrections, overview.undone, overview.takeovers].map(
      (seqs) => seqs.map((seq) => entries[seq]?.fact),
    );
    expect(correction).toMatchObject([{ type: 'reading', replaces: expect.any(Number) }]);
    expect(undo).toMatchObject([{ type: 'retract', why: 'undo' }]);
    expect(takeover).toMatchObject([{ type: 'seated', takeover: true }]);
  });

  test('of an override has its reason, and every touch after it', () => {
    const { entries } = overridden();
    const { alignment } = overviewOf({ entries });
    expect(alignment).toMatchObject({
      kind: 'accepted',
      override: { reason: expect.stringContaining('clear the aisle') },
      changedBy: [entries.at(-1)?.seq],
    });
  });

  test('of an acceptance taken back is no acceptance', () => {
    const script = accepted();
    script.add('panel', { type: 'retract', target: script.head.count - 1, why: 'undo' });
    expect(overviewOf(script).alignment).toEqual({ kind: 'aligning' });
  });

  test('shows a stopped job and a paused job differently', () => {
    const script = alignment();
    script.add('panel', { type: 'pause' });
    expect(overviewOf(script).alignment).toEqual({ kind: 'paused' });
    script.add('panel', { type: 'stopped' });
    expect(overviewOf(script).alignment).toEqual({ kind: 'stopped' });
  });

  test('of no entries is empty', () => {
    expect(overviewOf({ entries: [] }).alignment).toEqual({ kind: 'empty' });
  });
});
