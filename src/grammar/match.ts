import { beginningsIn } from './begins.ts';
import { ENGLISH, type Grammar, TYPED, UNBROKEN } from './grammar.ts';
import type { Token } from './normalise.ts';
import type { Part } from './pattern.ts';
import { type Context, Either, type Meanings, type RuleName } from './rule.ts';

/** One way to understand the words: the meaning and its cost. The lowest cost is the plainest. */
export interface Match<T> {
  readonly meaning: T;
  readonly cost: number;
}

/** The cost of skipping a filler, and of joining two clauses where one might be enough. */
const FILLER_COST = 100;
const JOINT_COST = 1;

interface Found {
  readonly end: number;
  readonly cost: number;
}
interface Progress extends Found {
  readonly captures: Readonly<Record<string, unknown>>;
}
interface Taken extends Found {
  readonly meaning: unknown;
}

/**
 * Every way to read all the tokens as `rule`, each meaning once. Rules are matched top-down with memory, so
 * the work grows with the length of the text, not with the number of ways.
 */
export const matches = <R extends RuleName>(
  rule: R,
  tokens: readonly Token[],
  context: Context,
  grammar: Grammar = ENGLISH,
): Match<Meanings[R]>[] => {
  const index = beginningsIn(grammar);
  const remembered = new Map<string, readonly Taken[]>();

  const firsts = [...tokens.map((token) => index.beginning(token)), ''];
  const isFiller = (at: number): boolean => grammar.fillers.has(firsts[at] ?? '');

  const typed = (name: string, at: number): Taken[] => {
    const token = tokens[at];
    return token && token.kind !== 'word' && token.kind === name
      ? token.values.map((meaning) => ({ end: at + 1, cost: 0, meaning }))
      : [];
  };

  const matchRule = (name: string, at: number, unbroken: boolean): readonly Taken[] => {
    if (TYPED.has(name as RuleName)) return typed(name, at);
    const within = unbroken || UNBROKEN.has(name as RuleName);
    const key = `${name}/${at}/${within}`;
    const known = remembered.get(key);
    if (known) return known;
    const found = new Map<string, Taken>();
    for (const wording of index.wordingsBeginning(name, firsts[at] ?? '')) {
      for (const { captures, end, cost } of matchPart(
        wording.part,
        { end: at, cost: wording.joins ? JOINT_COST : 0, captures: {} },
        within,
      )) {
        const made = wording.meaning(captures, context);
        for (const meaning of made instanceof Either ? made.meanings : [made]) {
          if (meaning !== undefined)
            keepBest(found, `${end} ${JSON.stringify(meaning)}`, { end, cost, meaning });
        }
      }
    }
    const all = [...found.values()];
    remembered.set(key, all);
    return all;
  };

  const mayBegin = (part: Part, at: number): boolean => {
    const { words, empty } = index.begins(part);
    return empty || words.has(firsts[at] ?? '') || isFiller(at);
  };

  const matchPart = (part: Part, from: Progress, unbroken: boolean): readonly Progress[] => {
    switch (part.kind) {
      case 'word':
        return startsOf(from, unbroken).flatMap((start) => {
          const token = tokens[start.end];
          return token?.kind === 'word' && token.word === part.word ? [{ ...start, end: start.end + 1 }] : [];
        });
      case 'rule':
        return (
          UNBROKEN.has(part.rule as RuleName) || TYPED.has(part.rule as RuleName)
            ? startsOf(from, unbroken)
            : [from]
        ).flatMap((start) =>
          matchRule(part.rule, start.end, unbroken).map(({ end, cost, meaning }) => ({
            end,
            cost: start.cost + cost,
            captures: { ...start.captures, [part.name]: meaning },
          })),
        );
      case 'sequence':
        return part.parts.reduce<readonly Progress[]>(
          (starts, next) =>
            starts.flatMap((start) => (mayBegin(next, start.end) ? matchPart(next, start, unbroken) : [])),
          [from],
        );
      case 'choice':
        return part.options.flatMap((option) =>
          mayBegin(option, from.end) ? matchPart(option, from, unbroken) : [],
        );
    }
  };

  /** Where the next word may be: here, or after the fillers here. */
  const startsOf = (from: Progress, unbroken: boolean): Progress[] => {
    const starts = [from];
    if (unbroken) return starts;
    for (let end = from.end; isFiller(end); end++) {
      starts.push({ ...from, end: end + 1, cost: from.cost + FILLER_COST * (end + 1 - from.end) });
    }
    return starts;
  };

  const whole = new Map<string, Taken>();
  for (const match of matchRule(rule, 0, false)) {
    let end = match.end;
    while (isFiller(end)) end++;
    const cost = match.cost + FILLER_COST * (end - match.end);
    if (end === tokens.length) keepBest(whole, JSON.stringify(match.meaning), { ...match, end, cost });
  }
  return [...whole.values()] as unknown as Match<Meanings[R]>[];
};

const keepBest = (found: Map<string, Taken>, key: string, match: Taken): void => {
  const before = found.get(key);
  if (!before || before.cost > match.cost) found.set(key, match);
};
