import { series } from '../../src/log/series.ts';
import { searchOf } from '../../src/visit/search.ts';
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
    <TurnsChart series={all} search={searchOf(job)} axis={axis} meter={meter} onPick={() => undefined} />
  );
}
