import type { Seq } from '../model/ids.ts';
import { unsignedText } from '../phrases/signoff.ts';
import type { VisitRecord } from '../record/visit-record.ts';
import { brief } from './brief.ts';
import type { Moments } from './moments.ts';
import type { Block } from './report.ts';

/** Characters of what is missing. */
const LONGEST = 500;

/** Who answers for the record, or what is missing for it. */
export function signBlock({ state, missing }: VisitRecord, moments: Moments): Block {
  const { signed, changedBy, issues } = state;
  const block = (lines: readonly string[]): Block => ({
    kind: 'signature',
    title: 'Signature',
    lines,
    signature: signed?.signature,
  });
  if (!signed) {
    return block([
      'Not signed.',
      missing.length === 0
        ? 'Nothing is missing for signing.'
        : brief(
            `Missing for signing: ${missing.map((item) => unsignedText(item, issues)).join('; ')}.`,
            LONGEST,
            'the log',
          ),
    ]);
  }
  const { name, role, at, seq, head } = signed;
  return block([
    `${name}, ${role}, ${moments.full(at)}, entry #${seq}.`,
    `Signed: the first ${head.count} entries, head hash ${head.hash}.`,
    ...(changedBy === undefined ? [] : [changedText(changedBy)]),
  ]);
}

const changedText = (seq: Seq): string =>
  `CHANGED SINCE SIGNING: entry #${seq} and what follows are not covered by this signature.`;
