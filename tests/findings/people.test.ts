import { describe, expect, it } from 'vitest';
import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import type { Actor, Fact, FactOf } from '../../src/model/facts.ts';
import { peopleOf } from '../../src/model/people.ts';
import { isSameName, Person, type Person as Somebody } from '../../src/model/person.ts';
import { NEUTRAL_ADJUSTERS } from '../../src/model/profile.ts';
import { VisitRecord } from '../../src/record/visit-record.ts';
import { COUNTS } from '../conversation/table.ts';

const A: Somebody = { name: 'A. Example', firm: 'Larkmoor Fire Systems' };
const B: Somebody = { name: 'B. Example' };

type Sits = Partial<Omit<FactOf<'seated'>, 'type' | 'seat'>>;
const sits = (seat: 'panel' | 'emitter', more: Sits): [Actor, Fact] => [
  'server',
  { type: 'seated', seat, device: '', takeover: false, ...more },
];
const speaks = (seat: 'panel' | 'emitter'): [Actor, Fact] => [seat, { type: 'remark', seat, text: 'Here.' }];
const OPENED: [Actor, Fact] = [
  'panel',
  {
    type: 'opened',
    setup: { site: 'Hall', pair: 'B2', meter: COUNTS, adjusters: NEUTRAL_ADJUSTERS },
    logVersion: 2,
  },
];

function logOf(...facts: [Actor, Fact][]) {
  let head = emptyHead('people-0001');
  return [OPENED, ...facts].map(([actor, fact]) => {
    const entry = seal(head, { actor, fact }, 1_800_000_000_000 + head.count);
    head = headAfter(entry);
    return entry;
  });
}

const found = (...facts: [Actor, Fact][]) =>
  new VisitRecord({ entries: logOf(...facts) }).findings
    .filter(({ id }) => id === 'unnamed' || id === 'same-in-both')
    .map(({ id, entries, about }) => [id, entries, about]);

describe('who was not named', () => {
  it.each<[string, [Actor, Fact][], unknown[]]>([
    ['is nobody while both are named', [sits('panel', { person: A }), speaks('panel')], []],
    ['is nobody while the nameless seat says nothing', [sits('panel', {})], []],
    [
      'is who said something without a name',
      [sits('panel', {}), speaks('panel')],
      [['unnamed', [1], ['panel']]],
    ],
    [
      'is still so when a name comes later',
      [sits('panel', {}), speaks('panel'), sits('panel', { person: A, handedOn: true })],
      [['unnamed', [1], ['panel']]],
    ],
    [
      'is not who gave a name before saying anything',
      [sits('panel', {}), sits('panel', { person: A }), speaks('panel')],
      [],
    ],
    [
      'is the next one too, after a takeover without a name',
      [
        sits('emitter', { person: B }),
        speaks('emitter'),
        sits('emitter', { takeover: true }),
        speaks('emitter'),
      ],
      [['unnamed', [3], ['emitter']]],
    ],
    [
      'is both, in one finding',
      [sits('panel', {}), sits('emitter', {}), speaks('emitter'), speaks('panel')],
      [['unnamed', [1, 2], ['emitter', 'panel']]],
    ],
  ])('%s', (_, facts, expected) => {
    expect(found(...facts)).toEqual(expected);
  });
});

describe('the same in both seats', () => {
  const both = (one: Sits, other: Sits) => [sits('panel', one), sits('emitter', other)] as const;
  it.each<[string, [Actor, Fact][], unknown[]]>([
    ['is nothing with two people', [...both({ person: A }, { person: B })], []],
    ['is nothing where nobody is named', [...both({}, {})], []],
    [
      'is nothing with the names of two firms but not of one person',
      [...both({ person: A }, { person: { ...B, firm: A.firm } })],
      [],
    ],
    [
      'is one person, in another case and of another firm',
      [...both({ person: A }, { person: { name: 'a.example', firm: 'Quay Estates' } })],
      [['same-in-both', [1, 2], ['person']]],
    ],
    [
      'is one phone',
      [...both({ phone: '0000000a' }, { phone: '0000000a' })],
      [['same-in-both', [1, 2], ['phone']]],
    ],
    ['is nothing with two phones', [...both({ phone: '0000000a' }, { phone: '0000000b' })], []],
    [
      'is one person on one phone, said once',
      [...both({ person: A, phone: '0000000a' }, { person: A, phone: '0000000a' })],
      [['same-in-both', [1, 2], ['person', 'phone']]],
    ],
    [
      'is one after the other, too',
      [...both({ person: A }, { person: B }), sits('panel', { person: B, takeover: true })],
      [['same-in-both', [2, 3], ['person']]],
    ],
    [
      'is nothing when a phone comes back to its own seat',
      [sits('panel', { person: A }), sits('panel', { person: A })],
      [],
    ],
  ])('%s', (_, facts, expected) => {
    expect(found(...facts)).toEqual(expected);
  });
});

it('each entry is of who sat there then; a log without names has nobody', () => {
  const entries = logOf(
    sits('panel', { person: A }),
    sits('emitter', {}),
    speaks('panel'),
    speaks('emitter'),
    sits('emitter', { person: B, takeover: true }),
    speaks('emitter'),
    ['engine', { type: 'notice', code: 'x', text: 'x' }],
    sits('panel', { handedOn: true }),
    speaks('panel'),
  );
  expect(peopleOf(entries).map((person) => person?.name)).toEqual([
    undefined,
    A.name,
    undefined,
    A.name,
    undefined,
    B.name,
    B.name,
    undefined,
    undefined,
    undefined,
  ]);
});

describe('a name', () => {
  // Unicode Standard Annex 15: "é" in one code point and in two are canonically equivalent.
  it.each([
    ['R. Example', 'R. Example', true],
    ['R. Example', ' r.  EXAMPLE ', true],
    ['R. Example', 'R.Example', true],
    ['Ren\u00e9 Example', 'Rene\u0301 Example', true],
    ['Ren\u00e9 Example', 'Rene Example', false],
    ['R. Example', 'R Example', false],
    ['R. Example', 'R. Examples', false],
    ['R. Example', 'S. Example', false],
  ])('%j and %j: the same is %j', (one, other, same) => {
    expect(isSameName(one, other)).toBe(same);
  });

  it.each([
    ['of 80 letters', 'x'.repeat(80), true],
    ['of 81 letters', 'x'.repeat(81), false],
    ['of nothing', '  ', false],
    ['with a NUL', 'A\u0000B', false],
    ['with an override of the writing direction', 'A\u202eB', false],
    ['with a line break', 'A\nB', false],
    ['with letters of any script', 'Žofie \u0645\u062b\u0627\u0644', true],
  ])('%s', (_, name, taken) => {
    expect(Person.safeParse({ name }).success).toBe(taken);
    expect(Person.safeParse({ name: 'A', firm: name }).success).toBe(taken);
  });

  it('has a competence of at most 120 letters beside it', () => {
    expect(Person.safeParse({ name: 'A', competence: 'x'.repeat(120) }).success).toBe(true);
    expect(Person.safeParse({ name: 'A', competence: 'x'.repeat(121) }).success).toBe(false);
  });
});
