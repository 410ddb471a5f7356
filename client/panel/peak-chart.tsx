import { useMemo } from 'preact/hooks';
import { alongAxis } from '../../src/charts/along.ts';
import { series } from '../../src/log/series.ts';
import { PEAK_UNKNOWN } from '../../src/phrases/charts.ts';
import { searchOf } from '../../src/visit/search.ts';
import { SmallTurnsChart } from '../charts/small-turns-chart.tsx';
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
  return (
    <TurnsChart
      series={all}
      along={alongAxis(all, searchOf(job), axis)}
      axis={axis}
      meter={meter}
      onPick={() => undefined}
    />
  );
}

/** The same, small; before the first turn that was read, its place is kept. */
export function SmallPeakChart({ room }: { room: Room }) {
  const { job, link } = room;
  // Drawn anew with the log, and not with every second of the clock.
  return useMemo(() => {
    const all = series(link.entries);
    const axis = all.sweeps.at(-1)?.axis;
    if (!job.setup || !axis) return <span class="peak-words">{PEAK_UNKNOWN}</span>;
    return <SmallTurnsChart series={all} search={searchOf(job)} axis={axis} meter={job.setup.meter} />;
  }, [link.entries.length, job.history]);
}
