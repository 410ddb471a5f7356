import type { Advice } from '../advice.ts';
import { RULES, type RuleId } from '../engine/rules.ts';
import type { MeterProfile } from '../profile.ts';
import { figuresText } from './figures.ts';

/** Why an instruction is given: the rule of the procedure and the figures it rests on. */
export function whyText({ rule, figures }: Advice, meter: MeterProfile): string {
  const statement = RULES[rule as RuleId] ?? rule;
  const rests = figuresText(figures, meter);
  return rests ? `${statement} (${rests})` : statement;
}
