import { describe, expect, it } from 'vitest';
import { memoryStorage } from '../../client/browser/storage.ts';
import { arcPath, arrowHead, pointAt } from '../../client/instruction/screw.ts';
import { newLink } from '../../client/link/link.ts';
import { madeOf } from '../../client/panel/made.ts';
import { forgetSeat, savedSeat, savedSeats, saveSeat } from '../../client/saved/saved-seats.ts';
import { lastSaid } from '../../client/seat/news.tsx';
import { JobFold, onScreen, order } from '../../client/seat/view.ts';
import type { Actor, Fact } from '../../src/model/facts.ts';
import type { Seq } from '../../src/model/ids.ts';
import { exchange } from '../../src/record/exchange.ts';
import { instruction, logOf, opened, QUARTER_TURN, TOKEN } from './fixtures.ts';

describe('the instruction on the screen', () => {
  const EXPIRES = 100_000;
  const log = logOf([opened, instruction(QUARTER_TURN, 'A quarter turn.', EXPIRES)]);
  const job = new JobFold().upTo(log);
  const live = { ...newLink(TOKEN), phase: 'live', entries: log, offset: 0 } as const;

  it('is the instruction, on a live link and before its end', () => {
    expect(order(live, job, EXPIRES - 1)).toMatchObject({ kind: 'current', instruction: { seq: 1 } });
  });

  it('is nothing once it has expired, by the clock of the server and not of the phone', () => {
    expect(order(live, job, EXPIRES)).toEqual({ kind: 'none' });
    expect(order({ ...live, offset: 5_000 }, job, EXPIRES - 5_000)).toEqual({ kind: 'none' });
    expect(order({ ...live, offset: -5_000 }, job, EXPIRES).kind).toBe('current');
  });

  it.each(['resting', 'connecting', 'catching-up'] as const)(
    'is never current while the link is %s',
    (phase) => {
      const unsure = order({ ...live, phase }, job, 0);
      expect(unsure.kind).toBe('unsure');
      // A "done" pressed now still answers that instruction.
      expect(onScreen(unsure)).toBe(1);
    },
  );

  it('is nothing to press on for while no instruction was ever known, on a live link or not', () => {
    const nothing = new JobFold().upTo(log.slice(0, 1));
    expect(onScreen(order(live, nothing, 0))).toBeUndefined();
    expect(onScreen(order({ ...live, phase: 'resting' }, nothing, 0))).toBeUndefined();
  });

  it('folds each entry only once', () => {
    const folding = new JobFold();
    folding.upTo(log.slice(0, 1));
    folding.upTo(log);
    expect(folding.upTo(log)).toEqual(job);
  });
});

describe('the last words, under the instruction', () => {
  const waiting: { actor: Actor; fact: Fact } = {
    actor: 'engine',
    fact: { type: 'notice', code: 'paused', text: 'Waiting. Say go on.' },
  };
  const goOn: { actor: Actor; fact: Fact } = { actor: 'panel', fact: { type: 'resume', from: 1 } };
  const lastAfter = (facts: { actor: Actor; fact: Fact }[]) => lastSaid(logOf([opened, ...facts]))?.text;

  it('are the notice, until the crew goes on', () => {
    expect(lastAfter([waiting])).toBe('Waiting. Say go on.');
    expect(lastAfter([waiting, goOn])).toBeUndefined();
  });

  it('are what was said after they went on', () => {
    expect(
      lastAfter([waiting, goOn, { actor: 'engine', fact: { type: 'readback', of: 2, text: 'Heard 142.' } }]),
    ).toBe('Heard 142.');
  });
});

describe('the exchange as the panel shows it', () => {
  type Draft = { actor: Actor; fact: Fact };
  const said = (text: string): Draft => ({
    actor: 'panel',
    fact: { type: 'said', seat: 'panel', via: 'typed', text },
  });
  const reading = (value: number, from: Seq): Draft => ({
    actor: 'panel',
    fact: { type: 'reading', reading: { kind: 'value', value }, from },
  });
  const readback = (of: Seq, text: string): Draft => ({
    actor: 'engine',
    fact: { type: 'readback', of, text },
  });
  const passagesOf = (drafts: Draft[]) => {
    const log = logOf(drafts);
    return exchange(log, new JobFold().upTo(log).setup?.meter).map((passage) => ({
      ...passage,
      made: madeOf(passage),
    }));
  };

  it('puts a reading and its read-back under the words it was made from', () => {
    const passages = passagesOf([opened, said('one four two'), reading(142, 1), readback(2, 'Heard 142.')]);
    expect(passages).toHaveLength(2);
    expect(passages[1]).toMatchObject({
      text: 'one four two',
      made: [{ seq: 2, text: 'Heard 142.', type: 'reading', counts: true, reported: true }],
    });
  });

  it('shows that a reading was taken back, and leaves it where it was', () => {
    const retract: Draft = { actor: 'panel', fact: { type: 'retract', target: 2, why: 'undo' } };
    const passages = passagesOf([opened, said('142'), reading(142, 1), readback(2, 'Heard 142.'), retract]);
    expect(passages[1]?.made[0]).toMatchObject({ seq: 2, counts: false });
  });

  it('shows what the engine says without being asked on lines of its own', () => {
    const passages = passagesOf([
      opened,
      instruction(QUARTER_TURN, 'A quarter turn.', 1),
      readback(1, 'A quarter turn.'),
    ]);
    expect(passages.map((t) => [t.who, t.text])).toContainEqual(['ladderline', 'A quarter turn.']);
  });
});

describe('the drawing of a turn', () => {
  const last = (path: string) => path.split('L').at(-1)?.split(' ').map(Number) as [number, number];

  it('begins at twelve o’clock and goes clockwise for a positive turn', () => {
    expect(arcPath(2)).toMatch(/^M0\.0 -78\.0L/);
    expect(last(arcPath(2))[0]).toBeGreaterThan(0);
    expect(last(arcPath(-2))[0]).toBeLessThan(0);
  });

  it.each([-12, -8, -3, -1, 1, 2, 4, 8, 12])(
    'points its arrow at the end of a turn of %i eighths',
    (eighths) => {
      const [x, y] = (arrowHead(eighths).split(' ')[0] as string).split(',').map(Number) as [number, number];
      const toward = pointAt(eighths, Math.hypot(x, y));
      expect(x).toBeCloseTo(toward.x, 1);
      expect(y).toBeCloseTo(toward.y, 1);
    },
  );

  it('winds outward for more than a full turn, so that the overlap can be seen', () => {
    expect(Math.hypot(...last(arcPath(12)))).toBeGreaterThan(Math.hypot(...last(arcPath(4))) + 5);
  });
});

describe('the seats this device sits in', () => {
  const seat = { seat: 'panel', job: 'job-for-tests', token: TOKEN, title: 'Hall 3, B2' } as const;

  it('are kept, shown and forgotten one by one', () => {
    const storage = memoryStorage();
    saveSeat(storage, seat);
    saveSeat(storage, { ...seat, seat: 'emitter' });
    expect(savedSeats(storage)).toHaveLength(2);
    forgetSeat(storage, 'panel');
    expect(savedSeats(storage).map((s) => s.seat)).toEqual(['emitter']);
  });

  it('are none when what was kept is not a seat', () => {
    for (const rubbish of [null, 7, 'x', {}, { ...seat, token: 5 }, { ...seat, seat: 'emitter' }]) {
      const storage = memoryStorage();
      storage.write('seat.panel', rubbish);
      expect(savedSeat(storage, 'panel')).toBeUndefined();
    }
  });
});
