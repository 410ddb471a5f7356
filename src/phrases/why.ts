import type { Advice } from '../model/advice.ts';
import type { MeterProfile } from '../model/profile.ts';
import { figuresText } from './figures.ts';
import { COMMISSION_RULE_WORDS, RULE_WORDS } from './rules.ts';

const STATEMENTS: Readonly<Record<string, string>> = { ...RULE_WORDS, ...COMMISSION_RULE_WORDS };

/** Why an instruction is given: the rule of the procedure, and the figures it rests on. */
export function whyText({ rule, figures }: Advice, meter: MeterProfile): string {
  const statement = STATEMENTS[rule] ?? rule;
  const rests = figuresText(figures, meter);
  return rests ? `${statement} (${rests})` : statement;
}
