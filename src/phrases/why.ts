import type { Advice } from '../model/advice.ts';
import type { JobSetup } from '../model/setup.ts';
import { PRE_AIM_M } from '../plan/geometry.ts';
import { figuresText } from './figures.ts';
import { nearText } from './near.ts';
import { COMMISSION_RULE_WORDS, NEAR, RULE_WORDS } from './rules.ts';
import { shownToCrew } from './units.ts';

const STATEMENTS: Readonly<Record<string, string>> = { ...RULE_WORDS, ...COMMISSION_RULE_WORDS };

/** Why an instruction is given: the rule of the procedure, and the figures it rests on. */
export function whyText({ rule, figures }: Advice, setup: JobSetup): string {
  const shown = shownToCrew(setup);
  const statement = (STATEMENTS[rule] ?? rule).replace(NEAR, nearText(PRE_AIM_M, shown));
  const rests = figuresText(figures, setup.meter, shown);
  return rests ? `${statement} (${rests})` : statement;
}
