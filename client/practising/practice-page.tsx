import { useMemo, useState } from 'preact/hooks';
import type { Seat } from '../../src/model/facts.ts';
import { type Practice, Trouble } from '../../src/model/practice.ts';
import {
  AT_SEAT,
  couldNotOpenText,
  FIRST_TIME,
  leavesJobText,
  PRACTICE_ABOUT,
  PRACTICE_TITLE,
  START_AT,
  START_TWO_PHONES,
  SURPRISE_ME,
  TROUBLES,
  TWO_PHONES,
  TWO_PHONES_ABOUT,
  WHICH_TROUBLE,
  WITH_TROUBLE,
} from '../../src/phrases/practice.ts';
import { practiceSetup } from '../../src/practice/pair.ts';
import { openJob } from '../browser/job-requests.ts';
import { ApiError, deviceName } from '../browser/requests.ts';
import { go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { EmitterPage } from '../emitter/emitter-page.tsx';
import { PanelPage } from '../panel/panel-page.tsx';
import { inPageRoom } from '../practice/in-page-room.ts';
import { savedSeat, saveSeat } from '../saved/saved-seats.ts';
import { Failure } from '../ui/failure.tsx';
import { Page } from '../ui/page.tsx';
import './practising.css';

/** Practice: what and where is chosen here; on one phone it then runs in this page. */
export function PracticePage() {
  const [playing, setPlaying] = useState<Playing>();
  if (!playing) return <Choice onStart={setPlaying} />;
  const again = () => setPlaying({ ...playing, round: playing.round + 1 });
  return (
    <OnOnePhone key={playing.round} {...playing} onAgain={again} onLeave={() => setPlaying(undefined)} />
  );
}

interface Playing {
  practice: Practice;
  seat: Seat;
  /** Each round is a new job. */
  round: number;
}

function OnOnePhone({
  practice,
  seat,
  onAgain,
  onLeave,
}: Playing & { onAgain: () => void; onLeave: () => void }) {
  const inPage = useMemo(
    () => ({ open: inPageRoom(practice, seat), again: onAgain, leave: onLeave }),
    [practice, seat],
  );
  return seat === 'panel' ? <PanelPage fresh="" alone="" inPage={inPage} /> : <EmitterPage inPage={inPage} />;
}

const SEATS: readonly Seat[] = ['panel', 'emitter'];

/** Another pair each time; the number itself means nothing. */
const newSeed = (): number => Math.floor(Math.random() * 0x7fffffff);

/** Any one trouble. */
const surprise = (of: readonly Trouble[]): Trouble[] => {
  const one = of[newSeed() % of.length];
  return one ? [one] : [];
};

function Choice({ onStart }: { onStart: (playing: Playing) => void }) {
  const [chosen, setChosen] = useState<readonly Trouble[]>([]);
  const [isSurprise, setSurprise] = useState(true);
  const toggle = (trouble: Trouble) => {
    setSurprise(false);
    setChosen(chosen.includes(trouble) ? chosen.filter((each) => each !== trouble) : [...chosen, trouble]);
  };
  const planted = (): Practice => ({
    seed: newSeed(),
    troubles: isSurprise ? surprise(Trouble.options) : [...chosen],
  });
  return (
    <Page class="practice">
      <section class="card">
        <h1>{PRACTICE_TITLE}</h1>
        <p>{PRACTICE_ABOUT}</p>
        <h2>{FIRST_TIME}</h2>
        <SeatButtons
          names={AT_SEAT}
          onPick={(seat) =>
            onStart({ practice: { seed: newSeed(), troubles: [], guided: true }, seat, round: 0 })
          }
        />
      </section>
      <section class="card">
        <h2>{WITH_TROUBLE}</h2>
        <fieldset class="troubles">
          <legend>{WHICH_TROUBLE}</legend>
          <button
            type="button"
            class="button"
            aria-pressed={isSurprise}
            onClick={() => {
              setSurprise(true);
              setChosen([]);
            }}
          >
            {SURPRISE_ME}
          </button>
          {Trouble.options.map((trouble) => (
            <button
              key={trouble}
              type="button"
              class="button"
              aria-pressed={chosen.includes(trouble)}
              onClick={() => toggle(trouble)}
            >
              {TROUBLES[trouble].name}
            </button>
          ))}
        </fieldset>
        <SeatButtons names={START_AT} onPick={(seat) => onStart({ practice: planted(), seat, round: 0 })} />
      </section>
      <TwoPhones planted={planted} />
    </Page>
  );
}

interface SeatButtonsProps {
  names: Readonly<Record<Seat, string>>;
  onPick: (seat: Seat) => void;
}

const SeatButtons = ({ names, onPick }: SeatButtonsProps) => (
  <div class="choices">
    {SEATS.map((seat) => (
      <button key={seat} type="button" class="button main" onClick={() => onPick(seat)}>
        {names[seat]}
      </button>
    ))}
  </div>
);

function TwoPhones({ planted }: { planted: () => Practice }) {
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<string>();
  const [left] = useState(() => savedSeat(browserStorage, 'panel'));
  const start = async () => {
    setBusy(true);
    setFailure(undefined);
    try {
      const setup = practiceSetup(planted());
      const { job, token } = await openJob({ setup, device: deviceName() });
      saveSeat(browserStorage, { seat: 'panel', job, token, title: `${setup.site}, ${setup.pair}` });
      go(linkTo('panel', {}));
    } catch (error) {
      setBusy(false);
      setFailure(error instanceof ApiError ? error.message : couldNotOpenText(error));
    }
  };
  return (
    <section class="card">
      <h2>{TWO_PHONES}</h2>
      <p>
        {TWO_PHONES_ABOUT} {left && leavesJobText(left.title)}
      </p>
      <Failure text={failure} />
      <button type="button" class="button main" disabled={busy} onClick={start}>
        {START_TWO_PHONES}
      </button>
    </section>
  );
}
