import type { Severity } from '../model/finding.ts';

export const SEVERITY_WORDS: Record<Severity, string> = {
  serious: 'Serious',
  question: 'To be asked',
  note: 'To know',
};
