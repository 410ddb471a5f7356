import type { Entry } from '../../src/model/entry.ts';
import type { Seat } from '../../src/model/facts.ts';
import { ALL_LEARNT, lessonText } from '../../src/phrases/practice.ts';
import { END_PRACTICE } from '../../src/phrases/practice-band.ts';
import { lessonNow, waitsForOrder } from '../../src/practice/lessons.ts';
import './practice.css';

/** The next thing to learn, until all is done. */
export function LessonStrip({
  seat,
  entries,
  onEnd,
}: {
  seat: Seat;
  entries: readonly Entry[];
  onEnd: () => void;
}) {
  const next = lessonNow(seat, entries);
  return (
    <section class="lesson" aria-label="What to do" aria-live="polite">
      <p>{next === undefined ? ALL_LEARNT : lessonText(seat, next, waitsForOrder(seat, next, entries))}</p>
      {next === undefined && (
        <button type="button" class="button" onClick={onEnd}>
          {END_PRACTICE}
        </button>
      )}
    </section>
  );
}
