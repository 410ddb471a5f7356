import { found, type Look } from './look.ts';

export const openIssue: Look = ({ end: { issues } }) =>
  issues
    .filter(({ closed }) => !closed)
    .map(({ seq, about }) => found('open-issue', { severity: 'serious', entries: [about, seq] }));
