import { isOnePhone } from '../../src/model/alone.ts';
import type { Seat } from '../../src/model/facts.ts';
import { KEPT_HERE } from '../../src/phrases/brought.ts';
import { noLinkSinceText } from '../../src/phrases/offline.ts';
import { watchedByText } from '../../src/phrases/watching.ts';
import { clock } from '../browser/times.ts';
import type { Phase } from '../link/link.ts';
import { keepsRecord } from '../saved/saved-seats.ts';
import { Mark } from '../ui/mark.tsx';
import type { Room } from './use-room.ts';

const LINK_WORDS: Record<Phase, string> = {
  resting: 'No link',
  connecting: 'Connecting',
  'catching-up': 'Catching up',
  live: 'Linked',
  ended: 'No link',
};

const PRESENCE_WORDS = { empty: 'not joined', away: 'away', online: 'here' } as const;

/** The top of both seats' screens: the link, the other phone, what waits to be sent, and the menu. */
export function Strip({ room, onMenu }: { room: Room; onMenu: () => void }) {
  const { link, saved } = room;
  const other: Seat = saved.seat === 'panel' ? 'emitter' : 'panel';
  const isAlone = isOnePhone(room.job.setup?.alone);
  const there = link.phase === 'live' && !isAlone ? link.presence?.[other] : undefined;
  const watchers = (link.phase === 'live' && link.presence?.watchers) || 0;
  return (
    <header class="strip">
      <Mark size={32} />
      <div class="strip-states" role="status">
        {keepsRecord(saved) ? (
          <State good={false} text={KEPT_HERE} />
        ) : (
          <State good={link.phase === 'live'} text={linkText(room)} />
        )}
        {there && (
          <State
            good={there === 'online'}
            text={`${other === 'panel' ? 'Panel' : 'Emitter'} ${PRESENCE_WORDS[there]}`}
          />
        )}
        {watchers > 0 && <span>{watchedByText(watchers, link.presence?.watching ?? [])}</span>}
        {link.outbox.length > 0 && <span class="strip-pending">{link.outbox.length} to send</span>}
      </div>
      <button type="button" class="button strip-menu" onClick={onMenu}>
        Menu
      </button>
    </header>
  );
}

/** A first try may succeed at once. After a failed one it is said since when nothing was heard. */
function linkText({ link: { phase, failures }, lastLinked }: Room): string {
  const lost = phase === 'resting' || phase === 'ended' || (phase === 'connecting' && failures > 0);
  return lost && lastLinked !== undefined ? noLinkSinceText(clock(lastLinked, false)) : LINK_WORDS[phase];
}

/** A full disc or an open ring before the word, so that colour alone is never needed. */
const State = ({ good, text }: { good: boolean; text: string }) => (
  <span class={good ? 'state good' : 'state bad'}>
    <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      <circle cx="6" cy="6" r="4.5" />
    </svg>
    {text}
  </span>
);
