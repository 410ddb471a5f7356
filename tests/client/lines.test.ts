import { describe, expect, it } from 'vitest';
import { lineFor } from '../../client/speak/script.ts';
import type { SpeakerEvent } from '../../client/speak/speaker.ts';
import type { Action, Addressee } from '../../src/model/advice.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Fact, Seat } from '../../src/model/facts.ts';
import { logOf, QUARTER_TURN } from './fixtures.ts';

/** This phone's clock, and how far the server's is ahead of it, ms. */
const CLOCK = { now: 50_000, offset: 2_000 };
/** Words that belong to a moment are worth saying for ten seconds. */
const SOON = 60_000;

const entryOf = (fact: Fact): Entry => ({ ...(logOf([{ actor: 'engine', fact }])[0] as Entry), seq: 7 });
const linesOf = (fact: Fact, seat: Seat = 'panel'): SpeakerEvent[] => lineFor(entryOf(fact), seat, CLOCK);

const says = (kind: 'notice' | 'readback' | 'query', text: string): SpeakerEvent[] => [
  { on: 'say', announcement: { seq: 7, kind, text, until: SOON } },
];

describe('of what comes, a phone says', () => {
  it.each<[string, Fact, SpeakerEvent[]]>([
    ['a notice', { type: 'notice', code: 'not-proven', text: 'Not yet.' }, says('notice', 'Not yet.')],
    [
      'nothing of the cautions, which are read on a page of their own',
      { type: 'notice', code: 'cautions', text: 'Nobody works alone.' },
      [],
    ],
    [
      'a read-back, figure by figure',
      { type: 'readback', of: 3, text: 'Heard 142.' },
      says('readback', 'Heard one four two.'),
    ],
    ['a question', { type: 'query', of: 3, text: '13, or 30?' }, says('query', 'one three, or three zero?')],
    ['nothing of a remark', { type: 'remark', seat: 'panel', text: 'Bracket loose.' }, []],
    ['nothing of what was said', { type: 'said', seat: 'panel', via: 'typed', text: '142' }, []],
    ['nothing of a reading, which is read back', { type: 'reading', reading: { kind: 'none' } }, []],
    ['nothing of who is connected', { type: 'link', seat: 'panel', online: false }, []],
    ['nothing where the crew goes on', { type: 'resume' }, []],
    [
      'no more of an instruction that was withdrawn',
      { type: 'withdrawn', instruction: 5, why: 'expired' },
      [{ on: 'withdraw', seq: 5 }],
    ],
    [
      'nothing that still waits, and signals it, when the work is stopped',
      { type: 'stopped' },
      [{ on: 'forget' }, { on: 'cue', cue: 'stop' }],
    ],
    ['nothing, but signals it, when the crew waits', { type: 'pause' }, [{ on: 'cue', cue: 'hold' }]],
  ])('%s', (_, fact, events) => {
    expect(linesOf(fact)).toEqual(events);
  });
});

describe('on the ladder a phone says less', () => {
  const at = (seat: Seat, actor: 'panel' | 'emitter', text: string) =>
    lineFor(entryOf({ type: 'readback', of: 3, text }), seat, CLOCK, { of: { actor } });

  it.each<[string, Seat, 'panel' | 'emitter', string, string]>([
    ['of a rise only the rise', 'emitter', 'panel', '104, up 6.', 'Up six.'],
    ['of a fall only the fall', 'emitter', 'panel', '-4.5, down 0.5.', 'Down zero decimal five.'],
    ['the first number whole', 'emitter', 'panel', '104.', 'one zero four.'],
    ['the same number whole', 'emitter', 'panel', '104, the same.', 'one zero four, the same.'],
    ['what was said there itself, whole', 'emitter', 'emitter', '104, up 6.', 'one zero four, up six.'],
    ['at the panel all of it', 'panel', 'panel', '104, up 6.', 'one zero four, up six.'],
  ])('%s', (_, seat, actor, text, words) => {
    expect(at(seat, actor, text)).toEqual(says('readback', words));
  });

  const order = (action: Action, to: Addressee, quiet?: true): Fact => ({
    type: 'instruction',
    advice: { to, action, rule: 'test', because: [], figures: {} },
    say: 'Panel: read the meter.',
    show: '',
    why: '',
    expiresAt: 100_000,
    ...(quiet && { quiet }),
  });

  it('nothing of an order to read the meter, which ends what was said before', () => {
    expect(linesOf(order({ kind: 'read' }, 'panel'), 'emitter')).toEqual([{ on: 'unspoken' }]);
  });

  it('and both give a soft tone where it settles and that was said before', () => {
    const hold: Action = { kind: 'hold', reason: 'settling', until: 1 };
    for (const seat of ['panel', 'emitter'] as const) {
      expect(linesOf(order(hold, 'both', true), seat)).toEqual([{ on: 'unspoken', cue: 'settling' }]);
    }
  });
});

describe('an instruction is said at both ends', () => {
  const instruction = (to: Addressee, action: Action): Fact => ({
    type: 'instruction',
    advice: { to, action, rule: 'test', because: [], figures: {} },
    say: 'Horizontal: 2 eighths.',
    show: '',
    why: '',
    expiresAt: 100_000,
  });
  const until = 98_000;
  const hold: Action = { kind: 'hold', reason: 'settling', until };

  it.each<[string, Addressee, Action, Seat, string | undefined]>([
    ['with a signal where it is to be acted on', 'emitter', QUARTER_TURN, 'emitter', 'act'],
    ['without one where only the other acts', 'emitter', QUARTER_TURN, 'panel', undefined],
    ['with a signal at the panel, where that acts', 'panel', { kind: 'read' }, 'panel', 'act'],
    ['with a signal at both, where both act', 'both', hold, 'panel', 'hold'],
    ['with a signal at both, where both act', 'both', hold, 'emitter', 'hold'],
    ['with a good signal, when it may be accepted', 'panel', { kind: 'offer-accept' }, 'panel', 'ok'],
  ])('%s', (_, to, action, seat, cue) => {
    expect(linesOf(instruction(to, action), seat)).toEqual([
      {
        on: 'say',
        // It ends by the server's clock.
        announcement: {
          seq: 7,
          kind: 'instruction',
          text: 'Horizontal: two eighths.',
          until,
          ...(cue && { cue }),
        },
      },
    ]);
  });
});
