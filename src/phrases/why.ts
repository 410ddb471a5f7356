import { RULES } from '../engine/rules.ts';
import type { Advice } from '../model/advice.ts';
import type { MeterProfile } from '../model/profile.ts';
import { COMMISSION_RULES } from '../visit/rules.ts';
import { figuresText } from './figures.ts';

const STATEMENTS: Readonly<Record<string, string>> = { ...RULES, ...COMMISSION_RULES };

/** Why an instruction is given: the rule of the procedure and the figures it rests on. */
export function whyText({ rule, figures }: Advice, meter: MeterProfile): string {
  const statement = STATEMENTS[rule] ?? rule;
  const rests = figuresText(figures, meter);
  return rests ? `${statement} (${rests})` : statement;
}
