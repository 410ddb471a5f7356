import type { ChainFault } from '../log/fault.ts';
import type { Head } from '../model/ids.ts';
import { wrongText } from './verify.ts';

/** How to find out whether a log was changed. */
export const SEAL_ROWS = {
  log: 'Log',
  entries: 'Entries',
  hash: 'Head hash',
  checked: 'Checked',
  key: 'Key of the server',
  verify: 'To check it',
} as const;

export const checkedText = (fault: ChainFault | undefined): string =>
  fault
    ? `BROKEN. ${wrongText({ kind: 'chain', ...fault })} Do not rely on this entry or any after it.`
    : 'Every hash was computed again for this report: nothing changed, missing or moved.';

export const HOW_TO_VERIFY =
  'Ladderline checks the saved file of this log, also without a network: it finds any change. The number of entries and the head hash must then be those printed here.';

export const HOW_TO_COMPARE =
  'The key must be the one that the firm noted down when it set its server up: with another key, another server signed.';

export const footText = ({ job, count, hash }: Head): string =>
  `Log ${job}, ${count} entries, head hash ${hash}`;
