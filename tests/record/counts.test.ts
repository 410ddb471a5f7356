import { describe, expect, test } from 'vitest';
import { valueReading } from '../../src/model/reading.ts';
import { summarize } from '../../src/record/counts.ts';
import { accepted, alignment, overridden, SETUP } from './fixture.ts';

describe('a summary', () => {
  test('of an accepted alignment says so, with its reading', () => {
    const script = accepted();
    expect(summarize(script.entries)).toMatchObject({
      setup: SETUP,
      status: { kind: 'accepted', reading: valueReading(142), seq: script.head.count - 1, changedBy: [] },
      reading: { reading: valueReading(142) },
    });
  });

  test('counts what stands apart from what was taken back', () => {
    const { entries } = accepted();
    const summary = summarize(entries);
    const made = (type: string) => entries.filter(({ fact }) => fact.type === type).length;
    expect(summary.moves).toEqual({ counted: made('move') - 1, takenBack: 1 });
    expect(summary.readings).toEqual({ counted: made('reading') - 1, takenBack: 1 });
    expect(summary.gainChanges).toEqual({ counted: 2, takenBack: 0 });
  });

  test('says where to look', () => {
    const { entries } = accepted();
    const summary = summarize(entries);
    const [correction, undo, takeover] = [summary.corrections, summary.undone, summary.takeovers].map(
      (seqs) => seqs.map((seq) => entries[seq]?.fact),
    );
    expect(correction).toMatchObject([{ type: 'reading', replaces: expect.any(Number) }]);
    expect(undo).toMatchObject([{ type: 'retract', why: 'undo' }]);
    expect(takeover).toMatchObject([{ type: 'seated', takeover: true }]);
  });

  test('of an override keeps its reason, and every touch after it', () => {
    const { entries } = overridden();
    const { status } = summarize(entries);
    expect(status).toMatchObject({
      kind: 'accepted',
      override: { reason: expect.stringContaining('clear the aisle') },
      changedBy: [entries.at(-1)?.seq],
    });
  });

  test('of an acceptance taken back is no acceptance', () => {
    const script = accepted();
    script.add('panel', { type: 'retract', target: script.head.count - 1, why: 'undo' });
    expect(summarize(script.entries).status).toEqual({ kind: 'aligning' });
  });

  test('tells a stopped job from a resting one', () => {
    const script = alignment();
    script.add('panel', { type: 'pause' });
    expect(summarize(script.entries).status).toEqual({ kind: 'paused' });
    script.add('panel', { type: 'stopped' });
    expect(summarize(script.entries).status).toEqual({ kind: 'stopped' });
  });

  test('of no entries is empty', () => {
    expect(summarize([]).status).toEqual({ kind: 'empty' });
  });
});
