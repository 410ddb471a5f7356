import type { ChainFault } from '../../src/log/fault.ts';
import type { Head } from '../../src/model/ids.ts';
import type { Picks } from '../charts/marker.tsx';
import { EntryLinks } from './entry-links.tsx';

const FAULT: { [fault in ChainFault['fault']]: string } = {
  order: 'an entry is missing, doubled or out of order',
  job: 'it belongs to another job',
  prev: 'it does not follow from the entry before it',
  hash: 'its content was changed after it was sealed',
  head: 'the log ends here, but its head names more entries: some are missing',
  names: 'the names beside it, or their salt, were changed after it was sealed',
  'names-missing': 'the names beside it are gone, and no entry says that they were forgotten',
  'names-back': 'names lie beside it that a later entry says were forgotten',
  ref: 'the id of another message is kept beside it',
  cut: 'the log ends, and it was longer before',
  rewritten: 'the log is another one than it was before',
  missing: 'nothing of the log is there',
};

/** Whether the log is whole, computed again here, and the figures to check a copy of it. */
export function Seal({ head, fault, onPick }: { head: Head; fault: ChainFault | undefined } & Picks) {
  return (
    <section class={fault ? 'seal broken' : 'seal'} aria-labelledby="seal-title">
      <h2 id="seal-title">{fault ? `Log broken at entry ${fault.seq}` : 'Log whole'}</h2>
      {fault ? (
        <p role="alert">
          At entry <EntryLinks seqs={[fault.seq]} onPick={onPick} /> {FAULT[fault.fault]}. Do not rely on this
          entry, on later ones, or on the summary.
        </p>
      ) : (
        <p>All {head.count} entries were checked on this device: none changed, missing or moved.</p>
      )}
      <dl>
        <dt>Job</dt>
        <dd class="code">{head.job}</dd>
        <dt>Entries</dt>
        <dd>{head.count}</dd>
        <dt>Head hash</dt>
        <dd class="code hash">
          {groups(head.hash).map((group) => (
            <span key={group.at}>{group.text}</span>
          ))}
        </dd>
      </dl>
      <p class="note">
        To verify: save the log as JSON Lines and compare its last line with the count and head hash of a copy
        kept elsewhere. Every line holds an entry and the SHA-256 hash of its exact text; each entry names the
        hash before it. If the whole log was replaced, only a copy kept elsewhere shows it.{' '}
        <a href="/api/export.schema.json">What a line holds, as JSON Schema</a>
      </p>
    </section>
  );
}

/** Groups of eight characters, so that people can compare two hashes. */
const groups = (hash: string): { at: number; text: string }[] =>
  Array.from({ length: Math.ceil(hash.length / 8) }, (_, index) => ({
    at: index,
    text: hash.slice(index * 8, index * 8 + 8),
  }));
