import type { Entry } from '../../src/model/entry.ts';
import { readingText } from '../../src/phrases/readings.ts';
import { shownBy } from '../../src/practice/meter.ts';
import { useHall } from './use-hall.ts';
import './practice.css';

/** The meter of the simulated receiver: a number and a needle. At either end it shows the end, as real ones do. */
export function DrawnMeter({ entries, now }: { entries: readonly Entry[]; now: number }) {
  const hall = useHall(entries);
  if (!hall) return null;
  const { meter } = hall.setup;
  const shown = shownBy(hall, now);
  const value = shown.kind === 'value' ? shown.value : shown.kind === 'saturated' ? meter.max : meter.min;
  const share = (value - meter.min) / (meter.max - meter.min);
  const number = readingText({ kind: 'value', value }, meter);
  return (
    <section class="drawn-meter" aria-label="Drawn meter">
      <svg viewBox="0 0 200 96" aria-hidden="true">
        <path class="drawn-scale" d="M20 88a80 80 0 0 1 160 0" />
        <path class="drawn-needle" transform={`rotate(${180 * share - 90} 100 88)`} d="M100 88V20" />
        <circle class="drawn-hub" cx="100" cy="88" r="7" />
      </svg>
      <p>
        <strong class="drawn-number">{number}</strong> <span>{meter.unit}</span>
      </p>
    </section>
  );
}
