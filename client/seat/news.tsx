import { useState } from 'preact/hooks';
import type { Entry } from '../../src/model/entry.ts';
import type { Seat } from '../../src/model/facts.ts';
import { BRING_IN_MENU } from '../../src/phrases/brought.ts';
import { SCREEN_SLEEPS } from '../../src/phrases/cautions.ts';
import { planNowText } from '../../src/phrases/plan-changes.ts';
import { watcherRemarkText } from '../../src/phrases/watching.ts';
import { browserStorage } from '../browser/storage.ts';
import { keepsRecord } from '../saved/saved-seats.ts';
import { NoVoice } from '../speak/no-voice.tsx';
import { isCautions } from '../speak/script.ts';
import type { Room } from './use-room.ts';

/** How long the last words for both seats stay on the screen, ms. */
export const SHOWN_MS = 15_000;

const HEARING = { listening: 'is speaking', working: 'has spoken: turning it into words' } as const;

/** The last read-back, question or notice, as one line; and refusals, until they are closed. */
export function News({ room }: { room: Room }) {
  const { link, now, speaker, job, saved } = room;
  const [keeps] = useState(() => browserStorage.write('kept', true));
  const other: Seat = saved.seat === 'panel' ? 'emitter' : 'panel';
  const stage = link.hearing[other]?.stage;
  const hearing = (stage === 'listening' || stage === 'working') && `The ${other} ${HEARING[stage]}`;
  const said = lastSaid(link.entries);
  const onStage = job.query?.question && said?.text === job.query.text;
  const planNow = planNowText(job);
  const fresh = said && !onStage && now - said.at < SHOWN_MS ? said.text : '';
  return (
    <div class="news">
      {planNow && (
        <p class="failure" role="alert">
          {planNow}
        </p>
      )}
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
      {keepsRecord(saved) && job.accepted && (
        <p class="hint" role="status">
          {BRING_IN_MENU}
        </p>
      )}
      {!keeps && (
        <p class="failure">This browser keeps nothing. Do not close this page, and do not load it again.</p>
      )}
      {!speaker.unlocked && !speaker.settings.muted && (
        <p class="hint voice-off">Touch the screen to hear the voice.</p>
      )}
      {room.screenSleeps && (
        <p class="hint" role="status">
          {SCREEN_SLEEPS}
        </p>
      )}
      <NoVoice speaker={speaker} />
    </div>
  );
}

/** The last words for both seats. A notice has its `code`. */
export function lastSaid(entries: readonly Entry[]): { text: string; at: number; code?: string } | undefined {
  for (const { fact, at } of entries.slice(-LOOKED_AT).reverse()) {
    // What was said before the crew went on is done with: it must not stand under a live step.
    if (fact.type === 'resume' || fact.type === 'restarted') return undefined;
    if (fact.type === 'readback' || fact.type === 'query') return { text: fact.text, at };
    if (fact.type === 'watcher-remark') return { text: watcherRemarkText(fact), at };
    if (fact.type === 'notice' && !isCautions(fact)) return { text: fact.text, at, code: fact.code };
  }
  return undefined;
}

/** Only this many of the last entries can be news. */
const LOOKED_AT = 12;
