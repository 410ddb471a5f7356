import {
  DIGITS_READ,
  FORGET_VOICE,
  HEARD_BADLY,
  HEARD_WELL,
  LISTENS,
  OWN_VOICE,
  OWN_VOICE_NOT_STORED,
  OWN_VOICE_OFFER,
  READ_DIGITS,
  VOICE_UNCLEAR,
} from '../../src/phrases/own-voice.ts';
import { TO_READ } from '../../src/speech/to-read.ts';
import type { TalkView } from '../audio/talk-view.ts';

/** In the menu of a seat: ten digits may be read, once. `canHear`: the server hears; without it nothing can be learnt. */
export function OwnVoice({ talk, canHear }: { talk: TalkView; canHear: boolean }) {
  const { voice, state, failure } = talk;
  if (!globalThis.isSecureContext || (!canHear && voice === 'unknown')) return null;
  return (
    <section class="own-voice" aria-labelledby="own-voice-title">
      <h3 id="own-voice-title">{OWN_VOICE}</h3>
      {voice === 'reading' ? (
        <Reading talk={talk} />
      ) : (
        <>
          <p role="status">{failure ?? TOLD[voice]}</p>
          <p class="note">{OWN_VOICE_NOT_STORED}</p>
          {voice === 'badly' ? (
            <button type="button" class="button" onClick={talk.forgetVoice}>
              {FORGET_VOICE}
            </button>
          ) : (
            <button type="button" class="button" disabled={state.phase !== 'idle'} onClick={talk.read}>
              {READ_DIGITS}
            </button>
          )}
        </>
      )}
    </section>
  );
}

const TOLD = {
  unknown: OWN_VOICE_OFFER,
  unclear: VOICE_UNCLEAR,
  well: HEARD_WELL,
  badly: HEARD_BADLY,
} as const;

/** The digits are English on every phone: all that is heard is. */
function Reading({ talk: { state, feed } }: { talk: TalkView }) {
  return (
    <>
      <p class="to-read" lang="en" translate={false}>
        {TO_READ.join(' · ')}
      </p>
      <button
        type="button"
        class="button main"
        disabled={state.phase !== 'talking'}
        onClick={() => feed({ on: 'press' })}
      >
        {state.phase === 'talking' ? DIGITS_READ : LISTENS}
      </button>
    </>
  );
}
