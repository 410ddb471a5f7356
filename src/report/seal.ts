import type { ChainFault } from '../log/fault.ts';
import type { Fingerprint } from '../log/signed-head.ts';
import type { Head } from '../model/ids.ts';
import { checkedText, HOW_TO_COMPARE, HOW_TO_VERIFY, SEAL_ROWS } from '../phrases/seal.ts';
import type { Block } from './report.ts';

/** The figures that show whether a log was changed, and how to check. */
export const sealBlock = (
  title: string,
  head: Head,
  fault: ChainFault | undefined,
  key: Fingerprint | undefined,
): Block => ({
  kind: 'facts',
  title,
  rows: [
    { name: SEAL_ROWS.log, value: head.job },
    { name: SEAL_ROWS.entries, value: String(head.count) },
    { name: SEAL_ROWS.hash, value: head.hash },
    { name: SEAL_ROWS.checked, value: checkedText(fault) },
    ...(key === undefined ? [] : [{ name: SEAL_ROWS.key, value: key }]),
    {
      name: SEAL_ROWS.verify,
      value: key === undefined ? HOW_TO_VERIFY : `${HOW_TO_VERIFY} ${HOW_TO_COMPARE}`,
    },
  ],
});
