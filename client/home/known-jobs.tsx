import { useState } from 'preact/hooks';
import { KNOWN_JOBS, standText } from '../../src/phrases/known-jobs.ts';
import { follow, linkTo } from '../browser/route.ts';
import { day } from '../browser/times.ts';
import type { KnownJob } from '../saved/known-jobs.ts';

interface Props {
  jobs: readonly KnownJob[];
  onForget(job: KnownJob): void;
}

/** The jobs that this phone was in: how each stood when last seen, the way to its record, and a way to forget it. */
export const KnownJobs = ({ jobs, onForget }: Props) => (
  <section class="card home-sites">
    <h2>{KNOWN_JOBS.heading}</h2>
    {jobs.map((known) => (
      <Job key={known.job} known={known} onForget={() => onForget(known)} />
    ))}
  </section>
);

function Job({ known, onForget }: { known: KnownJob; onForget: () => void }) {
  const { title, stand, seenAt, watch } = known;
  const [sure, setSure] = useState(false);
  return (
    <section class="known-job">
      <h3 translate={false}>{title}</h3>
      <p>{standText(stand, day(seenAt))}</p>
      {watch === undefined && <p class="hint">{KNOWN_JOBS.noRecord}</p>}
      <div class="choices">
        {watch !== undefined && (
          <a class="button" href={linkTo('review', { token: watch })} onClick={follow}>
            {KNOWN_JOBS.record}
          </a>
        )}
        <button
          type="button"
          class={sure ? 'button danger' : 'button'}
          aria-label={`${sure ? KNOWN_JOBS.sure : KNOWN_JOBS.forget}: ${title}`}
          onClick={sure ? onForget : () => setSure(true)}
        >
          {sure ? KNOWN_JOBS.sure : KNOWN_JOBS.forget}
        </button>
      </div>
      {sure && watch !== undefined && <p>{KNOWN_JOBS.kept}</p>}
    </section>
  );
}
