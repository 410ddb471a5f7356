import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { RULES } from '../../src/engine/rules.ts';
import { numbersOfEngine } from './constants.ts';

/** docs/constants.md is held to the sources: nothing in it may be of an older version. */
const PAGE = readFileSync(new URL('../../docs/constants.md', import.meta.url), 'utf8');

const rows = PAGE.split('\n').flatMap((line) => {
  const [, file, name, value, decides, from] =
    /^\| `([\w-]+\.ts)` (?:`(\w+)`|in formulas) \| `([^`]+)` \| (.+) \| (.+) \|$/.exec(line) ?? [];
  return file && value && decides && from ? [{ file, name, value, decides, from }] : [];
});

describe('the page of the engine’s constants', () => {
  const { constants, formulas } = numbersOfEngine();

  it('names every constant with a number, with the value that it has', () => {
    const inCode = constants.map(({ file, name, value }) => `${file} ${name} = ${value}`);
    const onPage = rows
      .filter(({ name }) => name)
      .map(({ file, name, value }) => `${file} ${name} = ${value}`);
    expect(onPage.toSorted()).toEqual(inCode.toSorted());
  });

  it('names every other number of a formula', () => {
    const inCode = formulas.map(({ file, numbers }) => `${file}: ${numbers.join(', ')}`);
    const onPage = rows.filter(({ name }) => !name).map(({ file, value }) => `${file}: ${value}`);
    expect(onPage.toSorted()).toEqual(inCode.toSorted());
  });

  it('counts them, and the rules, and says of each where its value comes from', () => {
    const kinds = [...PAGE.matchAll(/^\| \*\*(\w+)\*\* \| (\d+) \|/gm)].map(
      ([, kind = '', count]) => [kind, Number(count)] as const,
    );
    const named = rows.filter(({ name }) => name);
    const counted = kinds.map(
      ([kind]) => [kind, named.filter(({ from }) => from.split(/[:;,] /)[0] === kind).length] as const,
    );
    expect(counted).toEqual(kinds);
    expect(kinds.reduce((sum, [, count]) => sum + count, 0)).toBe(named.length);
    expect(PAGE).toContain(`${named.length} constants`);
    expect(PAGE).toContain(`${RULES.length} rules`);
  });
});
