import { readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';

/** The numbers that the engine carries, read from its sources. */

const FOLDER = new URL('../../src/engine/', import.meta.url);

/** Lists of words and the number of the version: nothing there steers a search. */
const NO_NUMBERS = new Set(['rules.ts', 'version.ts']);

/** Numbers of formulas that nobody could choose otherwise: none, one, two, powers of ten, milliseconds. */
const PLAIN = new Set(['0', '1', '2', '10', '1000']);

export interface Constant {
  readonly file: string;
  readonly name: string;
  /** As it is written; of a long one only its numbers. */
  readonly value: string;
}

export interface InFormulas {
  readonly file: string;
  /** In the order in which they stand. */
  readonly numbers: readonly string[];
}

const LONGEST = 60;

export function numbersOfEngine(): { constants: readonly Constant[]; formulas: readonly InFormulas[] } {
  const constants: Constant[] = [];
  const formulas: InFormulas[] = [];
  for (const file of readdirSync(FOLDER).filter((name) => name.endsWith('.ts') && !NO_NUMBERS.has(name))) {
    const source = ts.createSourceFile(
      file,
      readFileSync(new URL(file, FOLDER), 'utf8'),
      ts.ScriptTarget.Latest,
      true,
    );
    const named = new Set<ts.Node>();
    for (const statement of source.statements) {
      if (!ts.isVariableStatement(statement)) continue;
      for (const { name, initializer } of statement.declarationList.declarations) {
        if (!initializer || !/^[A-Z][A-Z_0-9]*$/.test(name.getText()) || isWorkedOut(initializer)) continue;
        named.add(initializer);
        const numbers = numbersIn(initializer);
        if (numbers.length === 0) continue;
        const text = initializer
          .getText()
          .replace(/ as const$/, '')
          .replaceAll(/\s+/g, ' ');
        constants.push({
          file,
          name: name.getText(),
          value: text.length > LONGEST ? numbers.join(', ') : text,
        });
      }
    }
    const numbers = numbersIn(source, named).filter((number) => !PLAIN.has(number));
    if (numbers.length > 0) formulas.push({ file, numbers });
  }
  return { constants, formulas };
}

/** A table that a formula fills: its numbers stand in that formula. */
const isWorkedOut = (node: ts.Node): boolean =>
  ts.isArrowFunction(node) || (ts.forEachChild(node, (child) => isWorkedOut(child) || undefined) ?? false);

function numbersIn(node: ts.Node, without: ReadonlySet<ts.Node> = new Set()): string[] {
  if (without.has(node)) return [];
  if (ts.isNumericLiteral(node)) return [node.getText()];
  const found: string[] = [];
  node.forEachChild((child) => {
    // A type with a number in it, such as -1 | 0 | 1, steers nothing.
    if (!ts.isTypeNode(child)) found.push(...numbersIn(child, without));
  });
  return found;
}
