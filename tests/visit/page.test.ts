import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FINDING_IDS } from '../../src/model/finding.ts';
import { COMMISSION_RULE_WORDS } from '../../src/phrases/rules.ts';

const page = readFileSync(new URL('../../docs/commissioning.md', import.meta.url), 'utf8');

/** The rows of the table after a mark, as their two cells. */
const table = (mark: string): string[][] => {
  const [, after = ''] = page.split(`<!-- ${mark}:`);
  const [part = ''] = after.split('\n## ');
  return [...part.matchAll(/^\| `([\w-]+)` \| (.+) \|$/gm)].map(([, id = '', says = '']) => [id, says]);
};

describe('docs/commissioning.md', () => {
  it('tells every rule, in its words and order', () => {
    expect(table('rules')).toEqual(Object.entries(COMMISSION_RULE_WORDS));
  });

  it('tells every finding, in the order they are told in', () => {
    expect(table('findings').map(([id]) => id)).toEqual([...FINDING_IDS]);
  });
});
