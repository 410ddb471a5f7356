import { checked, headAfter, seal } from '../../src/log/chain.ts';
import type { CheckedLog } from '../../src/log/fault.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { Fact } from '../../src/model/facts.ts';
import { playedVisit } from '../findings/site.ts';

/** A visit with these facts at its end. */
export function visitWith(facts: readonly Fact[]): CheckedLog {
  const entries = playedVisit();
  for (const fact of facts) {
    const last = entries.at(-1) as Entry;
    entries.push(seal(headAfter(last), { actor: 'panel', fact }, last.at + 1000));
  }
  return checked({ entries, head: headAfter(entries.at(-1) as Entry) });
}

/** A photo of a label, whose picture nobody has checked. */
export const photo = (caption: string, bytes = 1000): Fact => ({
  type: 'photo',
  hash: 'a'.repeat(64),
  bytes,
  width: 640,
  height: 480,
  shows: 'label',
  caption,
});
