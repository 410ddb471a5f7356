import { KEPT_HERE, ON_PHONE_CONTINUE } from '../../src/phrases/brought.ts';
import { go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { saveSeat } from '../saved/saved-seats.ts';
import { BringCard } from './bring-card.tsx';
import type { JobHere } from './jobs-here.ts';

/** On the first page: the jobs whose record this phone keeps alone. */
export const HereList = ({ jobs, onBrought }: { jobs: readonly JobHere[]; onBrought: () => void }) => (
  <section class="card home-sites">
    <h2>{KEPT_HERE}</h2>
    {jobs.map((kept) => (
      <section key={kept.job} class="known-job">
        <h3>{kept.title}</h3>
        <BringCard kept={kept} onBrought={onBrought} />
        <button type="button" class="button" onClick={() => goOn(kept)}>
          {ON_PHONE_CONTINUE}
        </button>
      </section>
    ))}
  </section>
);

function goOn({ job, token, title }: JobHere): void {
  saveSeat(browserStorage, { seat: 'panel', job, token, title, here: true });
  go(linkTo('panel', {}));
}
