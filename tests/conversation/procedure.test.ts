import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { RULE_WORDS } from '../../src/phrases/rules.ts';

it('docs/procedure.md tells every rule of the engine, in its words and order', () => {
  const page = readFileSync(new URL('../../docs/procedure.md', import.meta.url), 'utf8');
  const table = [...page.matchAll(/^\| `([\w-]+)` \| (.+) \|$/gm)].map(([, id, says]) => [id, says]);
  expect(table).toEqual(Object.entries(RULE_WORDS));
});
