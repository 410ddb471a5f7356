import type { ChainFault } from '../log/fault.ts';
import type { Head } from '../model/ids.ts';
import { checkedText, HOW_TO_VERIFY, SEAL_ROWS } from '../phrases/seal.ts';
import type { Block } from './report.ts';

/** The figures that show whether a log was changed, and how to check. */
export const sealBlock = (title: string, head: Head, fault: ChainFault | undefined): Block => ({
  kind: 'facts',
  title,
  rows: [
    { name: SEAL_ROWS.log, value: head.job },
    { name: SEAL_ROWS.entries, value: String(head.count) },
    { name: SEAL_ROWS.hash, value: head.hash },
    { name: SEAL_ROWS.checked, value: checkedText(fault) },
    { name: SEAL_ROWS.verify, value: HOW_TO_VERIFY },
  ],
});
