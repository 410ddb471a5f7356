import { useState } from 'preact/hooks';
import type { Entry } from '../../src/model/entry.ts';
import type { Seq } from '../../src/model/ids.ts';
import type { MeterProfile } from '../../src/model/profile.ts';
import { readingText } from '../../src/phrases/readings.ts';
import type { Room } from '../seat/use-room.ts';
import { lazy } from '../ui/lazy.tsx';

const MOST = 4;

/** The readings before the last one, newest first, and one tap away the chart of where the peak is. */
export function LastReadings({ room }: { room: Room }) {
  const [open, setOpen] = useState(false);
  const { setup, reading } = room.job;
  if (!setup || !reading) return null;
  const before = readingsBefore(room.link.entries, reading.seq, setup.meter);
  return (
    <details class="more last-readings" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <h2>{before.length > 0 ? `Chart. Before: ${before.join(', ')}` : 'Chart'}</h2>
      </summary>
      {open && <PeakChart room={room} />}
    </details>
  );
}

/** Its code is fetched when it is first opened. */
const PeakChart = lazy(() => import('./peak-chart.tsx').then((m) => m.PeakChart));

/** What was taken back or corrected is no reading any more. */
function readingsBefore(entries: readonly Entry[], last: Seq, meter: MeterProfile): string[] {
  const gone = new Set<Seq>();
  const texts: string[] = [];
  for (const { seq, fact } of [...entries].reverse()) {
    if (fact.type === 'retract') gone.add(fact.target);
    if (fact.type === 'reading' && seq < last && !gone.has(seq)) texts.push(readingText(fact.reading, meter));
    if (texts.length === MOST) break;
  }
  return texts;
}
