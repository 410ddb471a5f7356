import { useEffect, useState } from 'preact/hooks';
import type { Room } from '../seat/use-room.ts';
import { ShareLink } from './share-link.tsx';
import './invite.css';

/** How the emitter's phone joins: a code to read out, a square code to scan, a link to send. */
export function InviteCard({ room }: { room: Room }) {
  const { link, now } = room;
  const invite = link.invites.emitter;
  const valid = invite && invite.expiresAt > now ? invite : undefined;
  const asked = link.outbox.some((p) => p.letter.t === 'invite');
  useEffect(() => {
    if (!valid && !asked && link.phase === 'live') room.post({ t: 'invite', seat: 'emitter' });
  }, [valid, asked, link.phase]);
  if (!valid) {
    return (
      <section class="card invite">
        <h2>The other phone</h2>
        <p class="hint">
          {link.phase === 'live' ? 'Asking for a code.' : 'The code comes when the link is there.'}
        </p>
      </section>
    );
  }
  const url = new URL(valid.path, location.origin).href;
  return (
    <section class="card invite">
      <h2>The other phone joins with</h2>
      <p class="invite-code">{spaced(valid.code)}</p>
      <Square text={url} />
      <ShareLink label="Link to join" url={url} />
      {isThisDeviceOnly(location.hostname) && (
        <p class="failure">
          This page was opened as {location.hostname}, which only this device can reach. Open it by the
          network address that the server prints, so that the other phone can follow.
        </p>
      )}
      <p class="hint">For one phone, once. Good for {minutesLeft(valid.expiresAt - now)}.</p>
    </section>
  );
}

const spaced = (code: string): string => `${code.slice(0, 3)} ${code.slice(3)}`;

const minutesLeft = (ms: number): string => {
  const minutes = Math.ceil(ms / 60_000);
  return minutes === 1 ? 'one more minute' : `${minutes} more minutes`;
};

const isThisDeviceOnly = (host: string): boolean => /^(localhost|127\.|\[::1\])/.test(host);

/** The square code's maker comes only when one is shown. */
function Square({ text }: { text: string }) {
  const [svg, setSvg] = useState<string>();
  useEffect(() => {
    let shown = true;
    import('uqr').then(
      ({ renderSVG }) => shown && setSvg(renderSVG(text, { border: 2 })),
      () => undefined,
    );
    return () => {
      shown = false;
    };
  }, [text]);
  // Our own address drawn by the library; nothing of it comes from a person.
  return svg ? (
    <div
      class="square"
      role="img"
      aria-label="Square code of the join link"
      dangerouslySetInnerHTML={{ __html: svg }}
    />
  ) : (
    <div class="square" />
  );
}
