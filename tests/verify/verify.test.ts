import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { emptyHead, headAfter, seal } from '../../src/log/chain.ts';
import { toJsonLines } from '../../src/log/json-lines.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Fact, FactOf } from '../../src/model/facts.ts';
import type { Head } from '../../src/model/ids.ts';
import { wrongText } from '../../src/phrases/verify.ts';
import { playedVisit } from '../findings/site.ts';
import { demo } from '../server/played-site.ts';
import { verified } from './checked.ts';

const LOG = playedVisit(['misread', 'takeover']);
const HEAD = headAfter(LOG.at(-1) as Entry);
const TEXT = toJsonLines(LOG, HEAD);

/** The log with some facts changed and every hash made new: only a replay can find that. */
function forged(change: (fact: Fact, seq: number) => Fact): string {
  let head: Head = emptyHead(HEAD.job);
  const entries = LOG.map(({ actor, fact, at, ref }) => {
    const changed = change(fact, head.count);
    const signed = changed.type === 'signed' ? { ...changed, head } : changed;
    const entry = seal(head, { actor, fact: signed, ...(ref !== undefined && { ref }) }, at);
    head = headAfter(entry);
    return entry;
  });
  return toJsonLines(entries, head);
}

const wrong = (text: string) => {
  const result = verified(text);
  return result.ok ? undefined : result.wrong;
};

const at = (type: Fact['type'], n = 0) => LOG.filter(({ fact }) => fact.type === type)[n]?.seq as number;

describe('an exported log', () => {
  it('is whole as it was written, and gives the findings of the job', () => {
    const result = verified(TEXT);
    expect(result.ok && result.findings.map(({ id }) => id)).toEqual(['corrections', 'takeover']);
    expect(result.ok && result.head).toEqual(HEAD);
  });

  it.each([
    ['another version', 0],
    ['a version before versions were named', undefined],
  ])('written by %s of the engine is not compared with this version, and the result says so', (_, engine) => {
    const other = forged((fact) => {
      if (fact.type === 'opened') {
        const { engine: __, ...opened } = fact;
        return engine === undefined ? opened : { ...opened, engine };
      }
      return fact.type === 'instruction' ? { ...fact, advice: { ...fact.advice, rule: 'other' } } : fact;
    });
    expect(verified(other)).toMatchObject({ ok: true, replayed: false });
    expect(verified(TEXT)).toMatchObject({ replayed: true });
  });

  it('is wrong when any single character was changed', () => {
    fc.assert(
      fc.property(fc.nat(TEXT.length - 2), fc.constantFrom('0', 'x', '"', ' '), (i, character) => {
        fc.pre(TEXT[i] !== character);
        expect(verified(TEXT.slice(0, i) + character + TEXT.slice(i + 1)).ok).toBe(false);
      }),
      { numRuns: 40 },
    );
  });

  it.each([
    ['an entry taken out', (lines: string[]) => lines.toSpliced(7, 1), { kind: 'chain', seq: 7 }],
    [
      'two entries swapped',
      (lines: string[]) => lines.with(7, lines[8] as string).with(8, lines[7] as string),
      { kind: 'chain', seq: 7 },
    ],
    [
      'its tail cut off with the closing line',
      (lines: string[]) => lines.slice(0, 20),
      { kind: 'file', fault: 'no-head' },
    ],
    [
      'its tail cut off before the closing line',
      (lines: string[]) => [...lines.slice(0, 20), lines.at(-1) as string],
      { kind: 'chain', seq: 20, fault: 'head' },
    ],
  ])('with %s is wrong, and the first wrong entry is named', (_, change, fault) => {
    const lines = change(TEXT.trimEnd().split('\n'));
    expect(wrong(`${lines.join('\n')}\n`)).toMatchObject(fault);
  });

  it('with a changed reading and new hashes does not say what was said', () => {
    const target = at('reading', 4);
    const { from } = (LOG[target] as Entry).fact as FactOf<'reading'>;
    const text = (engine?: number) =>
      forged((fact, seq) => {
        if (fact.type === 'opened' && engine !== undefined) return { ...fact, engine };
        return seq === target && fact.type === 'reading'
          ? { ...fact, reading: { kind: 'value', value: 61 } }
          : fact;
      });
    expect(wrong(text())).toEqual({ kind: 'words', seq: target, from });
    // Nor does it help to name an engine that cannot be asked.
    expect(wrong(text(99))).toEqual({ kind: 'words', seq: target, from });
    const plain = at('reading', 0);
    const wordless = forged((fact, seq) => {
      if (seq !== plain || fact.type !== 'reading') return fact;
      const { from: _, ...rest } = fact;
      return rest;
    });
    expect(wrong(wordless)).toEqual({ kind: 'words', seq: plain, from: undefined });
  });

  it('with a changed reading, changed words and new hashes differs from what the engine advises', () => {
    const target = at('reading', 4);
    const { from } = (LOG[target] as Entry).fact as FactOf<'reading'>;
    const text = forged((fact, seq) => {
      if (seq === from && fact.type === 'said') return { ...fact, text: '61' };
      return seq === target && fact.type === 'reading'
        ? { ...fact, reading: { kind: 'value', value: 61 } }
        : fact;
    });
    const fault = wrong(text);
    expect(fault).toMatchObject({ kind: 'advice' });
    expect(fault?.kind === 'advice' && fault.seq).toBeGreaterThan(target);
  });

  it.each(demo.visits.map(({ pair, job, entries }) => [pair, job, entries] as const))(
    'of %s says nothing that was not said: %s',
    (_, __, entries) => {
      expect(wrong(toJsonLines(entries, headAfter(entries.at(-1) as Entry)))).toBeUndefined();
    },
  );

  it('with a changed instruction and new hashes is wrong at that instruction', () => {
    const target = at('instruction', 9);
    const text = forged((fact, seq) =>
      seq === target && fact.type === 'instruction'
        ? { ...fact, advice: { ...fact.advice, because: [] } }
        : fact,
    );
    expect(wrong(text)).toEqual({ kind: 'advice', seq: target });
  });

  it('signed with other findings than it has is wrong at the signature', () => {
    const text = forged((fact) => (fact.type === 'signed' ? { ...fact, findings: [] } : fact));
    expect(wrong(text)).toEqual({ kind: 'findings', seq: at('signed') });
  });

  it('whose signature is of another head is wrong at the signature', () => {
    const lines = forged((fact) => fact);
    expect(wrong(lines)).toBeUndefined();
    const signed = at('signed');
    let head = headAfter(LOG[signed - 1] as Entry);
    const entry = LOG[signed] as Entry;
    const fact = { ...entry.fact, head: { ...head, hash: 'f'.repeat(64) } } as Fact;
    const last = seal(head, { actor: entry.actor, fact }, entry.at);
    head = headAfter(last);
    expect(wrong(toJsonLines([...LOG.slice(0, signed), last], head))).toEqual({
      kind: 'signature',
      seq: signed,
    });
  });

  it.each([
    ['in another case', 'with a declaration', { text: 's.EXAMPLE' }, undefined],
    ['of somebody else', 'with a declaration', { text: 'R. Example' }, 'signer'],
    [
      'of somebody else',
      'from before declarations',
      { text: 'R. Example', declaration: undefined },
      undefined,
    ],
  ])('a typed name %s, %s', (_, __, { text, ...more }, kind) => {
    const signed = LOG.findIndex(({ fact }) => fact.type === 'signed');
    const entry = LOG[signed] as Entry;
    const before = headAfter(LOG[signed - 1] as Entry);
    const { declaration, ...rest } = { ...(entry.fact as FactOf<'signed'>), ...more };
    const signature = { kind: 'typed', text } as const;
    const fact = { ...rest, signature, ...(declaration !== undefined && { declaration }) };
    const last = seal(before, { actor: entry.actor, fact }, entry.at);
    const result = verified(toJsonLines([...LOG.slice(0, signed), last], headAfter(last)));
    expect(result.ok ? undefined : result.wrong.kind).toBe(kind);
  });

  it('of a site is checked for its chain too', () => {
    const fact: Fact = { type: 'site-opened', site: 'Hollin Bridge', logVersion: 1 };
    const entry = seal(emptyHead('site-of-ours'), { actor: 'supervisor', fact }, 1);
    expect(verified(toJsonLines([entry], headAfter(entry)))).toMatchObject({ ok: true, findings: [] });
  });

  it('any text gets a result, and never throws', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const fault = wrong(text);
        expect(fault && wrongText(fault)).toMatch(/^(Line|Entry) \d+ /);
      }),
    );
  });
});
