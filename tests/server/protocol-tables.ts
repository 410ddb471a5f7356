import { readFileSync } from 'node:fs';

const doc = readFileSync(new URL('../../docs/protocol.md', import.meta.url), 'utf8');

/** The rows of the table of docs/protocol.md whose first column has this heading, cell by cell. */
export function tableOf(heading: string): string[][] {
  const [, ...tables] = doc.split(`\n| ${heading} |`);
  const [table, ...others] = tables;
  if (table === undefined || others.length > 0)
    throw new Error(`docs/protocol.md has ${tables.length} tables of "${heading}", and not one`);
  const lines = table.split('\n').slice(2);
  const end = lines.findIndex((line) => !line.startsWith('|'));
  return lines.slice(0, end).map((line) =>
    line
      .slice(1, -1)
      .split('|')
      .map((cell) => cell.trim()),
  );
}

/** What stands in a cell between back quotes. */
export const quoted = (cell = ''): string[] => [...cell.matchAll(/`([^`]+)`/g)].map(([, text = '']) => text);

/** The last cell of each row, by what stands first in the first one: what is said to an order, to a question, at any time. */
export const wordsFor = (heading: string): Map<string, string[]> =>
  new Map(tableOf(heading).map(([name, ...cells]) => [quoted(name)[0] ?? '', quoted(cells.at(-1))]));

/** Every sentence that the document says will be understood. */
export const allWords = (): string[] => [
  ...[...wordsFor('`action.kind`').values(), ...wordsFor('`question.kind`').values()].flat(),
  ...tableOf('said at any time').flatMap(([words]) => quoted(words)),
  ...quoted(/\nThe answer to `people-told` is `told` and whom, (`[^`]+`)/.exec(doc)?.[1]),
];
