import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

/** A figure with a unit of length put beside it by hand: `{x} m`, `{x} ft<`. */
const BY_HAND = /\{[^{}]*\} (m|ft|cm|in|metres|feet)(?=[`'"<,.;)]|$)/m;

it.each(['`{x} m`', '<b>{path} ft</b>', '`path {plan.pathLength} m, zone`'])('%s is found', (code) => {
  expect(code).toMatch(BY_HAND);
});

it('a length gets its unit in src/phrases/units.ts and nowhere else, so that none is forgotten where a site reads feet', () => {
  const found = ['src', 'client', 'server'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => join(folder, name))
      // A line of a language is about a text that already has its unit.
      .filter((file) => file !== 'src/phrases/units.ts' && !file.startsWith('src/languages/'))
      .filter((file) => BY_HAND.test(readFileSync(file, 'utf8'))),
  );
  expect(found).toEqual([]);
});
