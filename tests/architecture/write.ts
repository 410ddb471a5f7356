import { readFileSync, writeFileSync } from 'node:fs';
import { arrowsTable } from './table.ts';

/** `npm run arrows`: puts the table of folders into docs/architecture.md, in the place of the one there. */
const FILE = 'docs/architecture.md';
const text = readFileSync(FILE, 'utf8');
const table = /\| folder \| holds .*(?:\n\|.*)*/;
if (!table.test(text)) throw new Error(`${FILE} has no table of folders to write over`);
writeFileSync(
  FILE,
  text.replace(table, () => arrowsTable()),
);
