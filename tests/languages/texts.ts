import { relative } from 'node:path';
import ts from 'typescript';

/** A text of ours that a person reads or hears, as it stands in the sources. */
export interface Text {
  /** From the root of the repository. */
  readonly file: string;
  readonly line: number;
  /** What is only known when the program runs stands as `SLOT`. */
  readonly text: string;
}

/** In every language a figure is the same, so it may stand for a number, a name, or another text of ours. */
export const SLOT = '7';
/** An element between two texts: they are not one sentence. */
const ELEMENT = '\0';
/** A text with many choices inside is looked at in so many forms. */
const MOST_FORMS = 64;

/** Attributes that are read out. Those of our own components are texts too, whatever their name; see `isTechnical`. */
const TECHNICAL = new Set(
  'class key id href src type name role lang rel target inputMode autocomplete autoComplete enterKeyHint pattern d fill viewBox transform'.split(
    ' ',
  ),
);

/** Every text of ours in these files. `program` holds them. */
export function textsIn(program: ts.Program, root: string, isWanted: (file: string) => boolean): Text[] {
  const checker = program.getTypeChecker();
  return program.getSourceFiles().flatMap((source) => {
    const file = relative(root, source.fileName);
    return isWanted(file) ? new Reader(checker, source, file).read() : [];
  });
}

class Reader {
  readonly #found: (Text & { node: ts.Node })[] = [];
  readonly #read = new Set<ts.Node>();
  /** Texts that are part of another one. */
  readonly #pieces = new Set<ts.Node>();
  /** How a name reads that stands twice in the same text. */
  readonly #settled = new Map<string, string>();
  #top: ts.Node | undefined;

  constructor(
    private readonly checker: ts.TypeChecker,
    private readonly source: ts.SourceFile,
    private readonly file: string,
  ) {}

  read(): Text[] {
    this.#visit(this.source);
    return this.#found.filter(({ node }) => !this.#pieces.has(node)).map(({ node: _, ...text }) => text);
  }

  #visit(node: ts.Node): void {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (ts.isJsxElement(node) && isLeftAsItIs(node)) return;
    if (ts.isJsxElement(node) || ts.isJsxFragment(node)) this.#children(node);
    else if (isText(node) && !this.#read.has(node) && this.#isForPeople(node)) this.#expression(node);
    if (ts.isElementAccessExpression(node)) this.#visit(node.expression);
    else ts.forEachChild(node, (child) => this.#visit(child));
  }

  /** As `client/language/draw.ts` puts them together: texts side by side are one sentence. */
  #children(node: ts.JsxElement | ts.JsxFragment): void {
    this.#top = node;
    let forms = [''];
    for (const child of node.children) {
      if (ts.isJsxText(child)) forms = product(forms, [jsxText(child.text)]);
      else if (ts.isJsxExpression(child))
        forms = product(forms, child.expression ? this.#forms(child.expression, true) : ['']);
      else forms = product(forms, [ELEMENT]);
    }
    for (const form of new Set(forms.flatMap((text) => text.split(ELEMENT)))) this.#add(node, form);
  }

  #expression(node: ts.Expression): void {
    this.#top = node;
    for (const form of new Set(this.#forms(node))) this.#add(node, form);
  }

  #add(node: ts.Node, form: string): void {
    const text = form.trim();
    if (!/\p{L}/u.test(text)) return;
    const { line } = this.source.getLineAndCharacterOfPosition(node.getStart(this.source));
    this.#found.push({ file: this.file, line: line + 1, text, node });
  }

  /** Each way in which an expression can read. */
  #forms(node: ts.Expression, inJsx = false): string[] {
    if (isText(node)) {
      this.#read.add(node);
      if (node !== this.#top) this.#pieces.add(node);
    }
    if (ts.isStringLiteralLike(node)) return [node.text];
    if (ts.isTemplateExpression(node)) {
      const twice = this.#namedTwice(node);
      if (twice)
        return this.#forms(twice).flatMap((form) => this.#with(twice.text, form, () => this.#forms(node)));
      return node.templateSpans.reduce(
        (forms, span) => product(product(forms, this.#forms(span.expression)), [span.literal.text]),
        [node.head.text],
      );
    }
    if (ts.isParenthesizedExpression(node) || ts.isAsExpression(node) || ts.isSatisfiesExpression(node))
      return this.#forms(node.expression, inJsx);
    if (ts.isConditionalExpression(node))
      return [...this.#forms(node.whenTrue, inJsx), ...this.#forms(node.whenFalse, inJsx)];
    if (ts.isBinaryExpression(node)) {
      const { left, operatorToken, right } = node;
      if (operatorToken.kind === ts.SyntaxKind.PlusToken && isString(this.checker.getTypeAtLocation(node)))
        return product(this.#forms(left, inJsx), this.#forms(right, inJsx));
      if (operatorToken.kind === ts.SyntaxKind.AmpersandAmpersandToken)
        return ['', ...this.#forms(right, inJsx)];
      if (
        operatorToken.kind === ts.SyntaxKind.QuestionQuestionToken ||
        operatorToken.kind === ts.SyntaxKind.BarBarToken
      )
        return [...this.#forms(left, inJsx), ...this.#forms(right, inJsx)];
    }
    const settled = ts.isIdentifier(node) ? this.#settled.get(node.text) : undefined;
    if (settled !== undefined) return [settled];
    const inlined = this.#inlined(node);
    if (inlined) return inlined.flatMap((each) => this.#forms(each, inJsx));
    return this.#formsOfType(this.checker.getTypeAtLocation(node), inJsx);
  }

  /** A name that stands twice in a text reads the same at both places. */
  #namedTwice({ templateSpans }: ts.TemplateExpression): ts.Identifier | undefined {
    const names = templateSpans.map(({ expression }) => expression).filter(ts.isIdentifier);
    return names.find(
      (name, i) => !this.#settled.has(name.text) && names.findIndex(({ text }) => text === name.text) < i,
    );
  }

  #with(name: string, form: string, read: () => string[]): string[] {
    this.#settled.set(name, form);
    const forms = read();
    this.#settled.delete(name);
    return forms;
  }

  /** What stands behind a name of the same file: a piece of a sentence that has a name is no sentence by itself. */
  #inlined(node: ts.Expression): ts.Expression[] | undefined {
    if (ts.isIdentifier(node)) return only(this.#initialiser(node));
    if (ts.isElementAccessExpression(node) && ts.isIdentifier(node.expression)) {
      const table = unwrapped(this.#initialiser(node.expression));
      if (!table || !ts.isObjectLiteralExpression(table)) return undefined;
      const values = table.properties.flatMap((each) =>
        ts.isPropertyAssignment(each) && isPiece(each.initializer) ? [each.initializer] : [],
      );
      return values.length === table.properties.length ? values : undefined;
    }
    if (ts.isCallExpression(node) && ts.isIdentifier(node.expression)) {
      const made = this.#initialiser(node.expression);
      return made && ts.isArrowFunction(made) && !ts.isBlock(made.body) ? only(made.body) : undefined;
    }
    return undefined;
  }

  /** Of a name that only this file has. */
  #initialiser(name: ts.Identifier): ts.Expression | undefined {
    const declaration = this.checker.getSymbolAtLocation(name)?.valueDeclaration;
    if (!declaration || !ts.isVariableDeclaration(declaration)) return undefined;
    if (declaration.getSourceFile() !== this.source) return undefined;
    const isShared = ts.getCombinedModifierFlags(declaration) & ts.ModifierFlags.Export;
    return isShared ? undefined : declaration.initializer;
  }

  #formsOfType(type: ts.Type, inJsx: boolean): string[] {
    const parts = type.isUnion() ? type.types : [type];
    // Only a page leaves out what is not there.
    const said = inJsx ? parts : parts.filter(({ flags }) => !(flags & NOTHING));
    const forms = new Set<string>();
    for (const part of said)
      if (part.isStringLiteral()) forms.add(part.value);
      else if (part.flags & (ts.TypeFlags.StringLike | ts.TypeFlags.NumberLike)) forms.add(SLOT);
      else if (part.flags & NOTHING) forms.add('');
      else forms.add(inJsx ? ELEMENT : SLOT);
    return [...forms];
  }

  /** A text, and not a name in the program. */
  #isForPeople(node: ts.Expression): boolean {
    if (isName(node) || isCompared(node)) return false;
    const attribute = ts.findAncestor(node, ts.isJsxAttribute);
    if (attribute && isTechnical(attribute.name.getText(this.source))) return false;
    // Outside the phrases most words of small letters are names.
    if (
      !this.file.startsWith('src/phrases/') &&
      !/^.?\p{Lu}|[\p{L}\d}] \p{L}/u.test(node.getText(this.source))
    )
      return false;
    const context = this.checker.getContextualType(node);
    return !context || !isOfNames(context);
  }
}

const isCompared = ({ parent }: ts.Node): boolean =>
  ts.isBinaryExpression(parent) && ['===', '!==', 'in'].includes(parent.operatorToken.getText());

/** Words of people, or of another language: `client/language/draw.ts` leaves them. */
const isLeftAsItIs = ({ openingElement: { attributes } }: ts.JsxElement): boolean =>
  attributes.properties.some((each) => ts.isJsxAttribute(each) && each.getText() === 'translate={false}');

const unwrapped = (node: ts.Expression | undefined): ts.Expression | undefined =>
  node && (ts.isAsExpression(node) || ts.isSatisfiesExpression(node)) ? unwrapped(node.expression) : node;

/** Words, or a choice between words: what a sentence may be made of. */
const isPiece = (node: ts.Expression): boolean =>
  isText(node) ||
  (ts.isConditionalExpression(node) && isPiece(node.whenTrue) && isPiece(node.whenFalse)) ||
  (ts.isParenthesizedExpression(node) && isPiece(node.expression)) ||
  (ts.isBinaryExpression(node) &&
    node.operatorToken.kind === ts.SyntaxKind.AmpersandAmpersandToken &&
    isPiece(node.right));

const only = (node: ts.Expression | undefined): ts.Expression[] | undefined =>
  node && isPiece(node) ? [node] : undefined;

const isText = (node: ts.Node): node is ts.StringLiteralLike | ts.TemplateExpression =>
  ts.isStringLiteralLike(node) || ts.isTemplateExpression(node);

const isTechnical = (attribute: string): boolean =>
  TECHNICAL.has(attribute) || (/^(?:data|aria)-/.test(attribute) && attribute !== 'aria-label');

/** What is named where: a property, a case, a file. */
const isName = (node: ts.Expression): boolean =>
  ts.isCaseClause(node.parent) ||
  ts.isLiteralTypeNode(node.parent) ||
  ts.isElementAccessExpression(node.parent) ||
  (ts.isPropertyAssignment(node.parent) && node.parent.name === node) ||
  ts.isTaggedTemplateExpression(node.parent) ||
  (ts.isNewExpression(node.parent) && node.parent.expression.getText() === 'RegExp') ||
  (ts.isCallExpression(node.parent) && /\.(?:ends|starts)With$/.test(node.parent.expression.getText()));

const NOTHING = ts.TypeFlags.Undefined | ts.TypeFlags.Null | ts.TypeFlags.BooleanLike;

const isString = (type: ts.Type): boolean => (type.flags & ts.TypeFlags.StringLike) !== 0;

/** `'panel' | 'emitter'`: one of a few names. */
const isOfNames = (type: ts.Type): boolean => {
  const parts = (type.isUnion() ? type.types : [type]).filter(({ flags }) => !(flags & NOTHING));
  return parts.length > 0 && parts.every((part) => part.isStringLiteral());
};

const product = (heads: readonly string[], tails: readonly string[]): string[] =>
  heads.flatMap((head) => tails.map((tail) => head + tail)).slice(0, MOST_FORMS);

/** As JSX reads a text: the breaks of lines and what stands around them go. */
function jsxText(text: string): string {
  const lines = text.split('\n');
  return lines
    .map((line, i) => (i > 0 ? line.trimStart() : line))
    .map((line, i) => (i < lines.length - 1 ? line.trimEnd() : line))
    .filter((line) => line !== '')
    .join(' ')
    .replaceAll('&nbsp;', '\u00a0')
    .replaceAll('&amp;', '&');
}
