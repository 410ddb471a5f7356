import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { headAfter, seal } from '../../src/log/chain.ts';
import { fromJsonLines, toJsonLines } from '../../src/log/json-lines.ts';
import type { Entry } from '../../src/model/entry.ts';
import { currentAdjusters, currentSetup } from '../../src/model/written.ts';
import { EMPTY_SITE, foldSite, livePairs } from '../../src/site/state.ts';
import { searchOf } from '../../src/visit/search.ts';
import { EMPTY, fold } from '../../src/visit/state.ts';
import { verified } from '../verify/checked.ts';

/** Exports of the demo site, made while logs still said `lash` for backlash. */
const FOLDER = new URL('version-1/', import.meta.url);
const textOf = (file: string): string => readFileSync(new URL(file, FOLDER), 'utf8');
const entriesOf = (file: string): Entry[] => {
  const read = fromJsonLines(textOf(file));
  if (!read.ok) throw new Error(`${file}: ${read.fault} in line ${read.line}`);
  return read.entries;
};
const FILES = readdirSync(FOLDER);
const VISITS = FILES.filter((file) => file !== 'site.jsonl');

describe('a log of version 1', () => {
  it('was written in words that are others today', () => {
    for (const file of FILES) {
      expect(textOf(file)).toContain('"logVersion":1');
      if (VISITS.includes(file)) expect(textOf(file)).toContain('"lash":0');
      expect(textOf(file)).not.toContain('backlash');
    }
  });

  it.each(FILES)('is exported again to the byte: %s', (file) => {
    const entries = entriesOf(file);
    expect(toJsonLines(entries, headAfter(entries.at(-1) as Entry))).toBe(textOf(file));
  });

  it.each(FILES)('still verifies: %s', (file) => {
    expect(verified(textOf(file))).toMatchObject({ ok: true });
  });

  it.each(VISITS)('is folded in today’s words: %s', (file) => {
    const state = entriesOf(file).reduce(fold, EMPTY);
    const { setup } = state;
    expect(setup?.adjusters).toMatchObject({ backlash: 0, maxStep: 12 });
    expect(setup?.adjusters).not.toHaveProperty('lash');
    expect(searchOf(state)?.adjusters).toEqual(setup?.adjusters);
  });

  it('of a site gives its pairs', () => {
    expect(livePairs(entriesOf('site.jsonl').reduce(foldSite, EMPTY_SITE))).toHaveLength(12);
  });

  it('goes on where it ended, and is whole', () => {
    const entries = entriesOf('demo-D1-visit-1.jsonl');
    const last = entries.at(-1) as Entry;
    const remark = seal(
      headAfter(last),
      { actor: 'panel', fact: { type: 'remark', seat: 'panel', text: 'Dust on the lens.' } },
      last.at + 1,
    );
    const text = toJsonLines([...entries, remark], headAfter(remark));
    expect(verified(text)).toMatchObject({ ok: true });
  });

  it('with its old word changed to the new one by hand is caught', () => {
    const text = textOf('demo-D1-visit-1.jsonl')
      .replace('"lash":0,', '')
      .replace('{"adjusters":{', '{"adjusters":{"backlash":0,');
    expect(verified(text)).toMatchObject({ ok: false, wrong: { kind: 'chain', seq: 0, fault: 'hash' } });
  });
});

describe('what was written of the adjusters', () => {
  const today = { name: 'Two screws', maxStep: 12, backlash: 1.5, travel: 80 };
  const { backlash, ...rest } = today;
  const former = { ...rest, lash: backlash };

  it.each([
    ['in today’s words', today],
    ['in those of before', former],
  ])('%s says the same', (_, written) => {
    expect(currentAdjusters(written)).toEqual(today);
  });

  it('is put into today’s words in the plan of a setup, too', () => {
    const [opened] = entriesOf('demo-D1-visit-1.jsonl');
    if (opened?.fact.type !== 'opened') throw new Error('the log opens no job');
    const plan = { id: 'D1', name: 'Dock 1', adjusters: former };
    expect(currentSetup({ ...opened.fact.setup, plan })).toMatchObject({
      adjusters: { backlash: 0 },
      plan: { adjusters: today },
    });
  });
});
