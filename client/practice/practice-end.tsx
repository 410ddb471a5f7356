import { useEffect, useMemo, useState } from 'preact/hooks';
import type { Entry } from '../../src/model/entry.ts';
import type { Practice, Run } from '../../src/model/practice.ts';
import {
  AGAIN,
  ANOTHER,
  CREW_ABOUT,
  CREW_NOT_DONE,
  endTitle,
  FATES,
  MISSES,
  NOTHING_MISSED,
  runRows,
  SIMULATED_CREW,
  TROUBLES,
  WORKING_IT_OUT,
  YOU,
} from '../../src/phrases/practice.ts';
import { gradeOf } from '../../src/practice/grade.ts';
import { crewAtWork } from '../../src/practice/play.ts';
import { Page } from '../ui/page.tsx';
import './practice.css';

interface EndProps {
  practice: Practice;
  entries: readonly Entry[];
  onAgain?: (() => void) | undefined;
  onAnother: () => void;
}

/** How it went, beside what a simulated crew made of the same pair. */
export function PracticeEnd({ practice, entries, onAgain, onAnother }: EndProps) {
  // What comes after the end is no part of it.
  const run = useMemo(() => gradeOf(entries), []);
  const crew = useCrew(practice);
  if (!run) return null;
  const rows = runRows(run);
  const crewRows = crew && runRows(crew);
  return (
    <Page class="practice-end">
      <section class="card">
        <h1>{endTitle(run)}</h1>
        {run.missed.length === 0 ? (
          run.accepted && <p>{NOTHING_MISSED}</p>
        ) : (
          <ul class="misses">
            {run.missed.map((miss) => (
              <li key={miss}>{MISSES[miss]}</li>
            ))}
          </ul>
        )}
        {run.planted.length > 0 && (
          <ul class="planted">
            {run.planted.map(({ trouble, fate }) => (
              <li key={trouble}>
                <strong>
                  {TROUBLES[trouble].name}: {FATES[fate]}.
                </strong>{' '}
                {fate !== 'met' && TROUBLES[trouble].hint}
              </li>
            ))}
          </ul>
        )}
        <table class="runs">
          <thead>
            <tr>
              <td />
              <th scope="col">{YOU}</th>
              <th scope="col">{SIMULATED_CREW}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, value], i) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{value}</td>
                <td>{crewRows?.[i]?.[1] ?? '…'}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p class="hint" role="status">
          {crew ? CREW_ABOUT : WORKING_IT_OUT} {crew && !crew.accepted && CREW_NOT_DONE}
        </p>
        <div class="choices">
          {onAgain && (
            <button type="button" class="button" onClick={onAgain}>
              {AGAIN}
            </button>
          )}
          <button type="button" class="button main" onClick={onAnother}>
            {ANOTHER}
          </button>
        </div>
      </section>
    </Page>
  );
}

/** It takes a slow phone some seconds: the person's own figures are on the screen before, and the page stays awake. */
function useCrew(practice: Practice): Run | undefined {
  const [crew, setCrew] = useState<Run>();
  useEffect(() => {
    const work = crewAtWork(practice);
    let timer = setTimeout(step);
    function step() {
      const { done, value } = work.next();
      if (done) setCrew(gradeOf(value));
      else timer = setTimeout(step);
    }
    return () => clearTimeout(timer);
  }, [practice]);
  return crew;
}
