import { HERE_LOST_TITLE, RECORD_AT_SERVER_TITLE } from '../../src/phrases/brought.ts';
import { linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import type { Complaint, Pending } from '../link/link.ts';
import { loadNewest } from '../offline/registration.ts';
import { forgetSeat, keepsRecord, type SavedSeat } from '../saved/saved-seats.ts';
import { MessagePage } from '../ui/message-page.tsx';
import { forgetKept } from './kept-job.ts';
import { letterText } from './letter-text.ts';

/** The end of a link that cannot come back, with what was not sent. */
export function Ended({
  saved,
  why,
  unsent,
}: {
  saved: SavedSeat;
  why: Complaint;
  unsent: readonly Pending[];
}) {
  const { title, advice, button } = endingOf(saved, why.reason);
  const leave = () => {
    forgetSeat(browserStorage, saved.seat);
    location.assign(linkTo('home', {}));
  };
  const again = async () => {
    if (why.reason === 'from-the-future') await forgetKept(saved);
    await (why.reason === 'version' ? loadNewest() : location.reload());
  };
  return (
    <MessagePage title={title}>
      <p>{why.text}</p>
      <p>{advice}</p>
      {unsent.length > 0 && (
        <>
          <p class="failure">This was not sent. Tell it to your colleague, or write it down:</p>
          <ul translate={false}>
            {unsent.map(({ letter }) => (
              <li key={letter.id}>{letterText(letter)}</li>
            ))}
          </ul>
        </>
      )}
      <div class="choices">
        {button && (
          <button type="button" class="button main" onClick={again}>
            {button}
          </button>
        )}
        <button type="button" class="button" onClick={leave}>
          Leave this job
        </button>
      </div>
    </MessagePage>
  );
}

interface Ending {
  title: string;
  advice: string;
  button?: string;
}

const OTHER_ENDING: Ending = { title: 'The link has ended', advice: '', button: 'Connect again' };

/** Of a record that this phone kept alone. */
const LOST: Ending = { title: HERE_LOST_TITLE, advice: '' };

/** The phone at the panel kept it, and has brought it. */
const BROUGHT_ON: Ending = { title: RECORD_AT_SERVER_TITLE, advice: '' };

function endingOf(saved: SavedSeat, reason: Complaint['reason']): Ending {
  if (keepsRecord(saved)) return LOST;
  return (saved.here && reason === 'revoked' ? BROUGHT_ON : ENDINGS[reason]) ?? OTHER_ENDING;
}

const ENDINGS: Partial<Record<Complaint['reason'], Ending>> = {
  replaced: {
    title: 'Open in another window',
    advice: 'This seat is open in a newer window or tab of this phone.',
    button: 'Use it here',
  },
  'seat-lost': {
    title: 'Another phone has this seat now',
    advice: 'To come back, ask the other phone of the crew for a new code.',
  },
  revoked: {
    title: 'This key was taken away',
    advice: 'To come back, ask the panel or the desk for a new code.',
  },
  'bad-token': {
    title: 'This server does not know the job',
    advice: 'It may have been opened on another server. Open a new job, or ask for a new code.',
  },
  version: {
    title: 'This page is out of date',
    advice: 'Nothing that you sent is lost.',
    button: 'Load the page again',
  },
  'from-the-future': {
    title: 'The server has less than this phone has seen',
    advice:
      'Its data may be an older copy. Stop the work and tell the supervisor. To continue from what the server has, load the page again.',
    button: 'Continue with the server',
  },
};
