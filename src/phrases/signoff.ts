import type { Proof } from '../visit/attempts.ts';
import type { Issue } from '../visit/commission.ts';
import type { Unsigned } from '../visit/signoff.ts';
import { itemText } from './items.ts';

const PROOF: Record<Proof, string> = {
  quiet: 'the test that a weak filter brings no alarm, passed',
  alarm: 'the alarm test, passed',
  fault: 'the fault test, passed',
};

/** One thing that is missing for signing. */
export function unsignedText(item: Unsigned, issues: readonly Issue[]): string {
  switch (item.kind) {
    case 'accept':
      return 'an accepted alignment';
    case 'item':
      return itemText({ item: item.item, done: true });
    case 'proof':
      return PROOF[item.proof];
    case 'reading':
      return 'a reading after the tests';
    case 'issue':
      return `an answer to the open issue: ${issues.find(({ seq }) => seq === item.issue)?.text ?? item.issue}`;
  }
}

/** "It cannot be signed yet. Missing: covers on." */
export const notSignableText = (missing: readonly Unsigned[], issues: readonly Issue[]): string =>
  `It cannot be signed yet. Missing: ${missing.map((item) => unsignedText(item, issues)).join('; ')}.`;
