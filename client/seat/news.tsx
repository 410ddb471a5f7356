import type { Entry } from '../../src/log/entry.ts';
import type { Room } from './use-room.ts';

/** How long the last thing said to both stays on the screen, ms. */
const SHOWN_MS = 15_000;

/** The last read-back, question or notice, as a line; and what was refused, until it is put away. */
export function News({ room }: { room: Room }) {
  const { link, now, speaker } = room;
  const said = lastSaid(link.entries);
  const fresh = said && now - said.at < SHOWN_MS ? said.text : '';
  return (
    <div class="news">
      <p class="news-said" aria-live="polite">
        {fresh}
      </p>
      {link.complaints.map((complaint) => (
        <div key={complaint.reason} class="complaint" role="alert">
          <p>
            {complaint.letter && 'text' in complaint.letter && <q>{complaint.letter.text}</q>}{' '}
            {complaint.text}
          </p>
          <button type="button" class="button" onClick={() => room.dismiss(complaint)}>
            Close
          </button>
        </div>
      ))}
      {!speaker.unlocked && !speaker.settings.muted && (
        <p class="hint voice-off">Touch the screen to hear the voice.</p>
      )}
      {speaker.silent && <p class="failure">The voice is silent: read the screen.</p>}
    </div>
  );
}

function lastSaid(entries: readonly Entry[]): { text: string; at: number } | undefined {
  for (let i = entries.length - 1; i >= Math.max(0, entries.length - 12); i--) {
    const { fact, at } = entries[i] as Entry;
    // The cautions were read and agreed to on a page of their own.
    if (fact.type === 'notice' && fact.code === 'cautions') continue;
    if (fact.type === 'readback' || fact.type === 'query' || fact.type === 'notice')
      return { text: fact.text, at };
  }
  return undefined;
}
