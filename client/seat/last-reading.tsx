import type { ComponentChildren } from 'preact';
import { readingText } from '../../src/phrases/readings.ts';
import type { Room } from './use-room.ts';

const NONE = 'none yet';

/** The last valid reading, large, with its age. */
export function LastReading({ room, children }: { room: Room; children?: ComponentChildren }) {
  const { reading, setup } = room.job;
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

export function ageText(ms: number): string {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  if (seconds < 5) return 'just now';
  if (seconds < 60) return `${seconds} s ago`;
  const minutes = Math.floor(seconds / 60);
  return minutes < 60 ? `${minutes} min ago` : `${Math.floor(minutes / 60)} h ago`;
}
