import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import type { Action } from '../../src/model/advice.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Fact, FactOf, Seat } from '../../src/model/facts.ts';
import type { Head } from '../../src/model/ids.ts';
import { NEUTRAL_ADJUSTERS, NEUTRAL_METERS } from '../../src/model/profile.ts';
import { NO_SIGNAL, type Reading, SATURATED, valueReading } from '../../src/model/reading.ts';
import type { Axis, Eighths } from '../../src/model/turns.ts';
import { amountWords, senseWord } from '../../src/phrases/amounts.ts';

const COUNTS = NEUTRAL_METERS.find((meter) => meter.unit === 'counts');
if (!COUNTS) throw new Error('no neutral meter in counts');

export const SETUP: FactOf<'opened'>['setup'] = {
  site: 'Hollin Bridge sorting hall',
  pair: 'Beam 3, east aisle',
  meter: COUNTS,
  adjusters: NEUTRAL_ADJUSTERS,
  pathLength: 62,
};

/** 2026-03-03 08:30 UTC. */
const START = Date.UTC(2026, 2, 3, 8, 30);

/** A log that grows: seals what is added to it, on a clock that is moved by hand. */
export class Script {
  readonly entries: Entry[] = [];
  head: Head;
  #now = START;
  #messages = 0;

  constructor(job = 'JkQ3vR8sT2') {
    this.head = emptyHead(job);
  }

  wait(seconds: number): this {
    this.#now += seconds * 1000;
    return this;
  }

  add(actor: Entry['actor'], fact: Fact, fromPhone = false): number {
    const ref = fromPhone ? `message-${String(this.#messages++).padStart(4, '0')}` : undefined;
    const entry = seal(this.head, { actor, fact, ...(ref && { ref }) }, this.#now);
    this.entries.push(entry);
    this.head = headAfter(entry);
    this.#now += 40;
    return entry.seq;
  }

  says(seat: Seat, text: string, via: 'typed' | 'voice' | 'button' = 'voice'): number {
    const confidence = via === 'voice' ? { confidence: 0.94 } : {};
    return this.add(seat, { type: 'said', seat, via, text, ...confidence }, true);
  }

  reads(words: string, reading: Reading): number {
    const from = this.wait(5).says('panel', words);
    const seq = this.add('panel', { type: 'reading', reading, from });
    const heard =
      reading.kind === 'value' ? String(reading.value) : reading.kind === 'none' ? 'no signal' : 'saturated';
    this.add('engine', { type: 'readback', of: seq, text: `Heard ${heard}.` });
    return seq;
  }

  instructs(action: Action, say: string, why: string, because: number[], rule: string): number {
    const to = action.kind === 'turn' || action.kind === 're-aim' ? 'emitter' : 'both';
    const advice = { to, action, rule, because, figures: {} } as const;
    return this.add('engine', {
      type: 'instruction',
      advice: { ...advice, because: [...because] },
      say,
      show: say,
      why,
      expiresAt: this.#now + 120_000,
    });
  }

  /** An instruction to turn, and the turn. */
  turns(axis: Axis, eighths: Eighths, why: string, because: number[]): number {
    const say = `${axis === 'horizontal' ? 'Horizontal' : 'Vertical'}: ${amountWords(eighths)}, ${senseWord(eighths)}. Then let go.`;
    const action = { kind: 'turn', axis, eighths, reversal: false } as const;
    const instruction = this.instructs(action, say, why, because, 'peak.quarter');
    const from = this.wait(7).says('emitter', 'done', 'button');
    return this.add('emitter', { type: 'move', axis, eighths, instruction, from });
  }

  setsGain(change: FactOf<'gain'>['change'], words: string): number {
    const from = this.wait(9).says('emitter', words);
    return this.add('emitter', { type: 'gain', change, from });
  }
}

const value = valueReading;

/** An alignment with the usual problems: flooded, misheard, turned the wrong way, a phone replaced. */
export function alignment(job?: string): Script {
  const s = new Script(job);
  s.add('server', { type: 'opened', setup: SETUP, logVersion: 1 });
  s.add('server', { type: 'seated', seat: 'panel', device: 'Panel phone', takeover: false });
  s.wait(41).add('server', { type: 'seated', seat: 'emitter', device: 'Ladder phone', takeover: false });
  s.add('engine', {
    type: 'notice',
    code: 'caution',
    text: 'Check that the alarm outputs are isolated. Keep three points of contact on the ladder.',
  });
  s.instructs(
    { kind: 'read' },
    'Panel: what does the meter show?',
    'Nothing has been read yet.',
    [],
    'find.read',
  );
  let last = s.reads('no signal', NO_SIGNAL);
  s.instructs(
    { kind: 're-aim' },
    'Aim the emitter by eye, within fifteen centimetres of the receiver. Then say done.',
    'The meter shows no signal.',
    [last],
    'find.re-aim',
  );
  const aimed = s.wait(48).says('emitter', 'done', 'button');
  s.add('emitter', { type: 're-aimed', from: aimed });
  last = s.reads('two five four, saturated', SATURATED);
  s.instructs(
    { kind: 'gain', change: 'lower', toward: 140 },
    'Lower the gain until the reading is about 140. Do not lose the signal. Then say done.',
    'The receiver is flooded.',
    [last],
    'gain.flooded',
  );
  s.setsGain('lowered', 'gain down');
  last = s.reads('ninety six', value(96));

  const climbing = 'Each turn this way raised the reading.';
  s.turns('horizontal', 2, 'No slope is known yet: a quarter turn shows it.', [last]);
  last = s.reads('eighty one', value(81));
  s.turns('horizontal', -2, 'The reading fell from 96 to 81: wrong way, a quarter turn back.', [last]);
  last = s.reads('ninety seven', value(97));
  s.turns('horizontal', -2, climbing, [last]);
  // "fifteen" for "fifty", corrected after the read-back.
  const misheard = s.reads('one fifteen', value(115));
  const correction = s.wait(3).says('panel', 'wrong, one one nine', 'typed');
  last = s.add('panel', { type: 'reading', reading: value(119), replaces: misheard, from: correction });
  s.add('engine', { type: 'readback', of: last, text: 'Corrected: 119, not 115.' });
  s.turns('horizontal', -2, climbing, [last]);
  last = s.reads('one three one', value(131));
  s.turns('horizontal', -2, climbing, [last]);
  last = s.reads('one three four', value(134));
  s.turns('horizontal', -2, climbing, [last]);
  last = s.reads('one two six', value(126));
  s.turns('horizontal', 2, 'The reading fell past 134: back a quarter turn.', [last]);
  last = s.reads('one three three', value(133));

  s.turns('vertical', 2, 'The horizontal peak is bracketed. Now the vertical adjuster.', [last]);
  last = s.reads('one five eight', value(158));
  s.turns('vertical', 4, 'The reading rose from 133 to 158.', [last]);
  const flooded = s.reads('saturated', SATURATED);
  s.instructs(
    { kind: 'gain', change: 'lower', toward: 140 },
    'Lower the gain until the reading is about 140. Do not lose the signal. Then say done.',
    'The receiver is flooded.',
    [flooded],
    'gain.flooded',
  );
  s.setsGain('lowered', 'gain is down');
  last = s.reads('one three eight', value(138));
  s.wait(4).add('server', { type: 'link', seat: 'emitter', online: false });
  s.wait(95).add('server', { type: 'seated', seat: 'emitter', device: 'Spare phone', takeover: true });
  s.add('emitter', {
    type: 'remark',
    seat: 'emitter',
    text: '=first phone went flat; "spare" in use, bracket feels loose – note für later',
  });
  s.turns('vertical', 2, 'The same adjuster, the same way.', [last]);
  last = s.reads('one four two', value(142));
  const wrong = s.turns('vertical', 2, climbing, [last]);
  const undo = s.wait(3).says('emitter', 'undo');
  s.add('emitter', { type: 'retract', target: wrong, why: 'undo', from: undo });
  last = s.reads('one four two', value(142));
  s.turns('vertical', 2, climbing, [last]);
  last = s.reads('one three six', value(136));
  s.turns('vertical', -2, 'The reading fell from 142 to 136: back a quarter turn.', [last]);
  last = s.reads('one four one', value(141));

  s.instructs(
    { kind: 'block' },
    'Cover the whole beam with something dull. Then say blocked.',
    'A reflection would still be seen with the beam covered.',
    [last],
    'prove.block',
  );
  let from = s.wait(14).says('emitter', 'blocked');
  s.add('emitter', { type: 'path', state: 'blocked', from });
  const dark = s.reads('nothing', NO_SIGNAL);
  s.instructs(
    { kind: 'unblock' },
    'Uncover the beam. Then say clear.',
    'Covered, the meter shows no signal.',
    [dark],
    'prove.unblock',
  );
  from = s.wait(6).says('emitter', 'clear');
  s.add('emitter', { type: 'path', state: 'clear', from });
  last = s.reads('one four one', value(141));
  s.instructs(
    { kind: 'hold', reason: 'proving-steady', until: START + 700_000 },
    'Hands off. Wait for a steady reading.',
    'The reading must stand for ten seconds.',
    [last],
    'prove.steady',
  );
  last = s.wait(10).reads('one four two', value(142));
  s.instructs(
    { kind: 'offer-accept' },
    'Everything is proven. Say accept to accept this alignment.',
    'Both peaks are bracketed and the reading stands in the band.',
    [last],
    'accept.offer',
  );
  return s;
}

/** Accepted on its evidence. */
export function accepted(job?: string): Script {
  const s = alignment(job);
  const from = s.wait(4).says('panel', 'accept');
  s.add('panel', { type: 'accept', reading: value(142), from });
  return s;
}

/** Accepted although evidence is missing, then touched again. */
export function overridden(job?: string): Script {
  const s = alignment(job);
  s.add('panel', {
    type: 'accept',
    reading: value(142),
    override: {
      reason: 'Ladder has to clear the aisle at nine; vertical to be finished on Friday.',
      missing: ['vertical peak is not bracketed by lower readings on both sides'],
    },
  });
  s.turns('vertical', 1, 'Moved after all.', []);
  return s;
}
