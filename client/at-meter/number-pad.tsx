import type { MeterProfile } from '../../src/model/profile.ts';
import { PAD_BACK, PAD_MINUS, PAD_POINT } from '../../src/phrases/buttons.ts';

interface PadProps {
  text: string;
  meter: MeterProfile | undefined;
  onText: (text: string) => void;
}

/** The longest number that any meter shows, with its sign and point. */
const LONGEST = 9;

/** Figures for one thumb in a glove. What is typed stands in the box below it, and is sent from there. */
export function NumberPad({ text, meter, onText }: PadProps) {
  const put = (key: string) => onText(text.length < LONGEST ? text + key : text);
  const key = (label: string) => (
    <button key={label} type="button" class="button pad-key" onClick={() => put(label)}>
      {label}
    </button>
  );
  return (
    <div class="number-pad">
      {['1', '2', '3'].map(key)}
      <button
        type="button"
        class="button pad-key"
        aria-label={PAD_BACK}
        disabled={text === ''}
        onClick={() => onText(text.slice(0, -1))}
      >
        ⌫
      </button>
      {['4', '5', '6'].map(key)}
      <Sign meter={meter} text={text} onPut={put} />
      {['7', '8', '9', '0'].map(key)}
    </div>
  );
}

/** A minus comes first, where the meter has numbers below zero; a point later, where it has parts of one. */
function Sign({ meter, text, onPut }: Omit<PadProps, 'onText'> & { onPut: (key: string) => void }) {
  const minus = text === '' && meter !== undefined && meter.min < 0;
  const none = minus ? false : text.includes('.') || (meter && Number.isInteger(meter.resolution));
  return (
    <button
      type="button"
      class="button pad-key"
      aria-label={minus ? PAD_MINUS : PAD_POINT}
      disabled={none || (!minus && text === '')}
      onClick={() => onPut(minus ? '-' : '.')}
    >
      {minus ? '−' : '.'}
    </button>
  );
}
