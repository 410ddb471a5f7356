import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Seat } from '../../src/model/facts.ts';
import { PRACTICE_JOB } from '../../src/model/practice.ts';
import { CAUTIONS_READ } from '../../src/phrases/cautions.ts';
import { setupWarnings } from '../../src/phrases/plan-warnings.ts';
import { PRACTICE_BAND } from '../../src/phrases/practice-band.ts';
import { handsFreeChoice, keepHandsFree } from '../audio/hands-free-choice.ts';
import { go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import type { Complaint, Pending } from '../link/link.ts';
import { holdVersion, loadNewest } from '../offline/registration.ts';
import { forgetSeat, type SavedSeat } from '../saved/saved-seats.ts';
import { lazy } from '../ui/lazy.tsx';
import { MessagePage } from '../ui/message-page.tsx';
import { CautionsPage } from './cautions.tsx';
import { forgetKept, type KeptJob, useKeptJob } from './kept-job.ts';
import { letterText } from './letter-text.ts';
import { MountingPage, useMountingAsked } from './mounting-page.tsx';
import { type InPage, type Room, useRoom } from './use-room.ts';
import './seat.css';
import '../ui/practice-band.css';

interface SeatPageProps {
  saved: SavedSeat;
  keepMicrophoneMs: number;
  screen: ComponentType<{ room: Room }>;
}

/** What both seats share: what was kept of the job, the cautions, and the end of a link that cannot come back. */
export function SeatPage(props: SeatPageProps) {
  const kept = useKeptJob(props.saved);
  useEffect(holdVersion, []);
  return kept ? <KnownSeat {...props} kept={kept} /> : <p class="loading">Loading</p>;
}

/** A seat whose room is in this page: there is nothing to know of it before. */
export function InPageSeat({
  seat,
  ...props
}: Omit<SeatPageProps, 'saved'> & { seat: Seat; inPage: InPage }) {
  const [saved] = useState((): SavedSeat => ({ seat, job: PRACTICE_JOB, token: '' }));
  useEffect(holdVersion, []);
  return <KnownSeat {...props} saved={saved} kept={NOTHING_KNOWN} />;
}

const NOTHING_KNOWN: KeptJob = { entries: [], lastLinked: undefined };

type KnownSeatProps = SeatPageProps & { kept: KeptJob; inPage?: InPage };

function KnownSeat({ saved, kept, keepMicrophoneMs, inPage, screen: Screen }: KnownSeatProps) {
  const linked = useRoom(saved, kept, keepMicrophoneMs, inPage);
  const key = `cautions.${saved.job}.${saved.seat}`;
  const [agreed, setAgreed] = useState(() => !inPage && browserStorage.read(key) === true);
  const [chosen, setChosen] = useState(() => handsFreeChoice(browserStorage));
  const [ended, setEnded] = useState(false);
  const { setup, accepted } = linked.job;
  const practice = setup?.practice;
  const room: Room = { ...linked, endPractice: practice && (() => setEnded(true)) };
  const agree = () => {
    if (!inPage) browserStorage.write(key, true);
    room.post({ t: 'remark', text: CAUTIONS_READ });
    setAgreed(true);
  };
  // A propped phone reads the meter, and nobody is there to be heard.
  const isPropped = saved.seat === 'panel' && setup?.alone === 'watching';
  const hears = setup !== undefined && !inPage && !isPropped && globalThis.isSecureContext === true;
  const chooseHandsFree = (on: boolean) => {
    keepHandsFree(browserStorage, on);
    setChosen(on);
  };
  const handsFree = chosen ?? setup?.alone !== undefined;
  useEffect(() => {
    if (agreed && hears && handsFree) linked.talk.setHandsFree(true);
  }, [agreed, hears]);
  const hang = useMountingAsked(room);
  if (room.link.ended) return <Ended saved={saved} why={room.link.ended} unsent={room.link.outbox} />;
  const screen = !agreed ? (
    <CautionsPage
      seat={saved.seat}
      setup={setup}
      warnings={setup && setupWarnings(setup)}
      handsFree={hears ? handsFree : undefined}
      onHandsFree={chooseHandsFree}
      onAgree={agree}
    />
  ) : hang.asks ? (
    <MountingPage onAnswer={hang.answer} />
  ) : (
    <Screen room={room} />
  );
  if (!practice) return screen;
  const { entries } = room.link;
  return (
    <div class="practising">
      <aside class="practice-band">{PRACTICE_BAND}</aside>
      {ended || accepted ? (
        <PracticeEnd
          practice={practice}
          entries={entries}
          onAgain={inPage?.again}
          onAnother={inPage?.leave ?? toPractice}
        />
      ) : (
        <>
          {practice.guided && agreed && (
            <LessonStrip seat={saved.seat} entries={entries} onEnd={() => setEnded(true)} />
          )}
          {screen}
        </>
      )}
    </div>
  );
}

const toPractice = (): void => go(linkTo('practice', {}));

/** Their code is fetched only in practice. */
const PracticeEnd = lazy(() => import('../practice/practice-end.tsx').then((m) => m.PracticeEnd));
const LessonStrip = lazy(() => import('../practice/lesson-strip.tsx').then((m) => m.LessonStrip));

export const NoSeat = ({ seat }: { seat: Seat }) => (
  <MessagePage title={`This phone is not at the ${seat}`}>
    <p>Get a join code from the other phone of the crew, or scan its square code.</p>
    <p>
      <a class="button main" href={linkTo('join', {})}>
        Enter a code
      </a>
    </p>
  </MessagePage>
);

function Ended({ saved, why, unsent }: { saved: SavedSeat; why: Complaint; unsent: readonly Pending[] }) {
  const { title, advice, button } = ENDINGS[why.reason] ?? OTHER_ENDING;
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
