import type { ComponentChildren } from 'preact';
import type { Action } from '../../src/model/advice.ts';
import { isOnItsSide, type Mounting, movesAlong } from '../../src/model/mounting.ts';
import { MARKED } from '../../src/phrases/mounting.ts';

/** How each kind of instruction looks. Each has its own word, colour and shape: colour alone is never enough. */
export interface Kind {
  /** Names the custom properties in `instruction.css`. */
  look:
    | 'horizontal'
    | 'vertical'
    | 'gain'
    | 'hold'
    | 'read'
    | 'ask'
    | 'path'
    | 'look'
    | 'ok'
    | 'rest'
    | 'stop';
  word: string;
  shape: ComponentChildren;
}

const svg = (children: ComponentChildren) => (
  <svg class="kind-shape" viewBox="0 0 40 40" aria-hidden="true">
    {children}
  </svg>
);

const SHAPES = {
  horizontal: svg(<path d="M2 20 12 10v6h16v-6l10 10-10 10v-6H12v6z" />),
  vertical: svg(<path d="M20 2 30 12h-6v16h6L20 38 10 28h6V12h-6z" />),
  gain: svg(<path d="M4 34 36 34 36 8z" />),
  hold: svg(<path d="M8 5h9v30H8zM23 5h9v30h-9z" />),
  read: svg(<path d="M3 31a17 17 0 0 1 34 0zM18 30 27 15l4 3-9 14z" fill-rule="evenodd" />),
  ask: svg(
    <>
      <path d="M20 1 39 20 20 39 1 20z" />
      <path class="kind-cut" d="M15 16a5 5 0 1 1 7 4.500q-2 1-2 3.500M20 29v.1" />
    </>,
  ),
  path: svg(<path d="M2 17h13v6H2zM25 17h13v6H25zM17 4h6v32h-6z" />),
  look: svg(<path d="M20 3 39 36H1zM18 15v11h4V15zM18 29v4h4v-4z" fill-rule="evenodd" />),
  ok: svg(<path d="M4 21 10 15l7 7L31 7l6 6-20 21z" />),
  rest: svg(<path d="M6 18h8v8H6zM17 18h8v8h-8zM28 18h8v8h-8z" />),
  stop: svg(<path d="M13 2h14l11 11v14L27 38H13L2 27V13z" />),
};

const kind = (look: Kind['look'], word: string): Kind => ({ look, word, shape: SHAPES[look] });

export const ASKING = kind('ask', 'Question');
export const RESTING = kind('rest', 'Nothing to do');
export const PAUSED = kind('hold', 'Waiting for you');
export const STOPPED = kind('stop', 'Stopped');
export const UNSURE = kind('stop', 'No link');

/** `mounting`: how the emitter hangs; the arrow of an adjuster points along the way that the beam then moves. */
export function kindOf(action: Action, mounting: Mounting = 'upright'): Kind {
  switch (action.kind) {
    case 'turn': {
      const { axis } = action;
      const shape = SHAPES[movesAlong(mounting, axis) === 'left-right' ? 'horizontal' : 'vertical'];
      return { look: axis, word: isOnItsSide(mounting) ? MARKED[axis] : `${axis} adjuster`, shape };
    }
    case 'gain':
      return kind('gain', 'Gain');
    case 'read':
      return kind('read', action.as === 'trend' ? 'Look at the light' : 'Read the meter');
    case 'hold':
      return kind('hold', 'Hands off');
    case 're-aim':
      return kind('look', 'Aim by eye');
    case 'block':
    case 'unblock':
      return kind('path', 'Beam path');
    case 'cover':
    case 'uncover':
      return kind('path', 'Receiver');
    case 'watch-panel':
      return kind('read', 'Watch the panel');
    case 'confirm-item':
      return kind('ask', 'Checklist');
    case 'ask':
      return ASKING;
    case 'settle-issue':
      return kind('look', 'Open issue');
    case 'offer-sign':
      return kind('ok', 'Ready to sign');
    case 'check':
      return kind('look', 'Check');
    case 'offer-accept':
      return kind('ok', 'Ready');
    case 'finished':
      return kind('ok', 'Finished');
  }
}

/** The coloured head of an instruction. */
export const Band = ({ kind: { look, word, shape }, note }: { kind: Kind; note?: string | undefined }) => (
  <div class={`band band-${look}`}>
    {shape}
    <strong>{word}</strong>
    {note && <span class="band-note">{note}</span>}
  </div>
);
