import type { AdmissionAnswer } from '../../src/model/admission.ts';
import { personText } from '../../src/phrases/people.ts';
import type { Room } from '../seat/use-room.ts';
import '../ui/call-mark.css';

/** A phone without a code asks to be the emitter of this job: whether it is, only people can see. */
export function AskCard({ room }: { room: Room }) {
  const { link, now } = room;
  const { asks } = link;
  if (!asks || asks.expiresAt <= now) return null;
  const { ask, mark, device, person, replaces } = asks;
  const isSent = link.outbox.some(({ letter }) => letter.t === 'admit' && letter.ask === ask);
  const answer = (said: AdmissionAnswer) => room.post({ t: 'admit', ask, answer: said });
  return (
    <section class="card ask-card" role="alert">
      <h2>Is this your emitter?</h2>
      <p class="call-mark" translate={false}>
        {mark}
      </p>
      <p>Yes only if your colleague's phone shows the same word and number.</p>
      <p class="hint" translate={false}>
        {[person && personText(person), device].filter(Boolean).join(' · ')}
      </p>
      {replaces && <p class="hint">The phone that was at the emitter before loses its seat.</p>}
      {isSent ? (
        <p class="hint">Waiting to be sent</p>
      ) : (
        <div class="choices">
          <button type="button" class="button main" onClick={() => answer('yes')}>
            Yes, let it in
          </button>
          <button type="button" class="button" onClick={() => answer('no')}>
            No
          </button>
        </div>
      )}
    </section>
  );
}
