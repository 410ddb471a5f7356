/**
 * The notation the crew's sentences are written in:
 *
 * - `gain down`            these words, in this order
 * - `[the] gain`           `the` may be left out
 * - `(down|lower) it`      one or the other
 * - `to <number>`          what the rule `number` says
 * - `to <aim:number>`      the same, handed to the meaning under the name `aim`
 * - `turned <way?>`        what the rule says, or nothing
 *
 * Rules are named only outside brackets, so that a meaning always gets its values.
 */
export type Part =
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'rule'; readonly rule: string; readonly name: string }
  | { readonly kind: 'sequence'; readonly parts: readonly Part[] }
  | { readonly kind: 'choice'; readonly options: readonly Part[] };

export const NOTHING: Part = { kind: 'sequence', parts: [] };

const LEXEME = /<[^>]*>|[[\]()|]|[\p{Ll}']+/gu;

/** Reads the notation. Throws a SyntaxError for a pattern that is not in this notation: a programming error. */
export const readPattern = (pattern: string): Part => {
  const lexemes = pattern.match(LEXEME) ?? [];
  if (lexemes.join('') !== pattern.replace(/ /g, '')) throw new SyntaxError(`Not a pattern: ${pattern}`);
  let at = 0;

  const reference = (text: string, depth: number): Part => {
    const [, name, rule, optional] = /^<(?:(\w+):)?(\w+)(\?)?>$/.exec(text) ?? [];
    if (!rule || depth > 0) throw new SyntaxError(`${text} is misplaced in: ${pattern}`);
    const part: Part = { kind: 'rule', rule, name: name ?? rule };
    return optional ? { kind: 'choice', options: [part, NOTHING] } : part;
  };

  const choice = (depth: number): Part => {
    const options: Part[] = [];
    let parts: Part[] = [];
    for (; at < lexemes.length; at++) {
      const lexeme = lexemes[at] as string;
      if (lexeme === ']' || lexeme === ')') break;
      if (lexeme === '|') {
        options.push({ kind: 'sequence', parts });
        parts = [];
      } else if (lexeme === '[' || lexeme === '(') {
        at++;
        const inner = choice(depth + 1);
        if (lexemes[at] !== (lexeme === '[' ? ']' : ')')) throw new SyntaxError(`Unclosed: ${pattern}`);
        parts.push(lexeme === '[' ? { kind: 'choice', options: [inner, NOTHING] } : inner);
      } else if (lexeme.startsWith('<')) {
        parts.push(reference(lexeme, depth + (options.length > 0 || hasBarAhead() ? 1 : 0)));
      } else {
        parts.push({ kind: 'word', word: lexeme });
      }
    }
    const last: Part = { kind: 'sequence', parts };
    return options.length === 0 ? last : { kind: 'choice', options: [...options, last] };
  };

  /** A later bar at the outer level would make a reference before it optional. */
  const hasBarAhead = (): boolean => {
    let depth = 0;
    for (const lexeme of lexemes.slice(at)) {
      if (lexeme === '(' || lexeme === '[') depth++;
      if (lexeme === ')' || lexeme === ']') depth--;
      if (lexeme === '|' && depth === 0) return true;
    }
    return false;
  };

  const part = choice(0);
  if (at < lexemes.length) throw new SyntaxError(`Unopened bracket: ${pattern}`);
  return part;
};

type References<S extends string> = S extends `${string}<${infer R}>${infer Rest}`
  ? R | References<Rest>
  : never;
type NameOf<R extends string> = R extends `${infer Name}:${string}` ? Name : R;
type RuleOf<R extends string> = R extends `${string}:${infer Rule}` ? Rule : R;

/** What a meaning gets: one field for each reference in the pattern, of the type of its rule. */
export type Captures<S extends string, Meanings> = {
  [R in References<S> as R extends `${string}?` ? never : NameOf<R>]: RuleOf<R> extends keyof Meanings
    ? Meanings[RuleOf<R>]
    : never;
} & {
  [R in References<S> as R extends `${infer Q}?` ? NameOf<Q> : never]?: R extends `${infer Q}?`
    ? RuleOf<Q> extends keyof Meanings
      ? Meanings[RuleOf<Q>] | undefined
      : never
    : never;
};
