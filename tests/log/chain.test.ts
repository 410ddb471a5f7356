import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bodyOf,
  emptyHead,
  entryJson,
  findFault,
  GENESIS,
  hashOf,
  headAfter,
  seal,
} from '../../src/log/chain.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Head } from '../../src/model/ids.ts';

const JOB = 'job-one-0001';

function chain(texts: string[]): { entries: Entry[]; head: Head } {
  let head = emptyHead(JOB);
  const entries = texts.map((text, i) => {
    const entry = seal(
      head,
      { actor: 'panel', fact: { type: 'remark', seat: 'panel', text } },
      1_700_000_000_000 + i,
    );
    head = headAfter(entry);
    return entry;
  });
  return { entries, head };
}

describe('the hash', () => {
  // FIPS 180-4; messages and digests of NIST's example values for SHA-256, from memory.
  it.each([
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
  ])('is SHA-256 (FIPS 180-4), message %#', (message, digest) => {
    expect(hashOf(message)).toBe(digest);
  });

  it('is the one of the platform’s own library, for any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(hashOf(text)).toBe(createHash('sha256').update(text, 'utf8').digest('hex'));
      }),
    );
  });
});

describe('the hashed text', () => {
  const canonical = (value: object) => bodyOf(value as Entry);

  // RFC 8785, sections 3.2.2 to 3.2.4; from memory.
  it('is canonical JSON: the sample of RFC 8785', () => {
    const sample = JSON.parse(`{
      "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
      "string": "\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\"\\/",
      "literals": [null, true, false]
    }`);
    expect(canonical(sample)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  it('sorts by UTF-16 code units, as RFC 8785 section 3.2.3 shows', () => {
    const sample = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    };
    expect(Object.values(JSON.parse(canonical(sample)))).toHaveLength(7);
    const places = Object.values(sample).map((name) => [canonical(sample).indexOf(name), name] as const);
    expect(places.sort((a, b) => a[0] - b[0]).map(([, name]) => name)).toEqual([
      'Carriage Return',
      'One',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ]);
  });

  // RFC 8785, appendix B: IEEE 754 bits and their JSON text; from memory.
  it.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['8000000000000001', '-5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['ffefffffffffffff', '-1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['c340000000000000', '-9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['44b52d02c7e14af7', '1.0000000000000001e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef4f', '999999999999999900000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555553', '333333333.3333332'],
    ['41b3de4355555554', '333333333.33333325'],
    ['41b3de4355555555', '333333333.3333333'],
    ['41b3de4355555556', '333333333.3333334'],
    ['41b3de4355555557', '333333333.33333343'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('writes the number of bits %s as %s (RFC 8785, appendix B)', (bits, text) => {
    const value = Buffer.from(bits, 'hex').readDoubleBE();
    expect(canonical({ value })).toBe(`{"value":${text}}`);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])('has no %s (RFC 8785, section 3.2.2.3)', (number) => {
    expect(() => canonical({ number })).toThrow();
  });

  it('leaves out the hash itself, and is the same whatever the order of the fields', () => {
    const [entry] = chain(['x']).entries as [Entry];
    const backwards = Object.fromEntries(Object.entries(entry).reverse()) as Entry;
    expect(bodyOf(backwards)).toBe(bodyOf(entry));
    expect(bodyOf(entry)).not.toContain(entry.hash);
    expect(hashOf(bodyOf(entry))).toBe(entry.hash);
  });
});

describe('the chain', () => {
  it('gives an entry as the same JSON, whether it was sealed here or read', () => {
    for (const entry of chain(['one', 'tw\u2028o "ü"\n']).entries) {
      expect(JSON.parse(entryJson(entry))).toEqual(entry);
      expect(JSON.parse(entryJson({ ...entry }))).toEqual(entry);
    }
  });

  it('begins with 64 zeros, and each entry holds the hash of the one before', () => {
    const { entries, head } = chain(['one', 'two', 'three']);
    expect(GENESIS).toBe('0000000000000000000000000000000000000000000000000000000000000000');
    expect(entries.map((e) => e.prev)).toEqual([GENESIS, entries[0]?.hash, entries[1]?.hash]);
    expect(entries.map((e) => e.seq)).toEqual([0, 1, 2]);
    expect(head).toEqual({ job: JOB, count: 3, hash: entries[2]?.hash });
    expect(findFault(entries, head)).toBeUndefined();
  });

  it('holds when the entries went through JSON', () => {
    const { entries, head } = chain(['ü', '\u2028', '"', '\\']);
    expect(findFault(JSON.parse(JSON.stringify(entries)), head)).toBeUndefined();
  });

  const five = () => chain(['0', '1', '2', '3', '4']);
  const changed = (edit: (entries: Entry[]) => void) => {
    const { entries, head } = five();
    edit(entries);
    return findFault(entries, head);
  };
  const at = (entries: Entry[], i: number) => entries[i] as Entry;

  it.each<[string, (entries: Entry[]) => void, object]>([
    [
      'a changed fact',
      (e) => {
        at(e, 2).fact = { type: 'remark', seat: 'panel', text: 'x' };
      },
      { seq: 2, fault: 'hash' },
    ],
    [
      'a changed time',
      (e) => {
        at(e, 2).at += 1;
      },
      { seq: 2, fault: 'hash' },
    ],
    [
      'a changed actor',
      (e) => {
        at(e, 2).actor = 'emitter';
      },
      { seq: 2, fault: 'hash' },
    ],
    [
      'an added message id',
      (e) => {
        at(e, 2).ref = 'message-1';
      },
      { seq: 2, fault: 'hash' },
    ],
    [
      'an entry of another job',
      (e) => {
        at(e, 2).job = 'job-two-0002';
      },
      { seq: 2, fault: 'job' },
    ],
    [
      'a removed entry',
      (e) => {
        e.splice(2, 1);
      },
      { seq: 2, fault: 'order' },
    ],
    [
      'a doubled entry',
      (e) => {
        e.splice(2, 0, at(e, 2));
      },
      { seq: 3, fault: 'order' },
    ],
    [
      'two entries exchanged',
      (e) => {
        e.splice(2, 2, at(e, 3), at(e, 2));
      },
      { seq: 2, fault: 'order' },
    ],
    [
      'a cut tail',
      (e) => {
        e.splice(3);
      },
      { seq: 3, fault: 'head' },
    ],
    [
      'a removed beginning',
      (e) => {
        e.splice(0, 1);
      },
      { seq: 0, fault: 'order' },
    ],
    [
      'no entry at all',
      (e) => {
        e.splice(0);
      },
      { seq: 0, fault: 'head' },
    ],
  ])('shows %s', (_, edit, fault) => {
    expect(changed(edit)).toEqual(fault);
  });

  it('shows an entry that was changed and sealed again, at the one after it', () => {
    const fault = changed((entries) => {
      const { hash: _, ...body } = at(entries, 2);
      const forged = { ...body, at: body.at + 1 };
      entries[2] = { ...forged, hash: hashOf(bodyOf(forged)) };
    });
    expect(fault).toEqual({ seq: 3, fault: 'prev' });
  });

  it.each<[string, (head: Head) => Head]>([
    ['an entry more', (head) => ({ ...head, count: 6 })],
    ['an entry less', (head) => ({ ...head, count: 4 })],
    ['another hash', (head) => ({ ...head, hash: GENESIS })],
  ])('shows a head that is kept elsewhere and has %s', (_, other) => {
    const { entries, head } = five();
    expect(findFault(entries, head)).toBeUndefined();
    expect(findFault(entries, other(head))).toEqual({ seq: 5, fault: 'head' });
  });

  it('of no entries is whole where none were ever written', () => {
    expect(findFault([], emptyHead(JOB))).toBeUndefined();
    expect(emptyHead(JOB)).toEqual({ job: JOB, count: 0, hash: GENESIS });
  });

  it('shows a chain rewritten to its end only by a head that is kept elsewhere', () => {
    const forged = chain(['0', '1', 'two', '3', '4']);
    expect(findFault(forged.entries, forged.head)).toBeUndefined();
    expect(findFault(forged.entries, five().head)).toEqual({ seq: 5, fault: 'head' });
  });

  it('found whole up to an entry is looked at from there on, and has to go on from its hash', () => {
    const whole = five();
    const upTo = (count: number) => headAfter(at(whole.entries, count - 1));
    expect(findFault(whole.entries, whole.head, upTo(3))).toBeUndefined();
    const late = whole.entries.with(4, { ...at(whole.entries, 4), at: 0 });
    expect(findFault(late, whole.head, upTo(3))).toEqual({ seq: 4, fault: 'hash' });
    const other = chain(['0', '1', 'two', '3', '4']);
    expect(findFault(other.entries, other.head, upTo(3))).toEqual({ seq: 3, fault: 'prev' });
    expect(findFault(whole.entries.slice(0, 2), whole.head, upTo(3))).toEqual({ seq: 3, fault: 'head' });
  });

  it('shows any single changed character of any entry', () => {
    const whole = five();
    fc.assert(
      fc.property(fc.nat(4), fc.nat(), fc.constantFrom(...'0123456789abcdefXYZ'), (i, where, letter) => {
        const text = JSON.stringify(whole.entries[i]);
        const position = where % text.length;
        if (text[position] === letter) return;
        const altered = text.slice(0, position) + letter + text.slice(position + 1);
        let entry: Entry;
        try {
          entry = JSON.parse(altered);
        } catch {
          return;
        }
        expect(findFault(whole.entries.toSpliced(i, 1, entry), whole.head)).toBeDefined();
      }),
    );
  });
});
