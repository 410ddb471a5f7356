import { follow, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { keepHandsFree } from './hands-free-choice.ts';
import { meterShare } from './level.ts';
import type { TalkView } from './talk-view.ts';
import './talk-button.css';

/** Hold it while speaking, or tap, speak, and tap again. */
export function TalkButton({ talk, speechReady }: { talk: TalkView; speechReady: boolean }) {
  const { state, db, clipping, failure, tooLoud, feed } = talk;
  const open = state.phase === 'talking';
  const choose = (on: boolean) => {
    keepHandsFree(browserStorage, on);
    talk.setHandsFree(on);
  };
  const press = (event: PointerEvent) => {
    if (event.button !== 0) return;
    // So that the release comes here, even when the finger moves off the button.
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
    feed({ on: 'press' });
  };
  const key = (event: KeyboardEvent, on: 'press' | 'release') => {
    if (event.key !== ' ' && event.key !== 'Enter') return;
    event.preventDefault();
    if (!event.repeat) feed({ on });
  };
  if (!globalThis.isSecureContext && talk.handsFree === 'off') {
    return (
      <p class="talk-note" role="status">
        The microphone is off: this page came over plain http. Type instead, or{' '}
        <a href={linkTo('trust', {})} onClick={follow}>
          turn it on
        </a>
        .
      </p>
    );
  }
  const canHear = speechReady || talk.onDevice === 'ready';
  if (!canHear && state.phase === 'idle' && talk.handsFree === 'off') {
    return (
      <p class="talk-note" role="status">
        Speech is not ready: type the reading.
      </p>
    );
  }
  const problem =
    failure ??
    (clipping ? 'Too loud: hold the phone further away.' : undefined) ??
    (tooLoud ? 'Too loud here: type the numbers.' : undefined);
  if (talk.handsFree !== 'off') {
    return (
      <div class="talk">
        <button
          type="button"
          class={talk.handsFree === 'hearing' ? 'button talk-button talk-talking' : 'button talk-button'}
          aria-pressed={true}
          onClick={() => choose(false)}
        >
          <span class="talk-level" style={{ transform: `scaleX(${meterShare(db)})` }} />
          <span class="talk-label">{HANDS_FREE[talk.handsFree]}</span>
        </button>
        <Note problem={problem} />
      </div>
    );
  }
  return (
    <div class="talk">
      <button
        type="button"
        class={`button talk-button talk-${state.phase}`}
        aria-pressed={open}
        onPointerDown={press}
        onPointerUp={() => feed({ on: 'release' })}
        onPointerCancel={() => feed({ on: 'cancel' })}
        onContextMenu={(event) => event.preventDefault()}
        onKeyDown={(event) => key(event, 'press')}
        onKeyUp={(event) => key(event, 'release')}
      >
        <span class="talk-level" style={{ transform: `scaleX(${open ? meterShare(db) : 0})` }} />
        <span class="talk-label">{label(talk)}</span>
      </button>
      {state.phase === 'idle' && (
        <button type="button" class="button" onClick={() => choose(true)}>
          Talk hands-free
        </button>
      )}
      <Note problem={problem} />
    </div>
  );
}

const Note = ({ problem }: { problem: string | undefined }) => (
  <p class={problem ? 'talk-note failure' : 'talk-note'} role="status">
    {problem}
  </p>
);

const HANDS_FREE = {
  opening: 'Opening the microphone',
  listening: 'Hands-free: just speak. Tap to stop',
  hearing: 'Hearing you',
} as const;

function label({ state }: TalkView): string {
  switch (state.phase) {
    case 'idle':
      return 'Hold or tap to talk';
    case 'opening':
      return 'Opening the microphone';
    case 'talking':
      return state.latched ? 'Listening. Tap to send' : 'Listening. Let go to send';
    case 'working':
      return 'Turning it into words';
  }
}
