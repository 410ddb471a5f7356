import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

/** A piece of text in the code that reads as words for people. */
export interface Sentence {
  file: string;
  line: number;
  text: string;
}

/** Every such text in the `.ts` files below `folder`. Labels in `.tsx` stand with their markup and are not looked at. */
export const sentencesBelow = (folder: string): Sentence[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
    .sort()
    .flatMap((name) => sentencesIn(join(folder, name), readFileSync(join(folder, name), 'utf8')));

export function sentencesIn(file: string, code: string): Sentence[] {
  const source = ts.createSourceFile(file, code, ts.ScriptTarget.Latest, true);
  const found: Sentence[] = [];
  const visit = (node: ts.Node): void => {
    // A thrown error speaks to a programmer, not to the crew.
    if (ts.isThrowStatement(node) || ts.isLiteralTypeNode(node) || ts.isImportDeclaration(node)) return;
    // The server's own journal is for who runs it.
    if (ts.isCallExpression(node) && /\blog\.\w+$/.test(node.expression.getText(source))) return;
    const text = textOf(node);
    if (text !== undefined && isForPeople(text)) {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart(source));
      found.push({ file, line: line + 1, text });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** The text of a literal; what a template puts in is one word, "…". */
function textOf(node: ts.Node): string | undefined {
  if (ts.isStringLiteralLike(node)) return node.text;
  if (!ts.isTemplateExpression(node)) return undefined;
  return node.head.text + node.templateSpans.map(({ literal }) => `…${literal.text}`).join('');
}

/** Three words or more with spaces between them, two of them made of letters. */
function isForPeople(text: string): boolean {
  const words = text.trim().split(/\s+/u);
  const plain = words.filter((word) => /^["'(]*\p{L}[\p{L}'-]+[.,:;!?")]*$/u.test(word));
  return words.length >= 3 && plain.length >= 2;
}
