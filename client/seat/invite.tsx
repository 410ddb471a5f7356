import { useEffect, useRef } from 'preact/hooks';
import type { Seat } from '../../src/model/facts.ts';
import { NetworkAddress } from '../address/network-address.tsx';
import { isThisDeviceOnly } from '../browser/this-device.ts';
import { lazy } from '../ui/lazy.tsx';
import { ShareLink } from '../ui/share-link.tsx';
import { Square } from '../ui/square.tsx';
import type { Room } from './use-room.ts';
import './invite.css';

/** How another phone joins: a code to read out, a square code to scan, a link to send. */
export function InviteCard({ room, seat, as }: InviteProps) {
  return room.saved.here ? (
    <MeetCard job={room.saved.job} as={as} />
  ) : (
    <CodeCard room={room} seat={seat} as={as} />
  );
}

interface InviteProps {
  room: Room;
  seat: Seat;
  as?: 'h1' | 'h2' | undefined;
}

/** Only where there is no server. */
const MeetCard = lazy(() => import('../meeting/meet-card.tsx').then((m) => m.MeetCard));

function CodeCard({ room, seat, as: Title = 'h2' }: InviteProps) {
  const { link, now } = room;
  const invite = link.invites[seat];
  const valid = invite && invite.expiresAt > now ? invite : undefined;
  const asked = useRef(false);
  const shown = useRef(false);
  if (valid) shown.current = true;
  // The link drops a code as soon as a phone has joined with it; one that has only expired stays there.
  const used = shown.current && !invite;
  const ask = () => room.post({ t: 'invite', seat });
  const live = link.phase === 'live';
  useEffect(() => {
    // Once for each missing code: after a refusal it must not ask again by itself.
    if (valid) asked.current = false;
    else if (live && !used && !asked.current) {
      asked.current = true;
      ask();
    }
  }, [valid, live]);
  if (used) {
    return (
      <section class="card invite">
        <Title>The {seat} phone has joined</Title>
        <p class="hint">Its code is used up.</p>
      </section>
    );
  }
  if (!valid) {
    const refusal = link.complaints.find(({ letter }) => letter?.t === 'invite');
    return (
      <section class="card invite">
        <Title>A code for the {seat} phone</Title>
        <p class={refusal ? 'failure' : 'hint'}>
          {refusal?.text ?? (live ? 'Asking for a code.' : 'It comes when there is a link.')}
        </p>
        {refusal && (
          <button type="button" class="button" onClick={ask}>
            Ask again
          </button>
        )}
      </section>
    );
  }
  const url = new URL(valid.path, location.origin).href;
  const minutes = Math.ceil((valid.expiresAt - now) / 60_000);
  return (
    <section class="card invite">
      <Title>Code for the {seat} phone</Title>
      <p class="invite-code" translate={false}>
        {spaced(valid.code)}
      </p>
      <Square text={url} label="Square code of the join link" />
      <ShareLink label="Link to join" to={valid.path} />
      {isThisDeviceOnly(location.hostname) && (
        <>
          <p class="failure">
            This page was opened as {location.hostname}, which only this device can reach. Open it at the
            network address that the server prints. Then the other phone can join.
          </p>
          <NetworkAddress />
        </>
      )}
      {seat === 'emitter' && link.word !== undefined && <AskedInstead word={link.word} />}
      <p class="hint">For one phone, once. Valid for {minutesText(minutes)}.</p>
    </section>
  );
}

/** For a phone that can neither scan nor type the code: it asks, and the panel says yes or no. */
const AskedInstead = ({ word }: { word: string }) => (
  <p class="invite-word">
    Without the code: the other phone asks the panel, with the job word{' '}
    <strong translate={false}>{word}</strong>
  </p>
);

const spaced = (code: string): string => `${code.slice(0, 3)} ${code.slice(3)}`;

const minutesText = (minutes: number): string =>
  minutes === 1 ? 'one more minute' : `${minutes} more minutes`;
