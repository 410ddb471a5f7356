import type { Draft, Entry } from '../model/entry.ts';
import type { Salt } from '../model/forgotten.ts';
import type { Head, MessageId } from '../model/ids.ts';
import { hashOf, headAfter, seal } from './chain.ts';
import { isNamed } from './names.ts';

interface Sealing {
  /** Of the message that the drafts come from. Only the first entry carries it, so that it is unique in the log. */
  ref?: MessageId | undefined;
  /** SHA-256 of a text, in hex. */
  hash?: ((text: string) => string) | undefined;
  /** As for `seal`. */
  salt?: ((head: Head) => Salt) | undefined;
}

/** Chains drafts that belong together onto a head. `at`: ms since 1970. */
export function sealAll(
  head: Head,
  drafts: readonly Draft[],
  at: number,
  { ref, hash = hashOf, salt }: Sealing = {},
): { entries: Entry[]; head: Head } {
  let end = head;
  const entries = drafts.map((draft, i) => {
    const before = end;
    const entry = seal(
      before,
      i === 0 && ref !== undefined ? { ...draft, ref } : draft,
      at,
      hash,
      salt && isNamed(draft, drafts) ? () => salt(before) : undefined,
    );
    end = headAfter(entry);
    return entry;
  });
  return { entries, head: end };
}
