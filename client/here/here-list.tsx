import { KEPT_HERE } from '../../src/phrases/brought.ts';
import { KEPT_HERE_RISK, ON_PHONE_CONTINUE } from '../../src/phrases/kept-here.ts';
import { go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import type { JobHere } from '../saved/jobs-here.ts';
import { saveSeat } from '../saved/saved-seats.ts';
import { BringButton } from './bring-button.tsx';

/** On the first page: the jobs whose record this phone keeps alone. */
export const HereList = ({ jobs, onBrought }: { jobs: readonly JobHere[]; onBrought: () => void }) => (
  <section class="card home-sites">
    <h2>{KEPT_HERE}</h2>
    <p>{KEPT_HERE_RISK}</p>
    {jobs.map((kept) => (
      <section key={kept.job} class="known-job">
        <h3>{kept.title}</h3>
        <div class="kept-here">
          <BringButton kept={kept} onBrought={onBrought} />
          <button type="button" class="button" onClick={() => goOn(kept)}>
            {ON_PHONE_CONTINUE}
          </button>
        </div>
      </section>
    ))}
  </section>
);

function goOn({ job, token, title }: JobHere): void {
  saveSeat(browserStorage, { seat: 'panel', job, token, title, here: true });
  go(linkTo('panel', {}));
}
