import type { ComponentChildren } from 'preact';
import { hasNoNumbers } from '../../src/model/alone.ts';
import { searchFactText } from '../../src/phrases/facts.ts';
import { LAST_LOOK } from '../../src/phrases/looking.ts';
import { readingText } from '../../src/phrases/readings.ts';
import { countedOf } from '../../src/visit/state.ts';
import type { Room } from './use-room.ts';

const NONE = 'none yet';

/** The last valid reading, large, with its age. */
export function LastReading({ room, children }: { room: Room; children?: ComponentChildren }) {
  const { reading, setup } = room.job;
  if (hasNoNumbers(setup?.alone)) return <LastLook room={room} />;
  const text = reading && setup ? readingText(reading.reading, setup.meter) : undefined;
  return (
    <section class="reading" aria-label="Last reading">
      <span class="reading-label">
        Reading
        {reading && <small>{ageText(room.now - reading.at)}</small>}
      </span>
      <strong class={(text ?? NONE).length > 6 ? 'reading-value long' : 'reading-value'}>
        {text ?? NONE}
      </strong>
      {reading?.reading.kind === 'value' && <span class="reading-unit">{setup?.meter.unit}</span>}
      {children}
    </section>
  );
}

/** What the light was last said to do, where no number is read. */
function LastLook({ room: { job, now } }: { room: Room }) {
  const last = countedOf(job).findLast(({ type }) => type === 'trend' || type === 'reading');
  const text = last && job.setup ? searchFactText(last, job.setup.meter) : NONE;
  return (
    <section class="reading" aria-label={LAST_LOOK}>
      <span class="reading-label">
        {LAST_LOOK}
        {last && <small>{ageText(now - last.at)}</small>}
      </span>
      <strong class={text.length > 6 ? 'reading-value long' : 'reading-value'}>{text}</strong>
    </section>
  );
}

export function ageText(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  if (seconds < 5) return 'just now';
  if (seconds < 60) return `${seconds} s ago`;
  const minutes = Math.floor(seconds / 60);
  return minutes < 60 ? `${minutes} min ago` : `${Math.floor(minutes / 60)} h ago`;
}
