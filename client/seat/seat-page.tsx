import { useEffect, useState } from 'preact/hooks';
import { isPropped } from '../../src/model/alone.ts';
import type { Seat } from '../../src/model/facts.ts';
import { PRACTICE_JOB } from '../../src/model/practice.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { CAUTIONS_READ } from '../../src/phrases/cautions.ts';
import { setupWarnings } from '../../src/phrases/plan-warnings.ts';
import { PRACTICE_BAND } from '../../src/phrases/practice-band.ts';
import { handsFreeChoice, keepHandsFree } from '../audio/hands-free-choice.ts';
import { go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { holdVersion } from '../offline/registration.ts';
import { cautionsKey, type SavedSeat } from '../saved/saved-seats.ts';
import { type Lazy, lazy } from '../ui/lazy.tsx';
import { MessagePage } from '../ui/message-page.tsx';
import { CautionsPage } from './cautions.tsx';
import { type KeptJob, useKeptJob } from './kept-job.ts';
import { Returning } from './returning.tsx';
import { useMountingAsked } from './use-mounting-asked.ts';
import { type InPage, type OpenHere, type Room, useRoom } from './use-room.ts';
import './seat.css';
import '../ui/practice-band.css';

interface SeatPageProps {
  saved: SavedSeat;
  keepMicrophoneMs: number;
  /** The screen of this seat, as the job was set up. */
  screenOf: (setup: JobSetup | undefined) => Lazy<{ room: Room }>;
  openHere?: OpenHere;
}

/** What both seats share: what was kept of the job, the cautions, and the end of a link that cannot come back. */
export function SeatPage(props: SeatPageProps) {
  const kept = useKeptJob(props.saved);
  useEffect(holdVersion, []);
  return kept ? <KnownSeat {...props} kept={kept} /> : <Returning seat={props.saved.seat} />;
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

function KnownSeat({ saved, kept, keepMicrophoneMs, inPage, screenOf, openHere }: KnownSeatProps) {
  const linked = useRoom(saved, kept, keepMicrophoneMs, inPage, openHere);
  const key = cautionsKey(saved);
  const [agreed, setAgreed] = useState(() => !inPage && browserStorage.read(key) === true);
  const [chosen, setChosen] = useState(() => handsFreeChoice(browserStorage));
  const [ended, setEnded] = useState(false);
  const { setup, accepted } = linked.job;
  const practice = setup?.practice;
  const Screen = screenOf(setup);
  const hang = useMountingAsked(linked);
  // Not before the cautions can be read: over a slow line they come first.
  const isRead = agreed || setup !== undefined;
  useEffect(() => {
    if (!isRead) return;
    if (hang.asks) MountingPage.ahead();
    Screen.ahead();
    Ended.ahead();
    linked.talk.ahead();
  }, [isRead, Screen]);
  const room: Room = { ...linked, endPractice: practice && (() => setEnded(true)) };
  const agree = () => {
    if (!inPage) browserStorage.write(key, true);
    room.post({ t: 'remark', text: CAUTIONS_READ });
    setAgreed(true);
  };
  // Nobody is there to be heard.
  const standsAlone = saved.seat === 'panel' && isPropped(setup?.alone);
  // Offered before the job is known: a button that comes later would move the cautions under the reader's eyes.
  const mayHear = !inPage && !standsAlone && globalThis.isSecureContext === true;
  const hears = setup !== undefined && mayHear;
  const chooseHandsFree = (on: boolean) => {
    keepHandsFree(browserStorage, on);
    setChosen(on);
  };
  const handsFree = chosen ?? setup?.alone !== undefined;
  useEffect(() => {
    if (agreed && hears && handsFree) linked.talk.setHandsFree(true);
  }, [agreed, hears]);
  // Nobody else hears it.
  useEffect(() => {
    if (agreed && hears && saved.here) linked.talk.setOnDevice(true);
  }, [agreed, hears]);
  if (room.link.ended) return <Ended saved={saved} why={room.link.ended} unsent={room.link.outbox} />;
  const screen = !agreed ? (
    <CautionsPage
      seat={saved.seat}
      setup={setup}
      warnings={setup && setupWarnings(setup)}
      handsFree={mayHear ? handsFree : undefined}
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

const MountingPage = lazy(() => import('./mounting-page.tsx').then((m) => m.MountingPage));

/** Most never see it. It is fetched with the screen, for a server that ends the link may no longer have it. */
const Ended = lazy(() => import('./ended.tsx').then((m) => m.Ended));

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
