import { useMemo } from 'preact/hooks';
import { smallTurnsScene } from '../../src/charts/small-turns-scene.ts';
import { series } from '../../src/log/series.ts';
import { PEAK_UNKNOWN } from '../../src/phrases/charts.ts';
import { Drawing } from '../charts/scene.tsx';
import { TurnsChart } from '../charts/turns-chart.tsx';
import type { Room } from '../seat/use-room.ts';
import '../charts/charts.css';

/** The adjuster that was turned last: its readings, where its peak is thought to be, and how sure that is. */
export function PeakChart({ room }: { room: Room }) {
  const { job, link } = room;
  const all = series(link.entries);
  const axis = all.sweeps.at(-1)?.axis;
  if (!job.setup || !axis) return <p class="hint">The chart begins with the first turn that was read.</p>;
  const { meter } = job.setup;
  return <TurnsChart series={all} search={job.search} axis={axis} meter={meter} onPick={() => undefined} />;
}

/** CSS pixels; its place is kept in panel.css. */
const SMALL = { width: 160, height: 64 };

/** The same without figures, and its result in words. */
export function SmallPeakChart({ room }: { room: Room }) {
  const { job, link } = room;
  // Drawn anew with the log, and not with every second of the clock.
  const small = useMemo(() => {
    const all = series(link.entries);
    const axis = all.sweeps.at(-1)?.axis;
    return job.setup && axis && smallTurnsScene(all, job.search, axis, job.setup.meter, SMALL);
  }, [link.entries.length, job.search]);
  return (
    <>
      <span class="peak-words">{small ? small.words : PEAK_UNKNOWN}</span>
      {/* The words say it, and the large chart has names. */}
      <span class="chart" aria-hidden="true">
        {small && <Drawing scene={small.scene} />}
      </span>
    </>
  );
}
