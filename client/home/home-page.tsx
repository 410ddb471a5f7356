import { useEffect, useState } from 'preact/hooks';
import { ALONE_ON_HOME, ALONE_TITLE } from '../../src/phrases/alone-title.ts';
import { LEAVES_HERE } from '../../src/phrases/brought.ts';
import { NEW_VERSION_WAITS } from '../../src/phrases/offline.ts';
import { follow, linkTo } from '../browser/route.ts';
import { clock, day } from '../browser/times.ts';
import { LanguageChoice } from '../language/language-choice.tsx';
import { takeNewer, useKeptPages } from '../offline/registration.ts';
import type { SavedSeat } from '../saved/saved-seats.ts';
import { type SavedSite, troubledSitesFirst } from '../saved/saved-sites.ts';
import { lazy } from '../ui/lazy.tsx';
import { Page } from '../ui/page.tsx';
import { KnownJobs } from './known-jobs.tsx';
import { useAccountLink } from './use-account-link.ts';
import { useSaved } from './use-saved.ts';
import './home.css';

const TAKE_EVERY_MS = 2000;

/** Only where this phone keeps a record alone. */
const HereList = lazy(() => import('../here/here-list.tsx').then((m) => m.HereList));

/** The first page: go on with a job, take a seat in one, or work on a site. */
export function HomePage() {
  const { seats, sites, past, here, leave, forget, look } = useSaved();
  const { newer } = useKeptPages();
  const account = useAccountLink();
  useEffect(() => {
    if (!newer) return;
    // Not at once, while the page still loads, and again: a page of a job that was just closed lets go a little later.
    const again = setInterval(takeNewer, TAKE_EVERY_MS);
    return () => clearInterval(again);
  }, [newer]);
  return (
    <Page class="home">
      <h1 class="home-line">Two phones, one beam: line it up together.</h1>
      {newer && <p class="hint">{NEW_VERSION_WAITS}</p>}
      {seats.map((saved) => (
        <Resume key={saved.seat} saved={saved} onLeave={() => leave(saved)} />
      ))}
      {here.length > 0 && <HereList jobs={here} onBrought={look} />}
      <Way href={linkTo('panel', { fresh: 'new' })} title="At the panel" picture={<MeterPicture />}>
        You read the meter. This opens a job and gives the code for the other phone.
      </Way>
      <Way href={linkTo('join', {})} title="At the emitter" picture={<LadderPicture />}>
        You turn the screws. You need the code from the panel.
      </Way>
      <Way href={linkTo('alone', {})} title={ALONE_TITLE} picture={<AlonePicture />}>
        {ALONE_ON_HOME}
      </Way>
      <Way href={linkTo('practice', {})} title="Practise" picture={<PracticePicture />}>
        A drawn beam, with trouble if you like. Alone on this phone, or on two.
      </Way>
      <Sites sites={sites} />
      {past.length > 0 && <KnownJobs jobs={past} onForget={forget} />}
      {account && (
        <a class="button" href={linkTo('account', {})} onClick={follow}>
          {account === 'sign-in' ? 'Sign in' : 'Your account'}
        </a>
      )}
      <LanguageChoice />
      <p class="home-safety">
        Alarm outputs isolated? Someone told? Ladder footed? The maker's instructions, local code and licensed
        practice come before anything this tool says.
      </p>
    </Page>
  );
}

const SEAT_NAMES = { panel: 'At the panel', emitter: 'At the emitter' } as const;

function Resume({ saved, onLeave }: { saved: SavedSeat; onLeave: () => void }) {
  const [sure, setSure] = useState(false);
  return (
    <section class="card resume">
      {saved.title ? <h2 translate={false}>{saved.title}</h2> : <h2>A job on this phone</h2>}
      <p>{SEAT_NAMES[saved.seat]}</p>
      <p>The job continues where it stopped.</p>
      <div class="choices">
        <a class="button main" href={linkTo(saved.seat, {})} onClick={follow}>
          Continue
        </a>
        {sure ? (
          <button type="button" class="button danger" onClick={onLeave}>
            Yes, leave this job
          </button>
        ) : (
          <button type="button" class="button" onClick={() => setSure(true)}>
            Leave this job
          </button>
        )}
      </div>
      {sure && (
        <p>{saved.here ? LEAVES_HERE : 'The record stays. To come back, this phone needs a new code.'}</p>
      )}
    </section>
  );
}

/** For the desk: plan, watch and sign all the pairs of a building. */
function Sites({ sites }: { sites: readonly SavedSite[] }) {
  return (
    <section class="card home-sites">
      <h2>A whole site</h2>
      <p>Plan its pairs, see the status of each, and sign the records.</p>
      <div class="choices">
        {troubledSitesFirst(sites).map(({ token, site, troubled = 0, seenAt }) => (
          <a key={token} class="button main home-site" href={linkTo('board', { token })} onClick={follow}>
            <span translate={false}>{site}</span>
            {troubled > 0 && seenAt !== undefined && (
              <small>
                {troubled} {troubled === 1 ? 'pair' : 'pairs'} in trouble, as seen here {day(seenAt)},{' '}
                {clock(seenAt, false)}
              </small>
            )}
          </a>
        ))}
        <a class="button" href={linkTo('new-site', {})} onClick={follow}>
          Open a site
        </a>
      </div>
    </section>
  );
}

interface WayProps {
  href: string;
  title: string;
  picture: preact.ComponentChildren;
  children: string;
}

const Way = ({ href, title, picture, children }: WayProps) => (
  <a class="way" href={href} onClick={follow}>
    {picture}
    <span class="way-words">
      <strong>{title}</strong>
      <span>{children}</span>
    </span>
  </a>
);

const MeterPicture = () => (
  <svg class="way-picture" viewBox="0 0 96 96" aria-hidden="true">
    <rect class="line" x="10" y="16" width="76" height="64" rx="6" />
    <path class="line" d="M22 62a30 30 0 0 1 52 0" />
    <path class="light" d="M48 62 62 38" />
    <circle class="solid" cx="48" cy="62" r="5" />
  </svg>
);

const AlonePicture = () => (
  <svg class="way-picture" viewBox="0 0 96 96" aria-hidden="true">
    <path class="line" d="M8 90 24 14M32 90 48 14M13 68h21M18 44h21" />
    <path class="light" stroke-dasharray="2 9" d="M52 76h14" />
    <path class="line" d="M70 58h20v32H70z" />
    <circle class="solid" cx="36" cy="14" r="7" />
  </svg>
);

const PracticePicture = () => (
  <svg class="way-picture" viewBox="0 0 96 96" aria-hidden="true">
    <path class="line" stroke-dasharray="6 6" d="M10 36h20v24H10zM66 36h20v24H66z" />
    <path class="light" stroke-dasharray="2 9" d="M30 48h36" />
    <path class="line" d="M30 82h36" />
  </svg>
);

const LadderPicture = () => (
  <svg class="way-picture" viewBox="0 0 96 96" aria-hidden="true">
    <path class="line" d="M30 90 46 10M58 90 74 10" />
    <path class="line" d="M34 72h28M37 56h28M41 40h28M44 24h28" />
    <path class="light" d="M4 17h36" />
    <circle class="solid" cx="46" cy="17" r="7" />
  </svg>
);
