import type { ChainFault } from '../log/fault.ts';
import type { Head } from '../model/ids.ts';
import { wrongText } from '../phrases/verify.ts';
import type { Block } from './report.ts';

/** The figures by which a log can be told from a changed one, and how. */
export const sealBlock = (title: string, head: Head, fault: ChainFault | undefined): Block => ({
  kind: 'facts',
  title,
  rows: [
    { name: 'Log', value: head.job },
    { name: 'Entries', value: String(head.count) },
    { name: 'Head hash', value: head.hash },
    {
      name: 'Checked',
      value: fault
        ? `BROKEN. ${wrongText({ kind: 'chain', ...fault })} Do not rely on what stands there or after it.`
        : 'Every hash was computed again for this report: nothing changed, missing or moved.',
    },
    {
      name: 'To verify',
      value:
        'Save the log as JSON Lines and run: npm run verify -- FILE. The number of entries and the head hash must be the ones printed here.',
    },
  ],
});

export const footOf = ({ job, count, hash }: Head): string =>
  `Log ${job}, ${count} entries, head hash ${hash}`;
