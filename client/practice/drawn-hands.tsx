import { useMemo } from 'preact/hooks';
import type { Entry } from '../../src/model/entry.ts';
import type { Placed } from '../../src/model/placed.ts';
import type { HandAct } from '../../src/model/practice.ts';
import { AXES, type Axis, type Eighths } from '../../src/model/turns.ts';
import { CALLED_OUT, turnedText, turnLabel } from '../../src/phrases/practice.ts';
import { readingText } from '../../src/phrases/readings.ts';
import { type Hall, hallOf } from '../../src/practice/hall.ts';
import { shownBy } from '../../src/practice/meter.ts';
import { useHall } from './use-hall.ts';
import './practice.css';

interface HandsProps {
  entries: readonly Entry[];
  /** The order that is valid now. */
  order: Placed<'instruction'> | undefined;
  now: number;
  /** A simulated colleague calls the meter out while the gain is set. */
  isCalledOut: boolean;
  onAct: (act: HandAct) => void;
}

/** What the hands at the emitter can do now, drawn. Only what is done here happens to the beam; "done" does nothing. */
export function DrawnHands({ entries, order, now, isCalledOut, onAct }: HandsProps) {
  const hall = useHall(entries);
  const seq = order?.seq;
  const before = useMemo(() => (seq === undefined ? undefined : hallOf(entries.slice(0, seq))), [seq]);
  const action = order?.advice.action;
  if (!hall || !before || !action) return null;
  switch (action.kind) {
    case 'turn':
      return (
        <section class="drawn-hands" aria-label="Drawn screws">
          {AXES.map((axis) => (
            <DrawnScrew
              key={axis}
              axis={axis}
              turned={hall.pair.turned[axis] - before.pair.turned[axis]}
              onTurn={(eighths) => onAct({ did: 'turn', axis, eighths })}
            />
          ))}
        </section>
      );
    case 'gain':
      return <DrawnGain hall={hall} now={now} isCalledOut={isCalledOut} onAct={onAct} />;
    case 're-aim':
      return (
        <section class="drawn-hands" aria-label="Drawn emitter">
          <p>{hall.aims > before.aims ? 'It points at the receiver now.' : 'It points past the receiver.'}</p>
          <button type="button" class="button" onClick={() => onAct({ did: 'aim' })}>
            Aim at the receiver
          </button>
        </section>
      );
    case 'block':
    case 'unblock': {
      const { blocked } = hall.pair;
      return (
        <section class="drawn-hands" aria-label="Drawn card">
          <p>{blocked ? 'The card is in the beam.' : 'The card is out of the beam.'}</p>
          <button type="button" class="button" onClick={() => onAct({ did: 'card', inPath: !blocked })}>
            {blocked ? 'Take the card out' : 'Hold the card in'}
          </button>
        </section>
      );
    }
    default:
      return null;
  }
}

/** One tap turns so far, eighths. */
const TURNS: readonly { eighths: Eighths; label: string }[] = [
  { eighths: -4, label: '↺ ½' },
  { eighths: -1, label: '↺ ⅛' },
  { eighths: 1, label: '↻ ⅛' },
  { eighths: 4, label: '↻ ½' },
];

interface ScrewProps {
  axis: Axis;
  /** Since the order came, eighths. */
  turned: Eighths;
  onTurn: (eighths: Eighths) => void;
}

const DrawnScrew = ({ axis, turned, onTurn }: ScrewProps) => (
  <div class="drawn-screw">
    <p role="status">{turnedText(axis, turned)}</p>
    <div class="drawn-keys">
      {TURNS.map(({ eighths, label }) => (
        <button
          key={eighths}
          type="button"
          class="button"
          aria-label={turnLabel(axis, eighths)}
          onClick={() => onTurn(eighths)}
        >
          {label}
        </button>
      ))}
    </div>
  </div>
);

const STEPS_DB = [-3, -0.5, 0.5, 3];

/** The gain is turned by small steps; it is kept as dB below full. */
function DrawnGain({
  hall,
  now,
  isCalledOut,
  onAct,
}: Omit<HandsProps, 'entries' | 'order'> & { hall: Hall }) {
  const { gainDb, spec } = hall.pair;
  const change = (by: number) => {
    const db = Math.min(spec.gainRangeDb, Math.max(0, gainDb - by));
    onAct({ did: 'gain', db });
  };
  return (
    <section class="drawn-hands" aria-label="Drawn gain">
      <p role="status">
        {gainDb === 0 ? 'Gain: full' : `Gain: ${gainDb.toFixed(1)} dB below full`}
        {isCalledOut && (
          <>
            . {CALLED_OUT}: <strong>{readingText(shownBy(hall, now), hall.setup.meter)}</strong>
          </>
        )}
      </p>
      <div class="drawn-keys">
        {STEPS_DB.map((by) => (
          <button key={by} type="button" class="button" onClick={() => change(by)}>
            {by < 0 ? `Down ${-by}` : `Up ${by}`}
          </button>
        ))}
      </div>
    </section>
  );
}
