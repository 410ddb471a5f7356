import { useState } from 'preact/hooks';
import type { Entry } from '../../src/model/entry.ts';
import type { Seat } from '../../src/model/facts.ts';
import { browserStorage } from '../browser/storage.ts';
import { NoVoice } from '../speak/no-voice.tsx';
import { isCautions } from '../speak/script.ts';
import type { Room } from './use-room.ts';

/** How long the last thing said to both stays on the screen, ms. */
export const SHOWN_MS = 15_000;

const HEARING: Record<'listening' | 'working' | 'done' | 'failed', string> = {
  listening: 'is speaking',
  working: 'has spoken: making words of it',
  done: '',
  failed: '',
};

/** The last read-back, question or notice, as a line; and what was refused, until it is put away. */
export function News({ room }: { room: Room }) {
  const { link, now, speaker, job, saved } = room;
  const [keeps] = useState(() => browserStorage.write('kept', true));
  const other: Seat = saved.seat === 'panel' ? 'emitter' : 'panel';
  const stage = link.hearing[other]?.stage;
  const hearing = stage && HEARING[stage] && `The ${other} ${HEARING[stage]}`;
  const said = lastSaid(link.entries);
  const onStage = job.query?.question && said?.text === job.query.text;
  const fresh = said && !onStage && now - said.at < SHOWN_MS ? said.text : '';
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
      {hearing && <p class="news-said">{hearing}</p>}
      {!keeps && <p class="failure">This browser keeps nothing: do not close or load this page again.</p>}
      {!speaker.unlocked && !speaker.settings.muted && (
        <p class="hint voice-off">Touch the screen to hear the voice.</p>
      )}
      <NoVoice speaker={speaker} />
    </div>
  );
}

/** The last thing told to both; `code` where it is a notice. */
export function lastSaid(entries: readonly Entry[]): { text: string; at: number; code?: string } | undefined {
  for (const { fact, at } of entries.slice(-LOOKED_AT).reverse()) {
    if (fact.type === 'readback' || fact.type === 'query') return { text: fact.text, at };
    if (fact.type === 'notice' && !isCautions(fact)) return { text: fact.text, at, code: fact.code };
  }
  return undefined;
}

/** Older entries than this many are never news. */
const LOOKED_AT = 12;
