import { useEffect, useState } from 'preact/hooks';
import { isOnePhone } from '../../src/model/alone.ts';
import { MEET_AGAIN } from '../../src/phrases/meeting.ts';
import { InviteCard } from '../seat/invite.tsx';
import type { Room } from '../seat/use-room.ts';
import { Sheet } from '../ui/sheet.tsx';

/** Without a server, while the other phone is away: a line that broke comes back only by a new meeting. */
export function MeetAgain({ room }: { room: Room }) {
  const [open, setOpen] = useState(false);
  const isAway = room.link.presence?.emitter === 'away' && !isOnePhone(room.job.setup?.alone);
  useEffect(() => {
    if (!isAway) setOpen(false);
  }, [isAway]);
  if (open)
    return (
      <Sheet title={MEET_AGAIN} onClose={() => setOpen(false)}>
        <InviteCard room={room} seat="emitter" />
      </Sheet>
    );
  return isAway ? (
    <button type="button" class="button main" onClick={() => setOpen(true)}>
      {MEET_AGAIN}
    </button>
  ) : null;
}
