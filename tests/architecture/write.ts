import { readFileSync, writeFileSync } from 'node:fs';
import { arrowsTable, coreDrawing } from './table.ts';

/** `npm run arrows`: puts drawing and table of the folders into docs/architecture.md, in the place of those there. */
const FILE = 'docs/architecture.md';

function put(text: string, old: RegExp, made: string): string {
  if (!old.test(text)) throw new Error(`${FILE} has nothing like ${old} to write over`);
  return text.replace(old, () => made);
}

const before = readFileSync(FILE, 'utf8');
const drawn = put(before, /```mermaid\nflowchart (?:TB|BT)\n[^`]*```/, coreDrawing());
writeFileSync(FILE, put(drawn, /\| folder \| holds .*(?:\n\|.*)*/, arrowsTable()));
