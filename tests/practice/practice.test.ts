import { describe, expect, it } from 'vitest';
import type { Input } from '../../src/conversation/input.ts';
import { respond } from '../../src/conversation/respond.ts';
import { toJsonLines } from '../../src/log/json-lines.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Fact } from '../../src/model/facts.ts';
import { type Practice, Trouble } from '../../src/model/practice.ts';
import type { Axis } from '../../src/model/turns.ts';
import { describe as describeEntry } from '../../src/phrases/describe.ts';
import { wrongText } from '../../src/phrases/verify.ts';
import { nextDeed } from '../../src/practice/colleague.ts';
import { gradeOf } from '../../src/practice/grade.ts';
import { type Hall, hallOf } from '../../src/practice/hall.ts';
import { lessonNow, waitsForOrder } from '../../src/practice/lessons.ts';
import { shownBy } from '../../src/practice/meter.ts';
import { practiceSetup } from '../../src/practice/pair.ts';
import { Play, playedByCrew } from '../../src/practice/play.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { countedOf } from '../../src/visit/state.ts';
import { COUNTS, TableJob } from '../conversation/table.ts';
import { verified } from '../verify/checked.ts';

const practice = (seed: number, ...troubles: Trouble[]): Practice => ({ seed, troubles });

const gradeOfCrew = (seed: number, ...troubles: Trouble[]) => {
  const run = gradeOf(playedByCrew(practice(seed, ...troubles)));
  if (!run) throw new Error('this is not practice');
  return run;
};

/** A person at one seat, as the test plays it, with a simulated colleague at the other. */
class Person {
  readonly play: Play;
  constructor(
    planted: Practice,
    readonly seat: 'panel' | 'emitter',
  ) {
    this.play = new Play(planted, [seat === 'panel' ? 'emitter' : 'panel'], 0);
  }

  get hall(): Hall {
    return hallOf(this.play.entries) as Hall;
  }
  get order() {
    return this.play.state.instruction?.advice.action;
  }
  get facts(): Fact[] {
    return this.play.entries.map(({ fact }) => fact);
  }
  meter(): string {
    const shown = shownBy(this.hall, this.play.now);
    return shown.kind === 'value' ? `${shown.value}` : shown.kind === 'saturated' ? 'saturated' : 'no signal';
  }

  say(text: string): void {
    const re = this.play.state.instruction?.seq;
    this.play.take({ kind: 'words', seat: this.seat, via: 'typed', text, ...(re !== undefined && { re }) });
    this.play.passTo(this.play.now);
  }

  /** Aims the emitter as asked, and says so. */
  aim(): void {
    this.play.take({ kind: 'practise', seat: 'emitter', act: { did: 'aim' } });
    this.say('done');
  }

  /** Waits until the order is one of these, and nobody has to hurry. */
  until(...kinds: string[]): void {
    for (let i = 0; i < 400 && !kinds.includes(this.order?.kind ?? ''); i++)
      this.play.passTo(this.play.now + 500);
    if (!kinds.includes(this.order?.kind ?? '')) throw new Error(`never asked to ${kinds}`);
    this.play.passTo(this.play.now + 1_000);
  }

  /** Reads honestly until the acceptance, unless `instead` says something else. */
  toTheEnd(instead: (person: Person) => string | undefined = () => undefined): void {
    for (let i = 0; i < 2_000 && !this.play.state.accepted; i++) {
      this.play.passTo(this.play.now + 1_000);
      const kind = this.order?.kind;
      if (kind === 'offer-accept') this.say('accept');
      else if (kind === 'read' || kind === 'ask') this.say(instead(this) ?? this.meter());
    }
  }
}

describe('a practice pair', () => {
  it.each([[], ...Trouble.options.map((trouble) => [trouble]), ['flooded', 'vibration'] as const])(
    'is aligned by a crew that does what it is asked, with trouble: %s %s',
    (...troubles) => {
      for (const seed of [1, 2, 3]) {
        const run = gradeOfCrew(seed, ...(troubles as Trouble[]));
        expect(run.accepted).toBe(true);
        expect(run.missed).not.toContain('on-reflection');
        expect(run.missed).not.toContain('off-peak');
      }
    },
  );

  it('is the same for the same seed, and another for another', () => {
    const hashes = (seed: number) => playedByCrew(practice(seed)).map(({ hash }) => hash);
    expect(hashes(5)).toEqual(hashes(5));
    const [five, six] = [practice(5), practice(6)].map((each) => new Person(each, 'panel').hall.pair.spec);
    expect(five?.lobes).not.toEqual(six?.lobes);
  });

  it.each([
    ['flooded', 'saturated'],
    ['reflection', 'value'],
    ['vibration', 'value'],
  ] as const)('begins with %s: its meter shows %s', (trouble, kind) => {
    for (const seed of [1, 2, 3, 4, 5, 6, 7, 8]) {
      const { hall } = new Person(practice(seed, trouble), 'panel');
      expect(shownBy(hall, 3_000).kind).toBe(kind);
    }
  });

  it('with a shaking mount, shows another number each time; without, the same', () => {
    const numbers = (...troubles: Trouble[]) => {
      const { hall } = new Person(practice(3, ...troubles), 'panel');
      return new Set([4, 5, 6, 7, 8].map((at) => JSON.stringify(shownBy(hall, at * 430))));
    };
    expect(numbers('vibration').size).toBeGreaterThan(2);
    expect(numbers().size).toBeLessThan(3);
  });
});

describe('a number heard wrong', () => {
  const heardWrong = () => {
    const person = new Person(practice(0, 'misheard'), 'panel');
    while (!person.play.state.misheard) {
      person.until('read', 'ask');
      person.say(person.meter());
    }
    return person;
  };

  it('arrives as another, once, and the log keeps what was really said', () => {
    const { facts } = heardWrong();
    const at = facts.findIndex((fact) => fact.type === 'practised' && fact.act.did === 'misheard');
    const [act, said] = facts.slice(at);
    const meant = act?.type === 'practised' && act.act.did === 'misheard' ? act.act.meant : '';
    expect(Number(meant)).toBeGreaterThan(0);
    expect(said).toMatchObject({ type: 'said', seat: 'panel' });
    expect(said).not.toMatchObject({ text: meant });
  });

  it('is not given away: no line of the exchange tells what hands or ears really did', () => {
    for (const { actor, fact } of heardWrong().play.entries)
      if (fact.type === 'practised') expect(describeEntry({ actor, fact }, COUNTS)).toBeUndefined();
  });

  it('is missed by who does not listen, and mastered by who corrects it', () => {
    const deaf = heardWrong();
    const alert = heardWrong();
    const wrong = deaf.play.state.reading?.seq;
    expect(alert.play.state.reading?.seq).toBe(wrong);
    alert.say(`wrong, ${alert.meter()}`);
    for (const person of [deaf, alert]) person.toTheEnd();
    expect(gradeOf(deaf.play.entries)).toMatchObject({
      wrong: 1,
      putRight: 0,
      missed: ['wrong-number-stood'],
      planted: [{ trouble: 'misheard', fate: 'missed' }],
    });
    expect(gradeOf(alert.play.entries)).toMatchObject({
      wrong: 1,
      putRight: 1,
      missed: [],
      planted: [{ trouble: 'misheard', fate: 'met' }],
    });
  });

  it('never happens in a job that is not practice', () => {
    const job = TableJob.crewed(COUNTS);
    for (const number of ['142', '143', '142', '150', '130', '115', '140', '142']) {
      const [said] = job.say('panel', number);
      expect(said).toMatchObject({ type: 'said', text: number });
      job.wait(5_000);
    }
    expect(job.facts.some(({ type }) => type === 'practised')).toBe(false);
  });
});

describe('a turn that slips', () => {
  it('goes the other way once, whatever the hand meant', () => {
    const person = new Person(practice(0, 'wrong-way'), 'emitter');
    const went: number[] = [];
    person.until('re-aim');
    person.aim();
    for (let i = 0; i < 8; i++) {
      person.until('turn', 'ask');
      const { order } = person;
      if (order?.kind === 'ask') {
        person.say('no');
        continue;
      }
      if (order?.kind !== 'turn') throw new Error('not asked to turn');
      const before = person.hall.pair.turned[order.axis];
      const act = { did: 'turn', axis: order.axis, eighths: order.eighths } as const;
      person.play.take({ kind: 'practise', seat: 'emitter', act });
      went.push(Math.sign((person.hall.pair.turned[order.axis] - before) / order.eighths));
      person.say('done');
    }
    expect(went.filter((sign) => sign < 0)).toHaveLength(1);
  });

  it('is missed while the log says otherwise than the screws, and mastered when it says the same', () => {
    const said = (then: (person: Person, axis: 'horizontal' | 'vertical', eighths: number) => void) => {
      const person = new Person(practice(0, 'wrong-way'), 'emitter');
      person.until('re-aim');
      person.aim();
      while (!person.hall.slip) {
        person.until('turn');
        const { order } = person;
        if (order?.kind !== 'turn') throw new Error('not asked to turn');
        const { axis, eighths } = order;
        person.play.take({ kind: 'practise', seat: 'emitter', act: { did: 'turn', axis, eighths } });
        if (person.hall.slip) then(person, axis, eighths);
        else person.say('done');
      }
      return gradeOf(person.play.entries)?.missed;
    };
    expect(said((person) => person.say('done'))).toContain('wrong-turn-stood');
    const turnedBack = said((person, axis, eighths) => {
      const act = { did: 'turn', axis, eighths: 2 * eighths } as const;
      person.play.take({ kind: 'practise', seat: 'emitter', act });
      person.say('done');
    });
    expect(turnedBack).not.toContain('wrong-turn-stood');
  });
});

it.each<[string, { axis: Axis; meant: number } | undefined, string]>([
  ['did', undefined, 'yes'],
  ['did, and another slipped', { axis: 'horizontal', meant: 6 }, 'yes'],
  ['did not: it slipped', { axis: 'vertical', meant: -4 }, 'no, '],
])('A colleague asked whether they turned as reported: they %s', (_, slip, says) => {
  const person = new Person(practice(0, 'wrong-way'), 'panel');
  person.until('read');
  const { state } = person.play;
  const job = TableJob.crewed();
  job.say('emitter', 'vertical a half turn counterclockwise');
  const move = countedOf(job.state).findLast(({ type }) => type === 'move') as { seq: number };
  const question = {
    kind: 'which-move' as const,
    about: move.seq,
    options: [{ axis: 'vertical' as const, eighths: -4 }],
  };
  const { instruction } = state;
  if (!instruction) throw new Error('nothing is asked');
  const advice = { ...instruction.advice, to: 'both' as const, action: { kind: 'ask' as const, question } };
  const hall = { ...person.hall, ...(slip && { slip: { at: 0, ...slip } }) };
  const deed = nextDeed('emitter', { ...job.state, instruction: { ...instruction, advice } }, hall);
  expect(deed?.says.startsWith(says)).toBe(true);
  expect(deed?.says === says).toBe(says === 'yes');
});

describe('the grade', () => {
  /** From the tolerance of the practice meter, 1 percent: what was shown within eight seconds, twice the tolerance. */
  it.each([
    [0, 0],
    [2, 0],
    [3, 1],
    [-3, 1],
  ])('counts a number %d beside the meter as wrong %d times', (beside, times) => {
    const person = new Person(practice(4), 'panel');
    person.until('read', 'hold');
    person.play.passTo(person.play.now + 6_000);
    person.say(`${Number(person.meter()) + beside}`);
    expect(gradeOf(person.play.entries)?.wrong).toBe(times);
  });

  it.each([
    [{ kind: 'none' }, '0', 0],
    [{ kind: 'none' }, '4', 0],
    [{ kind: 'none' }, '5', 1],
    [{ kind: 'saturated' }, '99', 0],
    [{ kind: 'saturated' }, '98', 1],
    [{ kind: 'saturated' }, 'no signal', 1],
  ] as const)('while the meter shows %o, "%s" is wrong %d times', (shown, words, times) => {
    const person = new Person(
      practice(4, ...(shown.kind === 'saturated' ? ['flooded' as const] : [])),
      'panel',
    );
    const away = { did: 'turn', axis: 'vertical', eighths: 60 } as const;
    if (shown.kind === 'none') person.play.take({ kind: 'practise', seat: 'emitter', act: away });
    person.play.passTo(person.play.now + 12_000);
    expect(shownBy(person.hall, person.play.now)).toEqual(shown);
    person.say(words);
    expect(gradeOf(person.play.entries)?.wrong).toBe(times);
  });

  it('takes no number for right while the meter stands at its end', () => {
    const person = new Person(practice(4, 'flooded'), 'panel');
    person.until('read');
    expect(person.meter()).toBe('saturated');
    person.say('90');
    expect(gradeOf(person.play.entries)).toMatchObject({
      wrong: 1,
      missed: ['flooded-number', 'wrong-number-stood'],
      planted: [{ trouble: 'flooded', fate: 'missed' }],
    });
  });

  it.each([
    ['blocked', 'block', 'said-blocked', { did: 'card', inPath: true }],
    ['clear', 'unblock', 'said-clear', { did: 'card', inPath: false }],
    ['done', 're-aim', 'said-aimed', { did: 'aim' }],
  ] as const)('sees that %s was said without doing it', (words, kind, miss, act) => {
    for (const isDone of [true, false]) {
      const person = new Person(practice(2, 'reflection'), 'emitter');
      for (let i = 0; i < 400 && person.order?.kind !== kind; i++) {
        const { order } = person;
        if (order?.kind === 're-aim') person.aim();
        if (order?.kind === 'turn')
          person.play.take({
            kind: 'practise',
            seat: 'emitter',
            act: { did: 'turn', axis: order.axis, eighths: order.eighths },
          });
        if (order?.kind === 'block')
          person.play.take({ kind: 'practise', seat: 'emitter', act: { did: 'card', inPath: true } });
        if (order?.kind === 'unblock')
          person.play.take({ kind: 'practise', seat: 'emitter', act: { did: 'card', inPath: false } });
        if (order?.kind === 'turn') person.say('done');
        if (order?.kind === 'block') person.say('blocked');
        if (order?.kind === 'unblock') person.say('clear');
        person.play.passTo(person.play.now + 2_000);
      }
      expect(person.order?.kind).toBe(kind);
      if (isDone) person.play.take({ kind: 'practise', seat: 'emitter', act });
      person.say(words);
      const missed = gradeOf(person.play.entries)?.missed;
      if (isDone) expect(missed).not.toContain(miss);
      else expect(missed).toContain(miss);
    }
  });

  it('of a log that is not practice is none', () => {
    const job = TableJob.crewed(COUNTS);
    const entries = job.facts.map((fact, seq) => ({ fact, seq, at: 0 }) as Entry);
    expect(gradeOf(entries)).toBeUndefined();
  });
});

describe('the lessons', () => {
  it('of the panel are learnt by doing them, in their order', () => {
    const person = new Person({ seed: 1, troubles: [], guided: true }, 'panel');
    const now = () => lessonNow('panel', person.play.entries);
    expect(now()).toBe(0);
    person.until('read');
    person.say(person.meter());
    expect(now()).toBe(1);
    // Told to wait already.
    expect(waitsForOrder('panel', 1, person.play.entries)).toBe(false);
    person.until('read');
    expect(now()).toBe(2);
    expect(waitsForOrder('panel', 2, person.play.entries)).toBe(false);
    person.say(person.meter());
    expect(now()).toBe(3);
    const target = person.play.state.reading?.seq as number;
    person.play.take({ kind: 'correct', seat: 'panel', target, text: person.meter() });
    expect(now()).toBe(4);
    person.say('wait');
    expect(now()).toBe(4);
    person.say('go on');
    expect(now()).toBeUndefined();
  });

  it('of the emitter are learnt by doing them, in their order', () => {
    const person = new Person({ seed: 1, troubles: [], guided: true }, 'emitter');
    const now = () => lessonNow('emitter', person.play.entries);
    const waits = () => waitsForOrder('emitter', now() ?? 0, person.play.entries);
    expect(now()).toBe(0);
    // The card says "Hands off", then "Read the meter": there is nothing to aim yet.
    expect(waits()).toBe(true);
    person.play.passTo(2_500);
    expect(person.order?.kind).toBe('read');
    expect(waits()).toBe(true);
    person.until('re-aim');
    expect(waits()).toBe(false);
    person.aim();
    expect(now()).toBe(1);
    // The panel reads what it came to.
    expect(waits()).toBe(true);
    person.until('turn');
    if (person.order?.kind !== 'turn') throw new Error('not asked to turn');
    const { axis, eighths } = person.order;
    person.play.take({ kind: 'practise', seat: 'emitter', act: { did: 'turn', axis, eighths } });
    expect(now()).toBe(2);
    person.say('done');
    expect(now()).toBe(3);
    person.until('turn', 'read');
    person.play.passTo(person.play.now + 6_000);
    expect(now()).toBe(4);
    person.say('say again');
    expect(now()).toBe(5);
    person.say('wait');
    person.say('go on');
    expect(now()).toBeUndefined();
  });
});

describe('what is practised is no record', () => {
  const entries = playedByCrew(practice(1));

  it('its first entry says so, and a check of the file says so', () => {
    expect(entries[0]?.fact).toMatchObject({ type: 'opened', setup: { practice: { seed: 1 } } });
    const last = entries.at(-1) as Entry;
    const head = { job: last.job, count: entries.length, hash: last.hash };
    const result = verified(toJsonLines(entries, head));
    expect(result).toEqual({ ok: false, wrong: { kind: 'practice' } });
    expect(!result.ok && wrongText(result.wrong)).toContain('practice');
  });

  it('also where only one act at a simulated pair is in the log', () => {
    const play = new Play(practice(1), [], 0);
    play.take({ kind: 'practise', seat: 'emitter', act: { did: 'aim' } });
    expect(play.entries.at(-1)?.fact.type).toBe('practised');
  });

  it('nobody signs it', () => {
    const record = new VisitRecord({ entries });
    const { head } = new Play(practice(1), [], 0);
    const input: Input = {
      kind: 'sign',
      name: 'S. Example',
      role: 'Supervisor',
      signature: { kind: 'typed', text: 'S. Example' },
      head: { ...head, count: record.state.count },
      findings: [],
    };
    const response = respond(record.state, input, (entries.at(-1) as Entry).at);
    expect(response).toMatchObject({ kind: 'refused', reason: 'not-signable' });
    expect(response.kind === 'refused' && response.text).toContain('practice');
  });

  it('and no hands are simulated in a real job', () => {
    const job = TableJob.crewed(COUNTS);
    const act = { did: 'aim' } as const;
    expect(respond(job.state, { kind: 'practise', seat: 'emitter', act }, job.now)).toMatchObject({
      kind: 'refused',
      reason: 'bad-target',
    });
  });

  it('its setup names no real site', () => {
    expect(practiceSetup(practice(1))).toMatchObject({ site: 'Practice', pair: 'a simulated pair' });
  });
});
