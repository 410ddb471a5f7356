import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Entry } from '../../src/model/entry.ts';
import type { Seq } from '../../src/model/ids.ts';
import type { MeterProfile } from '../../src/model/profile.ts';
import { readingText } from '../../src/phrases/readings.ts';
import type { Room } from '../seat/use-room.ts';
import { lazy } from '../ui/lazy.tsx';
import { Sheet } from '../ui/sheet.tsx';

const MOST = 3;

/**
 * The readings before the last one, newest first, beside a small chart of where the peak is thought to be. One tap makes
 * it large. On small screens, and in large text, there is room for the words only.
 */
export function LastReadings({ room }: { room: Room }) {
  const [open, setOpen] = useState(false);
  const { setup, reading } = room.job;
  if (!setup || !reading) return null;
  const before = readingsBefore(room.link.entries, reading.seq, setup.meter);
  return (
    <section class="last-readings">
      <button type="button" class="chart-button" onClick={() => setOpen(true)}>
        <strong>{before.length > 0 ? `Chart. Before: ${before.join(', ')}` : 'Chart'}</strong>
        <Small room={room} />
      </button>
      {open && (
        <Sheet title="Chart" onClose={() => setOpen(false)}>
          <PeakChart room={room} />
        </Sheet>
      )}
    </section>
  );
}

const load = () => import('./peak-chart.tsx');

/** Its code is fetched when it is first opened. */
const PeakChart = lazy(() => load().then((m) => m.PeakChart));

/** Until its code is there, and if it does not come, its place is empty: the large one says what is wrong. */
function Small({ room }: { room: Room }) {
  const [Chart, setChart] = useState<ComponentType<{ room: Room }>>();
  useEffect(() => {
    load().then(
      (m) => setChart(() => m.SmallPeakChart),
      () => undefined,
    );
  }, []);
  return <span class="small-chart">{Chart && <Chart room={room} />}</span>;
}

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
