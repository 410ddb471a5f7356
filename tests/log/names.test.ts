import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import { describe, expect, it } from 'vitest';
import { emptyHead, findFault, headAfter, seal } from '../../src/log/chain.ts';
import { fromJsonLines, toJsonLines } from '../../src/log/json-lines.ts';
import { asForgotten, forget, isNamed } from '../../src/log/names.ts';
import type { Draft, Entry } from '../../src/model/entry.ts';
import { Fact } from '../../src/model/facts.ts';
import { FORGOTTEN } from '../../src/model/forgotten.ts';
import type { Head } from '../../src/model/ids.ts';

const JOB = 'job-one-0001';
const salts = ['0'.repeat(32), 'ab'.repeat(16), 'cd'.repeat(16), 'ef'.repeat(16), '12'.repeat(16)];

const person = { name: 'B. Example', firm: 'Larkmoor Fire Systems', competence: 'Card 1234' };
const SEATED: Fact = { type: 'seated', seat: 'emitter', device: 'phone', takeover: false, person };
const SIGNED: Fact = {
  type: 'signed',
  name: 'S. Example',
  role: 'Supervisor',
  firm: 'Larkmoor',
  signature: { kind: 'drawn', strokes: [[[1, 2]]] },
  head: { job: JOB, count: 1, hash: '0'.repeat(64) },
  findings: [],
};
const REMARK: Fact = { type: 'watcher-remark', by: 'W. Example', text: 'Mind the crane.' };
const TOLD: Fact = { type: 'item', list: 'before', item: 'people-told', done: true, note: 'T. Example' };
const AGREED: Fact = { type: 'variation', what: 'Mounted lower', agreedWith: 'V. Example' };
const NAMED = [SEATED, SIGNED, REMARK, TOLD, AGREED];

function logOf(facts: readonly Fact[], head: Head = emptyHead(JOB)) {
  let end = head;
  const entries = facts.map((fact, i) => {
    const entry = seal(end, { actor: 'panel', fact }, 5 + i, undefined, () => salts[i] as string);
    end = headAfter(entry);
    return entry;
  });
  return { entries, head: end };
}

const forgettingOf = (entries: number[]): Fact => ({ type: 'names-forgotten', entries, why: 'Asked for' });

/** A log whose names of the first entry are forgotten, as it is read afterwards. */
function forgotten() {
  const { entries, head } = logOf([...NAMED.slice(0, 2), forgettingOf([0])]);
  return { entries: [forget(entries[0] as Entry), ...entries.slice(1)], head };
}

describe('R110: an entry with names of people', () => {
  // With Node's own SHA-256, and RFC 8785 by the package `canonicalize`, put together here as docs/protocol.md says.
  it('is hashed without them, with the SHA-256 of its salt and of their canonical text in their place', () => {
    const [entry] = logOf([SEATED]).entries;
    const sealed = createHash('sha256')
      .update(Buffer.from(salts[0] as string, 'hex'))
      .update(canonicalize({ person }) as string, 'utf8')
      .digest('hex');
    expect(entry).toMatchObject({ fact: SEATED, sealed, salt: salts[0] });
    const { person: _, ...open } = SEATED;
    const body = { job: JOB, seq: 0, at: 5, actor: 'panel', fact: open, sealed, prev: '0'.repeat(64) };
    expect(entry?.hash).toBe(
      createHash('sha256')
        .update(canonicalize(body) as string)
        .digest('hex'),
    );
  });

  it('has no name in its hashed text, of whatever kind it is', () => {
    for (const { hash, ...entry } of logOf(NAMED).entries) {
      const { salt, ...rest } = entry;
      const [line = ''] = toJsonLines([{ ...entry, hash }], emptyHead(JOB)).split('\n');
      const hashed = line.slice(0, line.indexOf(',"names":'));
      expect(hashed).toContain(rest.sealed);
      expect(hashed).not.toMatch(/Example|Larkmoor|Card|\[\[1,2\]\]/);
    }
  });

  it('has another hash for the same person with another salt, so that nobody can tell that they are one', () => {
    const [one, two] = logOf([SEATED, SEATED]).entries;
    expect(one?.sealed).not.toBe(two?.sealed);
  });

  it('has none where the fact names nobody, or the log is older: then names stand in the hashed text', () => {
    const { person: _, ...nobody } = SEATED;
    expect(logOf([nobody as Fact]).entries[0]).not.toHaveProperty('sealed');
    const old = seal(emptyHead(JOB), { actor: 'panel', fact: SEATED }, 5);
    expect(old).not.toHaveProperty('sealed');
    expect(findFault([old], headAfter(old))).toBeUndefined();
  });

  it('is one of a list item only where it says who was told', () => {
    const other: Fact = {
      type: 'item',
      list: 'before',
      item: 'access-inspected',
      done: false,
      note: 'loose',
    };
    expect(logOf([other]).entries[0]).not.toHaveProperty('sealed');
  });
});

describe('words', () => {
  const said: Draft = {
    actor: 'panel',
    fact: { type: 'said', seat: 'panel', via: 'typed', text: 'told T. Example' },
  };
  const back: Draft = { actor: 'engine', fact: { type: 'readback', of: 1, text: 'Told: T. Example' } };
  const told: Draft = { actor: 'panel', fact: TOLD };
  const reading: Draft = {
    actor: 'panel',
    fact: { type: 'reading', reading: { kind: 'value', value: 50 } },
  };

  it('lie beside their entry where they say who was told, and nothing that is held to them', () => {
    expect([said, told, back].map((draft) => isNamed(draft, [said, told, back]))).toEqual([true, true, true]);
    expect([said, back].map((draft) => isNamed(draft, [said, back]))).toEqual([false, false]);
    const both = [said, told, back, reading];
    expect(both.map((draft) => isNamed(draft, both))).toEqual([false, true, false, false]);
  });
});

describe('R111: names beside the entries', () => {
  it('are whole as they were sealed', () => {
    const { entries, head } = logOf(NAMED);
    expect(findFault(entries, head)).toBeUndefined();
  });

  it.each<[string, (entry: Entry) => Entry, string]>([
    [
      'a changed name',
      (e) => ({ ...e, fact: { ...SEATED, person: { ...person, name: 'b. Example' } } as Fact }),
      'names',
    ],
    [
      'a firm that was added or taken',
      (e) => ({ ...e, fact: { ...SEATED, person: { name: person.name } } as Fact }),
      'names',
    ],
    ['a changed salt', (e) => ({ ...e, salt: '1'.repeat(32) }), 'names'],
    ['a salt that is none', (e) => ({ ...e, salt: '0'.repeat(30) }), 'names'],
    ['names that are gone, with no entry that says so', forget, 'names-missing'],
    ['a salt that is gone while the name stays', ({ salt: _, ...e }) => e as Entry, 'names'],
    ['another hash of them', (e) => ({ ...e, sealed: 'f'.repeat(64) }), 'hash'],
  ])('are damage with %s', (_, change, fault) => {
    const { entries, head } = logOf(NAMED);
    const changed = [change(entries[0] as Entry), ...entries.slice(1)];
    expect(findFault(changed, head)).toEqual({ seq: 0, fault });
  });

  it('may be gone where a later entry says that they were forgotten, and twice', () => {
    const { entries, head } = forgotten();
    expect(entries[0]?.fact).toMatchObject({ person: { name: FORGOTTEN } });
    expect(findFault(entries, head)).toBeUndefined();
    const twice = logOf([...NAMED.slice(0, 2), forgettingOf([0]), forgettingOf([0])]);
    expect(findFault(asForgotten(twice.entries), twice.head)).toBeUndefined();
  });

  it('are damage where they are there in spite of it, or another name is in their place', () => {
    const { entries, head } = logOf([...NAMED.slice(0, 2), forgettingOf([0])]);
    expect(findFault(entries, head)).toEqual({ seq: 0, fault: 'names-back' });
    const [first, ...rest] = forgotten().entries as [Entry, ...Entry[]];
    const other = { ...first, fact: { ...first.fact, person: { name: 'X. Example' } } as Fact };
    expect(findFault([other, ...rest], head)).toEqual({ seq: 0, fault: 'names' });
  });

  it('are not excused by an entry before them, nor by one that names another entry', () => {
    for (const facts of [
      [forgettingOf([1]), SEATED],
      [SIGNED, SEATED, forgettingOf([0])],
    ]) {
      const { entries, head } = logOf(facts as Fact[]);
      const gone = entries.map((entry) => (entry.fact.type === 'names-forgotten' ? entry : forget(entry)));
      expect(findFault(gone, head)).toEqual({ seq: 1, fault: 'names-missing' });
    }
  });

  it('go from a copy that a phone kept, when the entry comes', () => {
    const { entries } = logOf([...NAMED, forgettingOf([0, 1, 2, 3, 4])]);
    const kept = asForgotten(entries);
    expect(JSON.stringify(kept)).not.toMatch(/Example|Larkmoor|Card/);
    expect(kept.every(({ salt }) => salt === undefined)).toBe(true);
    for (const { fact } of kept) expect(Fact.safeParse(fact).success).toBe(true);
  });
});

describe('a file of JSON Lines', () => {
  it('has the names beside the text that was hashed, and gives the same log again', () => {
    const { entries, head } = logOf(NAMED);
    const text = toJsonLines(entries, head);
    expect(fromJsonLines(text)).toEqual({ ok: true, entries, head });
    for (const line of text.split('\n').slice(0, NAMED.length)) {
      const [, hash, body] = /^\{"hash":"(.{64})","entry":(.*),"names":/.exec(line) ?? [];
      expect(
        createHash('sha256')
          .update(body ?? '', 'utf8')
          .digest('hex'),
      ).toBe(hash);
    }
  });

  it('gives a log whose names were forgotten again, too', () => {
    const { entries, head } = forgotten();
    const text = toJsonLines(entries, head);
    expect(text).not.toContain('B. Example');
    expect(fromJsonLines(text)).toEqual({ ok: true, entries, head });
  });

  const lineWith = (change: (line: string) => string) => {
    const { entries, head } = logOf([SEATED]);
    const [line = '', ...rest] = toJsonLines(entries, head).split('\n');
    const changed = change(line);
    expect(changed).not.toBe(line);
    const read = fromJsonLines([changed, ...rest].join('\n'));
    return read.ok ? findFault(read.entries, read.head) : { line: read.line, fault: read.fault };
  };

  it.each<[string, (line: string) => string, object]>([
    ['another name', (line) => line.replace('B. Example', 'C. Example'), { seq: 0, fault: 'names' }],
    ['another salt', (line) => line.replace('"salt":"0', '"salt":"1'), { seq: 0, fault: 'names' }],
    ['no names', (line) => line.replace(/,"names":.*$/, '}'), { seq: 0, fault: 'names-missing' }],
    [
      'names that stand elsewhere, too',
      (line) => line.replace('"of":{', '"of":{"device":"x",'),
      { line: 1, fault: 'not-canonical' },
    ],
    [
      'a field that nobody knows',
      (line) => line.replace('"of":{', '"of":{"aa":"x",'),
      { line: 1, fault: 'unknown-field' },
    ],
    [
      'names of another order',
      (line) => line.replace(/"competence":"Card 1234",(.*?)\}/, '$1,"competence":"Card 1234"}'),
      { line: 1, fault: 'not-canonical' },
    ],
    ['names without a salt', (line) => line.replace(/,"salt":"0*"/, ''), { line: 1, fault: 'not-canonical' }],
    [
      'the salt in the hashed text',
      (line) => line.replace('"seq":0', `"salt":"${'0'.repeat(32)}","seq":0`),
      { line: 1, fault: 'not-canonical' },
    ],
    [
      'names inside the entry, so that its halves are no JSON',
      (line) => line.replace('},"job":', '},"names":{},"job":'),
      { line: 1, fault: 'not-an-entry' },
    ],
    [
      // Read by a pattern that goes back and forth, this line takes minutes.
      'names inside the entry a hundred thousand times, and something else at the end',
      (line) =>
        line.replace('},"job":', `}${',"names":{}'.repeat(100_000)},"job":`).replace(/\}$/, ',"more":1}'),
      { line: 1, fault: 'not-an-entry' },
    ],
    [
      'names beside an entry that has no hash of any',
      (line) => line.replace(/"sealed":"[0-9a-f]*",/, ''),
      { line: 1, fault: 'not-canonical' },
    ],
  ])('is wrong with %s', (_, change, fault) => {
    expect(lineWith(change)).toEqual(fault);
  });
});
