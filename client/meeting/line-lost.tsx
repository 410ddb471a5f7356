import { LINE_LOST } from '../../src/phrases/meeting.ts';
import { MEET_AGAIN } from '../../src/phrases/meeting-title.ts';
import { follow, linkTo } from '../browser/route.ts';

/** At the emitter, without a server: the panel's phone is not reached, and what to do. */
export const LineLost = () => (
  <section class="card" role="status">
    <p>{LINE_LOST}</p>
    <a class="button" href={linkTo('meet', {})} onClick={follow}>
      {MEET_AGAIN}
    </a>
  </section>
);
