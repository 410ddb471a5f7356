import type { MessageId } from '../../src/model/ids.ts';
import { MAX_TALK_MS } from '../../src/protocol/socket.ts';

/**
 * One button for both habits: hold it while speaking, or tap it, speak, and tap again. A plain record and one
 * pure step; `use-talk.ts` runs the microphone and the link.
 */
export type TalkState =
  | { phase: 'idle' }
  /** The microphone opens. `released`: the finger is already off, so it was a tap. */
  | { phase: 'opening'; pressedAt: number; released: boolean }
  | { phase: 'talking'; id: MessageId; pressedAt: number; since: number; latched: boolean }
  /** Sent: the server turns it into words. */
  | { phase: 'working'; id: MessageId; since: number };

export type TalkEvent =
  | { on: 'press' }
  | { on: 'release' }
  /** A call, a scroll or a dialog interrupted the finger: no talk was meant. */
  | { on: 'cancel' }
  /** The microphone is open and the server knows about the talk. */
  | { on: 'opened'; id: MessageId }
  | { on: 'failed' }
  /** The server has finished with the utterance, with or without words. */
  | { on: 'answered'; id: MessageId }
  | { on: 'tick' };

export type TalkEffect = 'open' | 'send' | 'drop' | 'close';

/** A press shorter than this is a tap. */
export const TAP_MS = 350;
/** It is sent before the server would cut it. */
export const LONGEST_MS = MAX_TALK_MS - 500;
/** If no answer comes within this time, the button is free again. */
export const ANSWER_WITHIN_MS = 12_000;

export const IDLE: TalkState = { phase: 'idle' };

export interface Talked {
  state: TalkState;
  effects: TalkEffect[];
}

export function talk(state: TalkState, event: TalkEvent, now: number): Talked {
  switch (event.on) {
    case 'press':
      if (state.phase === 'talking' && state.latched) return send(state.id, now);
      if (state.phase !== 'idle') return stay(state);
      return { state: { phase: 'opening', pressedAt: now, released: false }, effects: ['open'] };
    case 'release':
      return released(state, now);
    case 'cancel':
      return state.phase === 'opening' || (state.phase === 'talking' && !state.latched)
        ? drop()
        : stay(state);
    case 'opened':
      return opened(state, event.id, now);
    case 'failed':
      return state.phase === 'idle' ? stay(state) : drop();
    case 'answered':
      return state.phase === 'working' && state.id === event.id ? stay(IDLE) : stay(state);
    case 'tick':
      if (state.phase === 'talking' && now - state.since >= LONGEST_MS) return send(state.id, now);
      if (state.phase === 'working' && now - state.since >= ANSWER_WITHIN_MS) return stay(IDLE);
      return stay(state);
  }
}

function released(state: TalkState, now: number): Talked {
  if (state.phase === 'opening') {
    // Released before the microphone was open: nothing was recorded.
    return now - state.pressedAt < TAP_MS ? stay({ ...state, released: true }) : drop();
  }
  if (state.phase !== 'talking' || state.latched) return stay(state);
  return now - state.pressedAt < TAP_MS ? stay({ ...state, latched: true }) : send(state.id, now);
}

function opened(state: TalkState, id: MessageId, now: number): Talked {
  if (state.phase !== 'opening') return stay(state);
  const { pressedAt, released: latched } = state;
  return stay({ phase: 'talking', id, pressedAt, since: now, latched });
}

const stay = (state: TalkState): Talked => ({ state, effects: [] });

const send = (id: MessageId, now: number): Talked => ({
  state: { phase: 'working', id, since: now },
  effects: ['send', 'close'],
});

const drop = (): Talked => ({ state: IDLE, effects: ['drop', 'close'] });
