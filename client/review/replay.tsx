import { useEffect, useRef, useState } from 'preact/hooks';
import type { Entry } from '../../src/model/entry.ts';
import { clock } from '../browser/times.ts';
import { useReplayVoice, voiceAvailable } from './use-replay-voice.ts';

const SPEEDS = [1, 5, 20, 60];
const FRAME_MS = 100;

/** How many entries are shown: all of them, new ones too; or the first `count`. */
export type Shown = 'all' | { count: number };

export const shownCount = (shown: Shown, entries: readonly Entry[]): number =>
  shown === 'all' ? entries.length : Math.min(shown.count, entries.length);

/** The first entries up to a time. */
const countAt = (entries: readonly Entry[], at: number): number => {
  const later = entries.findIndex((entry) => entry.at > at);
  return later < 0 ? entries.length : later;
};

interface Props {
  entries: readonly Entry[];
  shown: Shown;
  onShow: (shown: Shown) => void;
}

/** Goes back to any moment of the job, and plays from there. */
export function Replay({ entries, shown, onShow }: Props) {
  const [playing, setPlaying] = useState(false);
  const [speed, setSpeed] = useState(20);
  const [aloud, setAloud] = useState(false);
  const count = shownCount(shown, entries);
  const last = entries[count - 1];
  useReplayVoice(entries, count, aloud && playing);
  const show = (to: number) => onShow(to >= entries.length ? 'all' : { count: to });

  /** The moment being played, ms on the log's clock. */
  const moment = useRef(0);
  useEffect(() => {
    if (!playing) return;
    const timer = setInterval(() => {
      moment.current += FRAME_MS * speed;
      const to = countAt(entries, moment.current);
      if (to >= entries.length) setPlaying(false);
      show(to);
    }, FRAME_MS);
    return () => clearInterval(timer);
  }, [playing, speed, entries]);

  const play = () => {
    const from = count === entries.length ? 1 : count;
    moment.current = entries[from - 1]?.at ?? 0;
    show(from);
    setPlaying(!playing);
  };
  return (
    <section class={shown === 'all' ? 'replay' : 'replay active'} aria-label="Replay">
      <button type="button" class="button" onClick={playing ? () => setPlaying(false) : play}>
        {playing ? 'Pause' : 'Replay'}
      </button>
      <select
        aria-label="Speed"
        value={speed}
        onChange={(event) => setSpeed(Number(event.currentTarget.value))}
      >
        {SPEEDS.map((each) => (
          <option key={each} value={each}>
            {each === 1 ? 'real speed' : `${each} times as fast`}
          </option>
        ))}
      </select>
      {voiceAvailable ? (
        <label>
          <input
            type="checkbox"
            checked={aloud}
            onChange={(event) => setAloud(event.currentTarget.checked)}
          />
          Aloud
        </label>
      ) : (
        <span class="hint">This browser has no voice to read it aloud.</span>
      )}
      <output>
        {last && clock(last.at, true)}
        <small>
          {count} of {entries.length}
        </small>
      </output>
      <input
        type="range"
        min={1}
        max={entries.length}
        value={count}
        aria-label="Moment"
        aria-valuetext={last && `${clock(last.at, true)}, ${count} of ${entries.length} entries`}
        onInput={(event) => {
          setPlaying(false);
          show(Number(event.currentTarget.value));
        }}
      />
      {shown !== 'all' && (
        <button
          type="button"
          class="button"
          onClick={() => {
            setPlaying(false);
            onShow('all');
          }}
        >
          Show all
        </button>
      )}
    </section>
  );
}
