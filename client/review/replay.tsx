import { useEffect, useState } from 'preact/hooks';
import type { Entry } from '../../src/log/entry.ts';
import { clock } from '../charts/times.ts';

const SPEEDS = [1, 5, 20, 60];
const FRAME_MS = 100;

/** How many entries are shown: all of them, the coming ones too, or the first `count`. */
export type Shown = 'all' | { count: number };

export const shownCount = (shown: Shown, entries: readonly Entry[]): number =>
  shown === 'all' ? entries.length : Math.min(shown.count, entries.length);

interface Props {
  entries: readonly Entry[];
  shown: Shown;
  onShow: (shown: Shown) => void;
}

/** Goes back to any moment of the job and plays on from there. */
export function Replay({ entries, shown, onShow }: Props) {
  const [playing, setPlaying] = useState(false);
  const [speed, setSpeed] = useState(20);
  const count = shownCount(shown, entries);
  const last = entries[count - 1];

  useEffect(() => {
    if (!playing) return;
    let now = entries[Math.max(0, count - 1)]?.at ?? 0;
    let at = count;
    const timer = setInterval(() => {
      now += FRAME_MS * speed;
      const before = at;
      while (at < entries.length && (entries[at]?.at ?? 0) <= now) at += 1;
      if (at === before) return;
      if (at < entries.length) return onShow({ count: at });
      setPlaying(false);
      onShow('all');
    }, FRAME_MS);
    return () => clearInterval(timer);
    // `count` is where playing starts; afterwards the timer moves it.
  }, [playing, speed, entries]);

  const play = () => {
    if (!playing && count === entries.length) onShow({ count: 1 });
    setPlaying(!playing);
  };
  return (
    <section class="replay" aria-label="Replay">
      <button type="button" class="button" onClick={play}>
        {playing ? 'Pause' : 'Play'}
      </button>
      <label>
        Speed
        <select value={speed} onChange={(event) => setSpeed(Number(event.currentTarget.value))}>
          {SPEEDS.map((each) => (
            <option key={each} value={each}>
              {each === 1 ? 'as it was' : `${each} times`}
            </option>
          ))}
        </select>
      </label>
      <input
        type="range"
        min={1}
        max={entries.length}
        value={count}
        aria-label="Moment"
        aria-valuetext={last && `${clock(last.at, true)}, ${count} of ${entries.length} entries`}
        onInput={(event) => {
          setPlaying(false);
          const to = Number(event.currentTarget.value);
          onShow(to >= entries.length ? 'all' : { count: to });
        }}
      />
      <output>
        {last && clock(last.at, true)}
        <small>
          {count} of {entries.length}
        </small>
      </output>
      <button type="button" class="button" disabled={shown === 'all'} onClick={() => onShow('all')}>
        Show all
      </button>
    </section>
  );
}
