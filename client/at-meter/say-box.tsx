import { useRef, useState } from 'preact/hooks';
import type { Action } from '../../src/model/advice.ts';
import { WORDS } from '../../src/phrases/buttons.ts';
import type { Room } from '../seat/use-room.ts';
import { NumberPad } from './number-pad.tsx';
import './at-meter.css';

/** A phone that is held has no keys of its own; at a desk the pad would only take room. */
const isHeld = (): boolean => matchMedia('(pointer: coarse)').matches;

/**
 * To type a reading or any other words. On a phone with figures of our own, large enough for a glove; the keyboard of the
 * phone, with letters, needs one tap. `alone`: nobody is at the emitter, and the code for its phone needs the room.
 */
export function SayBox({ room, alone }: { room: Room; alone: boolean }) {
  const [text, setText] = useState('');
  const [letters, setLetters] = useState(false);
  const box = useRef<HTMLInputElement>(null);
  const pad = isHeld() && !letters && !alone && !looksElsewhere(room);
  const submit = (event: Event) => {
    event.preventDefault();
    const words = text.trim();
    if (words === '') return;
    room.say(words, 'typed');
    setText('');
    if (!pad) box.current?.focus();
  };
  return (
    <form class="say-box" onSubmit={submit}>
      {pad && <NumberPad text={text} meter={room.job.setup?.meter} onText={setText} />}
      <button
        type="button"
        class="button"
        aria-label={letters ? 'Keyboard with figures' : 'Keyboard with letters'}
        onClick={() => {
          setLetters(!letters);
          if (!letters || !isHeld()) box.current?.focus();
        }}
      >
        {letters ? '123' : 'abc'}
      </button>
      <input
        ref={box}
        value={text}
        // Made new for the other keyboard: browsers do not change the keyboard of a box in use.
        key={letters ? 'letters' : 'figures'}
        inputMode={letters ? 'text' : pad ? 'none' : 'decimal'}
        enterkeyhint="send"
        aria-label="Type the reading, or anything you would say"
        placeholder={letters ? 'Say it in words' : 'Reading'}
        maxLength={500}
        autocomplete="off"
        autocapitalize="none"
        onInput={(event) => setText(event.currentTarget.value)}
      />
      <button type="submit" class="button main" disabled={text.trim() === ''}>
        Send
      </button>
    </form>
  );
}

/** In place of a number. */
const FIRST = [
  { label: 'No signal', words: WORDS.noSignal },
  { label: 'Saturated', words: WORDS.saturated },
];
const REST = [
  { label: 'Steady', words: WORDS.steady },
  { label: 'Rising', words: WORDS.rising },
  { label: 'Falling', words: WORDS.falling },
  { label: 'Blocked', words: WORDS.blocked },
  { label: 'Clear', words: WORDS.clear },
];

/** During these, nobody looks at the meter. */
const NO_METER: ReadonlySet<Action['kind']> = new Set([
  'confirm-item',
  'check',
  'settle-issue',
  'offer-sign',
  'finished',
]);

const looksElsewhere = ({ order }: Room): boolean =>
  order.kind === 'current' && NO_METER.has(order.instruction.advice.action.kind);

/** A number is said or typed. The words that stand for one come first, the rest is one tap away. */
export function QuickWords({ room }: { room: Room }) {
  const [all, setAll] = useState(false);
  const halted = room.job.paused || room.job.stopped;
  const words = looksElsewhere(room) ? [] : all ? [...FIRST, ...REST] : FIRST;
  return (
    <div class="quick">
      {words.map(({ label, words }) => (
        <button key={words} type="button" class="button" onClick={() => room.say(words, 'button')}>
          {label}
        </button>
      ))}
      {words.length > 0 && (
        <button type="button" class="button" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? 'Fewer' : 'More'}
        </button>
      )}
      <button type="button" class="button" disabled={halted} onClick={() => room.say(WORDS.wait, 'button')}>
        Wait
      </button>
    </div>
  );
}
