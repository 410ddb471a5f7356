import { describe, expect, it } from 'vitest';
import { arcPath, arrowHead, pointAt } from '../../client/instruction/screw.ts';
import { newLink } from '../../client/link/link.ts';
import { madeOf } from '../../client/panel/made.ts';
import { routeOf } from '../../client/route.ts';
import { forgetSeat, savedSeat, savedSeats, saveSeat } from '../../client/seat/saved-seats.ts';
import { JobFold, onScreen, standing } from '../../client/seat/view.ts';
import { memoryStorage } from '../../client/storage.ts';
import type { Seq } from '../../src/advice.ts';
import type { Actor, Fact } from '../../src/facts.ts';
import { talk } from '../../src/log/talk.ts';
import { instruction, logOf, opened, QUARTER_TURN, TOKEN } from './fixtures.ts';

describe('what stands on the screen', () => {
  const EXPIRES = 100_000;
  const log = logOf([opened, instruction(QUARTER_TURN, 'A quarter turn.', EXPIRES)]);
  const job = new JobFold().upTo(log);
  const live = { ...newLink(TOKEN), phase: 'live', entries: log, offset: 0 } as const;

  it('is the instruction, on a live link and before its end', () => {
    expect(standing(live, job, EXPIRES - 1)).toMatchObject({ kind: 'current', instruction: { seq: 1 } });
  });

  it('is nothing once it has expired, by the clock of the server and not of the phone', () => {
    expect(standing(live, job, EXPIRES)).toEqual({ kind: 'none' });
    expect(standing({ ...live, offset: 5_000 }, job, EXPIRES - 5_000)).toEqual({ kind: 'none' });
    expect(standing({ ...live, offset: -5_000 }, job, EXPIRES).kind).toBe('current');
  });

  it.each(['resting', 'connecting', 'catching-up'] as const)(
    'is never current while the link is %s',
    (phase) => {
      const unsure = standing({ ...live, phase }, job, 0);
      expect(unsure.kind).toBe('unsure');
      // A "done" pressed now is still said of that turn.
      expect(onScreen(unsure)).toBe(1);
    },
  );

  it('is nothing to press on for while no instruction was ever known, on a live link or not', () => {
    const nothing = new JobFold().upTo(log.slice(0, 1));
    expect(onScreen(standing(live, nothing, 0))).toBeUndefined();
    expect(onScreen(standing({ ...live, phase: 'resting' }, nothing, 0))).toBeUndefined();
  });

  it('folds each entry once, however often it is asked', () => {
    const folding = new JobFold();
    folding.upTo(log.slice(0, 1));
    folding.upTo(log);
    expect(folding.upTo(log)).toEqual(job);
  });
});

describe('the talk as the panel shows it', () => {
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
  const turnsOf = (drafts: Draft[]) => {
    const log = logOf(drafts);
    return talk(log, new JobFold().upTo(log).setup?.meter).map((turn) => ({ ...turn, made: madeOf(turn) }));
  };

  it('puts a reading and its read-back under the words it was made from', () => {
    const turns = turnsOf([opened, said('one four two'), reading(142, 1), readback(2, 'Heard 142.')]);
    expect(turns).toHaveLength(2);
    expect(turns[1]).toMatchObject({
      text: 'one four two',
      made: [{ seq: 2, text: 'Heard 142.', type: 'reading', counts: true, reported: true }],
    });
  });

  it('shows that a reading was taken back, and leaves it where it was', () => {
    const retract: Draft = { actor: 'panel', fact: { type: 'retract', target: 2, why: 'undo' } };
    const turns = turnsOf([opened, said('142'), reading(142, 1), readback(2, 'Heard 142.'), retract]);
    expect(turns[1]?.made[0]).toMatchObject({ seq: 2, counts: false });
  });

  it('keeps what the engine says of itself as lines of their own', () => {
    const turns = turnsOf([
      opened,
      instruction(QUARTER_TURN, 'A quarter turn.', 1),
      readback(1, 'A quarter turn.'),
    ]);
    expect(turns.map((t) => [t.who, t.text])).toContainEqual(['ladderline', 'A quarter turn.']);
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
    'points its arrow at where a turn of %i eighths ends',
    (eighths) => {
      const [x, y] = (arrowHead(eighths).split(' ')[0] as string).split(',').map(Number) as [number, number];
      const toward = pointAt(eighths, Math.hypot(x, y));
      expect(x).toBeCloseTo(toward.x, 1);
      expect(y).toBeCloseTo(toward.y, 1);
    },
  );

  it('winds outward beyond a full turn, so that the overlap is seen', () => {
    expect(Math.hypot(...last(arcPath(12)))).toBeGreaterThan(Math.hypot(...last(arcPath(4))) + 5);
  });
});

describe('addresses', () => {
  it.each([
    ['/', '', { page: 'home' }],
    ['/join', '#ABC234', { page: 'join', code: 'ABC234' }],
    ['/join/', '', { page: 'join', code: '' }],
    ['/panel', '#new', { page: 'panel', fresh: true }],
    ['/panel', '', { page: 'panel', fresh: false }],
    ['/emitter', '', { page: 'emitter' }],
    ['/watch', '#t%2Dk', { page: 'watch', token: 't-k' }],
    ['/watch', '#%E0%A4%A', { page: 'watch', token: '%E0%A4%A' }],
    ['/elsewhere', '', { page: 'unknown' }],
  ] as const)('%s%s lead where they say', (path, hash, route) => {
    expect(routeOf(path, hash)).toEqual(route);
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

  it('are none where what was kept is no seat', () => {
    for (const rubbish of [null, 7, 'x', {}, { ...seat, token: 5 }, { ...seat, seat: 'emitter' }]) {
      const storage = memoryStorage();
      storage.write('seat.panel', rubbish);
      expect(savedSeat(storage, 'panel')).toBeUndefined();
    }
  });
});
