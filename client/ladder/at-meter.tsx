import type { Action } from '../../src/model/advice.ts';
import { tripText } from '../../src/phrases/walking.ts';
import { countedOf } from '../../src/visit/state.ts';
import { tripsOf } from '../../src/visit/trips.ts';
import { QuickWords, SayBox } from '../at-meter/say-box.tsx';
import { linkTo } from '../browser/route.ts';
import type { Room } from '../seat/use-room.ts';
import { ToldBox } from '../seat/who-was-told.tsx';
import { ShareLink } from '../ui/share-link.tsx';

/** After these the meter is read: the trip is told before it. */
const DONE_AT_THE_BEAM: ReadonlySet<Action['kind']> = new Set(['turn', 'gain', 're-aim', 'block', 'unblock']);

/** What the panel's phone would have, on the one phone of a person who stands at the meter now. */
export function AtMeter({ room }: { room: Room }) {
  const { order, job } = room;
  const advice = order.kind === 'current' ? order.instruction.advice : undefined;
  const kind = advice?.action.kind;
  return (
    <>
      <ToldBox room={room} />
      {advice && DONE_AT_THE_BEAM.has(advice.action.kind) && (
        <p class="hint">{tripText(tripsOf(countedOf(job)), advice.figures)}</p>
      )}
      {kind === 'read' && (
        <>
          <SayBox room={room} alone={false} />
          <QuickWords room={room} />
        </>
      )}
    </>
  );
}

/** What only the panel's menu has for a crew of two. */
export function AloneMenu({ room, onAccept }: { room: Room; onAccept: () => void }) {
  const { watch } = room.saved;
  return (
    <>
      <button type="button" class="button" onClick={onAccept}>
        Accept the alignment
      </button>
      {watch && (
        <div>
          <h3>For a supervisor: watch, read only</h3>
          <ShareLink label="Link to watch" to={linkTo('review', { token: watch })} />
        </div>
      )}
    </>
  );
}
