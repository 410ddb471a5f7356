import { useState } from 'preact/hooks';
import { WORDS } from '../../src/phrases/buttons.ts';
import { needText } from '../../src/phrases/missing.ts';
import { acceptable } from '../../src/visit/periodic.ts';
import { commissionOf, shownLast } from '../../src/visit/search.ts';
import type { Room } from '../seat/use-room.ts';
import { Sheet } from '../ui/sheet.tsx';
import './at-meter.css';

const SHORTEST_REASON = 3;

const KEPT = 'Nothing was turned, and the signal is what the last visit left.';

/** Accepts on evidence. If evidence is missing, it needs a reason, which is kept for ever. */
export function AcceptSheet({ room, onClose }: { room: Room; onClose: () => void }) {
  const { job, now } = room;
  const [reason, setReason] = useState('');
  const { setup } = job;
  const commission = commissionOf(job);
  if (!setup || !commission) return null;
  const { missing, kept } = acceptable(commission, now);
  const accept = () => {
    room.say(WORDS.accept, 'button');
    onClose();
  };
  const override = (event: Event) => {
    event.preventDefault();
    if (reason.trim().length < SHORTEST_REASON) return;
    room.post({ t: 'override', reason: reason.trim() });
    onClose();
  };
  if (missing.length === 0) {
    return (
      <Sheet title={kept ? 'Keep the alignment' : 'Accept the alignment'} onClose={onClose}>
        <p>{kept ? KEPT : 'All the evidence is complete.'}</p>
        <button type="button" class="button main huge" onClick={accept}>
          Accept
        </button>
      </Sheet>
    );
  }
  return (
    <Sheet title="Not proven yet" onClose={onClose}>
      <p>Still missing:</p>
      <ul class="missing">
        {missing.map((item) => (
          <li key={item.id}>{needText(item, setup)}</li>
        ))}
      </ul>
      <p>The next steps give this evidence.</p>
      {shownLast(job) && (
        <details class="more">
          <summary>Accept against the evidence</summary>
          <form class="override" onSubmit={override}>
            <label for="reason">Reason</label>
            <textarea
              id="reason"
              rows={3}
              maxLength={500}
              value={reason}
              onInput={(event) => setReason(event.currentTarget.value)}
            />
            <p class="failure">
              This reason and all that is missing stay in the record for ever, on its first page.
            </p>
            <button type="submit" class="button danger" disabled={reason.trim().length < SHORTEST_REASON}>
              Accept with this reason
            </button>
          </form>
        </details>
      )}
    </Sheet>
  );
}
