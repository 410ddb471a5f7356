/** What a supervisor reads of all sites of the firm together. */

export const FIGURES_NEED_ACCOUNTS =
  'The figures over all sites are for supervisors with an account. This server has no accounts: each site is for who has its link.';
export const FIGURES_NEED_DATABASE =
  'The figures over all sites are counted in a PostgreSQL database. This server keeps its records in a file: open each site.';

const pairsText = (n: number): string => (n === 1 ? '1 pair' : `${n} pairs`);

export const overText = (pairs: number, sites: number): string =>
  sites === 1 ? `${pairsText(pairs)} at 1 site` : `${pairsText(pairs)} at ${sites} sites`;

export const FIGURES_ARE =
  'Counted from the records, and up to some minutes old. Where the record of a pair says something else, the record is right.';

export const behindText = (n: number): string =>
  n === 1
    ? 'The record of 1 pair has grown since it was counted.'
    : `The records of ${n} pairs have grown since they were counted.`;

export const damagedText = (n: number): string =>
  n === 1
    ? 'A record of 1 pair is damaged. That pair is in no other figure here. Open the board of its site.'
    : `Records of ${n} pairs are damaged. These pairs are in no other figure here. Open the boards of their sites.`;

export const driftingText = (pairs: number, compared: number): string =>
  compared === 0
    ? 'No pair has two visits that can be compared.'
    : `${pairs} weaker, of ${compared} with two visits or more to compare.`;

export const lostText = (lost: number): string => `${lost.toFixed(1)} dB lost`;

export const halfText = (time: string): string => `Half of the pairs: ${time} or less`;
export const mostText = (time: string): string => `Nine of ten pairs: ${time} or less`;
export const timedText = (pairs: number): string => `All visits of a pair together, of ${pairsText(pairs)}.`;
export const NOT_TIMED = 'Nobody has stood at an emitter yet.';

export const NO_FINDINGS = 'No findings at the latest visits.';
export const NOTHING_DUE = 'Nobody has written down when the next work is due.';
