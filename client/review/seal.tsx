import type { ChainFault } from '../../src/log/fault.ts';
import type { Head } from '../../src/model/ids.ts';
import type { Picks } from '../charts/marker.tsx';
import { EntryLinks } from './entry-links.tsx';

const FAULT: { [fault in ChainFault['fault']]: string } = {
  order: 'an entry is missing, doubled or out of order',
  job: 'it belongs to another job',
  prev: 'it does not follow from the entry before it',
  hash: 'its content is not what was sealed',
  head: 'the log ends here, but its head says otherwise: entries are missing',
};

/** Whether the log is whole, recomputed here, and the figures by which a copy of it can be checked. */
export function Seal({ head, fault, onPick }: { head: Head; fault: ChainFault | undefined } & Picks) {
  return (
    <section class={fault ? 'seal broken' : 'seal'} aria-labelledby="seal-title">
      <h2 id="seal-title">{fault ? `Log broken at entry ${fault.seq}` : 'Log whole'}</h2>
      {fault ? (
        <p role="alert">
          At entry <EntryLinks seqs={[fault.seq]} onPick={onPick} /> {FAULT[fault.fault]}. Do not rely on what
          stands there or after it, nor on the summary.
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
        hash before it. A log replaced as a whole shows only against a copy kept elsewhere.{' '}
        <a href="/api/export.schema.json">What a line holds, as JSON Schema</a>
      </p>
    </section>
  );
}

/** Eight characters together, so that two hashes can be compared by eye. */
const groups = (hash: string): { at: number; text: string }[] =>
  Array.from({ length: Math.ceil(hash.length / 8) }, (_, index) => ({
    at: index,
    text: hash.slice(index * 8, index * 8 + 8),
  }));
