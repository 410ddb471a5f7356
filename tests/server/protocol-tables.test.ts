import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import * as z from 'zod/mini';
import { ANSWERS, REPORTS } from '../../src/conversation/expectation.ts';
import { Intent } from '../../src/grammar/intent.ts';
import { parse } from '../../src/grammar/parse.ts';
import { ENGLISH_FIGURES, spoken } from '../../src/grammar/speak.ts';
import { Action, Advice, Question } from '../../src/model/advice.ts';
import { CHECKLISTS } from '../../src/model/checklists.ts';
import { Fact } from '../../src/model/facts.ts';
import { AsLeft, HandOverFact } from '../../src/model/hand-over.ts';
import { kindsOf } from '../../src/model/kinds.ts';
import { Mounting, movesAlong } from '../../src/model/mounting.ts';
import { PairPlan } from '../../src/model/pair-plan.ts';
import { PhotoShows } from '../../src/model/photo.ts';
import { HandAct } from '../../src/model/practice.ts';
import { JobSetup } from '../../src/model/setup.ts';
import { answersTo } from '../../src/phrases/answers.ts';
import { DECLARATION } from '../../src/phrases/declaration.ts';
import { askItem } from '../../src/phrases/items.ts';
import { ClientMessage, OLDEST_PROTOCOL_VERSION, PROTOCOL_VERSION } from '../../src/protocol/socket.ts';
import { SETUP } from '../client/fixtures.ts';
import { allWords, quoted, tableOf, wordsFor } from './protocol-tables.ts';

const { meter } = SETUP;

type Kinds = { def: { options: readonly z.ZodMiniObject[] } };

/** The kinds of a union with the names of their fields: those that must be there, and those that may. */
function fieldsOf({ def: { options } }: Kinds, by: string) {
  return options
    .map(({ shape }) => {
      const { [by]: kind, ...fields } = shape as Record<string, z.ZodMiniType>;
      const names = Object.keys(fields).sort();
      const isOptional = (name: string) => fields[name]?.safeParse(undefined).success;
      return {
        kind: String((kind as z.ZodMiniLiteral<string>).def.values[0]),
        must: names.filter((name) => !isOptional(name)),
        may: names.filter(isOptional),
      };
    })
    .sort((one, other) => one.kind.localeCompare(other.kind));
}

/** Every name of an enumeration in what a kind holds, at any depth. */
function namesIn(schema: unknown): string[] {
  if (Array.isArray(schema)) return schema.flatMap(namesIn);
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([key, value]) => (key === 'enum' ? value : namesIn(value)));
}

const enumsOf = (schema: z.ZodMiniType): string[] =>
  namesIn(z.toJSONSchema(schema, { unrepresentable: 'any' }));

const INTENTS: string[] = kindsOf(Intent, 'kind');

/** The kinds of what these words mean, or why they mean nothing. */
const meaning = (words: string): string[] => {
  const heard = parse(words, { meter });
  return heard.kind === 'understood' ? heard.intents.map(({ kind }) => kind) : [heard.kind];
};

describe('the tables of docs/protocol.md', () => {
  it.each<[string, Kinds, string]>([
    ['`t`', ClientMessage as unknown as Kinds, 't'],
    ['`fact.type`', HandOverFact as unknown as Kinds, 'type'],
    ['`act.did`', HandAct as unknown as Kinds, 'did'],
  ])('of %s have every kind, what it must have and what it may have', (heading, union, by) => {
    const told = tableOf(heading).map(([kind, must, may]) => ({
      kind: quoted(kind)[0] ?? '',
      must: quoted(must).sort(),
      may: quoted(may).sort(),
    }));
    expect(told.sort((one, other) => one.kind.localeCompare(other.kind))).toEqual(fieldsOf(union, by));
  });

  it.each<[string, Kinds]>([
    ['`action.kind`', Action as unknown as Kinds],
    ['`question.kind`', Question as unknown as Kinds],
  ])('of %s have every kind, its fields, and the names that can stand in them', (heading, union) => {
    const rows = tableOf(heading);
    const kinds = fieldsOf(union, 'kind');
    expect(rows.map(([kind]) => quoted(kind)[0]).sort()).toEqual(kinds.map(({ kind }) => kind));
    for (const { kind, must, may } of kinds) {
      const [, fields = ''] = rows.find(([first]) => first === `\`${kind}\``) ?? [];
      const option = union.def.options.find(({ shape }) =>
        (shape.kind as z.ZodMiniLiteral).def.values.includes(kind),
      );
      expect(quoted(fields)).toEqual(expect.arrayContaining([...must, ...may]));
      // What stands in these two has tables of its own.
      if (kind !== 'ask' && kind !== 'confirm-item')
        expect(quoted(fields)).toEqual(expect.arrayContaining(enumsOf(option as z.ZodMiniObject)));
      for (const name of may) expect(fields).toMatch(new RegExp(`\`${name}\`[^\`]*\\([^)]*left out`));
      for (const name of must) expect(fields).not.toMatch(new RegExp(`\`${name}\`[^\`]*\\([^\`)]*left out`));
    }
  });

  const fieldsOfFact = (type: string) => {
    const option = Fact.def.options.find(({ shape }) => shape.type.def.values.some((name) => name === type));
    const { type: _, ...fields } = option?.shape ?? {};
    return fields;
  };

  it.each<[string, object]>([
    ['field of `instruction`', fieldsOfFact('instruction')],
    ['field of `advice`', Advice.shape],
    ['field of `values`', AsLeft.shape],
    ['field of `setup`', JobSetup.shape],
    ['field of a plan', PairPlan.shape],
  ])('of every %s have all, and no other', (heading, shape) => {
    const told = tableOf(heading).flatMap(([names]) => quoted(names));
    expect(told.sort()).toEqual(Object.keys(shape).sort());
  });

  it.each<[string[], z.ZodMiniType]>([
    [['`t`', '`fact.type`', '`act.did`', '`action.kind`'], ClientMessage],
    [
      ['field of `setup`', 'field of `values`'],
      z.omit(JobSetup, { meter: true, adjusters: true, plan: true }),
    ],
  ])('of %s name all that can stand in their fields', (headings, schema) => {
    const told = headings.flatMap((heading) => tableOf(heading).flatMap((cells) => cells.flatMap(quoted)));
    // `field` is one of the table of values.
    const names = enumsOf(schema).filter((name) => !(name in AsLeft.shape));
    expect(told).toEqual(expect.arrayContaining(names));
  });

  it('have every item of the checklists, in its list, as it is asked', () => {
    const asked = Object.entries(CHECKLISTS).flatMap(([list, items]) =>
      items.map((item) => [`\`${item}\``, `\`${list}\``, askItem(item).show]),
    );
    expect(tableOf('`item`')).toEqual(asked);
  });
});

describe('what else a client needs of docs/protocol.md', () => {
  const doc = readFileSync(new URL('../../docs/protocol.md', import.meta.url), 'utf8');
  /** What stands between back quotes in the one sentence that begins like this, up to the mark that ends it. */
  const named = (begin: string, end: string): string[] => {
    const [, rest, ...others] = doc.split(begin);
    if (rest === undefined || others.length > 0) throw new Error(`docs/protocol.md has not one "${begin}"`);
    return quoted(rest.slice(0, rest.indexOf(end)));
  };

  it('is the version that the server speaks, and the oldest that it takes', () => {
    expect(named('\nVersion: ', '. Times')).toEqual([
      String(PROTOCOL_VERSION),
      String(OLDEST_PROTOCOL_VERSION),
    ]);
  });

  it('are the subjects of a photo', () => {
    expect(named('`shows` is ', ';')).toEqual(PhotoShows.options);
  });

  it('are the words of numbers that are spoken', () => {
    const words = named('as over a radio, in the words ', '.');
    expect(words).toEqual([...ENGLISH_FIGURES.figures, ENGLISH_FIGURES.point, ENGLISH_FIGURES.minus]);
    const rows = tableOf('text').map((cells) => cells.flatMap(quoted));
    expect(rows.length).toBeGreaterThan(4);
    for (const [text = '', said] of rows) expect(spoken(text)).toBe(said);
  });

  it('is where each adjuster moves the beam of a unit that hangs so', () => {
    const told = tableOf('`mounting`').map((cells) => cells.flatMap(quoted));
    expect(told).toEqual(
      Mounting.options.map((mounting) => [
        mounting,
        movesAlong(mounting, 'horizontal'),
        movesAlong(mounting, 'vertical'),
      ]),
    );
  });

  it('are the words that are signed', () => {
    expect(doc.replace(/\s+/g, ' ')).toContain(`"${DECLARATION}"`);
  });

  it('is in it, and not in the sources: it names them in passing, and sends nobody there', () => {
    const named = [...doc.matchAll(/`?(?:\.\.\/)?src\/[\w./-]+/g)].map(([path]) =>
      path.replaceAll(/[`]|\.\.\//g, ''),
    );
    // Where the schemas are that the document is held to, and where more forms of the words are.
    expect([...new Set(named)].sort()).toEqual([
      'src/grammar/',
      'src/model/facts.ts',
      'src/protocol/routes.ts',
      'src/protocol/socket.ts',
    ]);
  });
});

describe('the words in the tables of docs/protocol.md', () => {
  const answers = wordsFor('`action.kind`');

  it.each(allWords().map((words) => [words]))('"%s" is one thing, without a question', (words) => {
    const [kind, ...more] = meaning(words);
    expect(more).toEqual([]);
    expect(INTENTS).toContain(kind);
  });

  it.each([...answers].filter(([kind]) => kind !== 'ask' && kind !== 'confirm-item'))(
    'for %s are what the server expects to it, and all that its buttons say',
    (kind, words) => {
      const expected = REPORTS[kind as keyof typeof REPORTS] ?? [];
      for (const each of words) expect(expected).toContain(meaning(each)[0]);
      const action = { kind, expect: 'alarm' } as unknown as Action;
      for (const { words: button } of answersTo(action, meter)) expect(words).toContain(button);
      expect(words.length > 0).toBe(expected.length > 0);
    },
  );

  it.each([...wordsFor('`question.kind`')])('for the question %s are answers to it', (kind, words) => {
    const expected = [...ANSWERS[kind as Question['kind']], 'unsure', 'not-turned'];
    for (const each of words) expect(expected).toContain(meaning(each)[0]);
  });

  it('mean everything that anybody can mean', () => {
    expect(allWords().flatMap(meaning)).toEqual(expect.arrayContaining(INTENTS));
  });
});
