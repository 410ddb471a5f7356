import { useContext, useEffect, useState } from 'preact/hooks';
import { isOnePhone, isPropped } from '../../src/model/alone.ts';
import { WATCH_THE_METER } from '../../src/phrases/camera.ts';
import { FOLLOW_THE_INDICATOR } from '../../src/phrases/follow-indicator.ts';
import { QuickWords, SayBox } from '../at-meter/say-box.tsx';
import { TalkButton } from '../audio/talk-button.tsx';
import { follow, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { HandOverButton, HandOverSheet } from '../hand-over/hand-over-sheet.tsx';
import { savedSeat } from '../saved/saved-seats.ts';
import { AnswerButton } from '../seat/answer-button.tsx';
import { DeskWork } from '../seat/desk-work.tsx';
import { InviteCard } from '../seat/invite.tsx';
import { LastReading } from '../seat/last-reading.tsx';
import { Menu } from '../seat/menu.tsx';
import { lastSaid, News, SHOWN_MS } from '../seat/news.tsx';
import { Photos, PhotosButton, useSendPhotos } from '../seat/photos-button.tsx';
import { Stage, stageAnswers } from '../seat/stage.tsx';
import { Strip } from '../seat/strip.tsx';
import type { Room } from '../seat/use-room.ts';
import { ToldBox } from '../seat/who-was-told.tsx';
import { lazy } from '../ui/lazy.tsx';
import { ShareLink } from '../ui/share-link.tsx';
import { Sheet } from '../ui/sheet.tsx';
import { AskCard } from './ask-card.tsx';
import { ChangeSheet } from './change-sheet.tsx';
import { Exchange } from './exchange.tsx';
import { Keep } from './keep.ts';
import { LastReadings } from './last-readings.tsx';
import type { Made } from './made.ts';
import './panel.css';

const AcceptSheet = lazy(() => import('../at-meter/accept-sheet.tsx').then((m) => m.AcceptSheet));

const KeyList = lazy(() => import('../keys/key-list.tsx').then((m) => m.KeyList));

const WatchMeter = lazy(() => import('../watch-meter/watch-meter.tsx').then((m) => m.WatchMeter));

const FollowIndicator = lazy(() =>
  import('../follow-indicator/follow-indicator.tsx').then((m) => m.FollowIndicator),
);

/** Only without a server. */
const MeetAgain = lazy(
  () => import('../meeting/meet-card.tsx').then((m) => m.MeetAgain),
  () => null,
);

/** Only in practice. */
const DrawnMeter = lazy(() => import('../practice/drawn-meter.tsx').then((m) => m.DrawnMeter));

type Open =
  | { sheet: 'menu' | 'accept' | 'hand-over' | 'photos' | 'watch' | 'keys' }
  | { sheet: 'change'; made: Made };

/** What the person at the panel sees and does. */
export function PanelScreen({ room }: { room: Room }) {
  const [open, setOpen] = useState<Open>();
  const close = () => setOpen(undefined);
  const { job, link, saved } = room;
  const keep = useContext(Keep);
  useSendPhotos(room);
  const { reading } = job;
  const speechReady = link.speech?.ready ?? false;
  const alone = link.phase === 'live' && link.presence?.emitter === 'empty';
  const news = lastSaid(link.entries);
  const refusedAccept = news?.code === 'not-proven' && room.now - news.at < SHOWN_MS;
  const correct = () =>
    reading &&
    setOpen({
      sheet: 'change',
      made: { seq: reading.seq, text: 'The last reading', type: 'reading', counts: true, reported: true },
    });
  // Alone, the phone that stays at the panel has nothing else to do.
  const joined = isPropped(job.setup?.alone) && !alone && job.seats.emitter !== undefined && !job.accepted;
  useEffect(() => {
    if (joined) setOpen({ sheet: 'watch' });
  }, [joined]);
  const follows = job.setup?.alone === 'sensing';
  const Propped = follows ? FollowIndicator : WatchMeter;
  if (open?.sheet === 'watch') return <Propped room={room} onClose={close} />;
  return (
    <main class="panel">
      <Strip room={room} onMenu={() => setOpen({ sheet: 'menu' })} />
      <div class="panel-now">
        {job.setup?.practice && <DrawnMeter entries={link.entries} now={room.now} />}
        <AskCard room={room} />
        {alone ? <InviteCard room={room} seat="emitter" as="h1" /> : <Stage room={room} compact />}
        <LastReading room={room}>
          {reading && (
            <button type="button" class="button" onClick={correct}>
              Correct
            </button>
          )}
        </LastReading>
        {/* Before the words: they can be longer than the screen. */}
        {refusedAccept && !alone && (
          <button type="button" class="button" onClick={() => setOpen({ sheet: 'accept' })}>
            See what is missing
          </button>
        )}
        <News room={room} />
        {saved.here && !isOnePhone(job.setup?.alone) && (
          <MeetAgain job={saved.job} isAway={link.presence?.emitter === 'away'} />
        )}
        {!alone && <ToldBox room={room} />}
        {!alone && <DeskWork room={room} />}
        {!alone && (
          <div class="panel-answers">
            {stageAnswers(room).map((answer) => (
              <AnswerButton
                key={answer.label}
                room={room}
                answer={answer}
                class={answer.main ? 'button main' : 'button'}
              />
            ))}
          </div>
        )}
      </div>
      <div class="panel-say">
        <SayBox room={room} alone={alone} />
        <TalkButton talk={room.talk} speechReady={speechReady} />
        {!alone && <QuickWords room={room} />}
      </div>
      {!alone && <LastReadings room={room} />}
      {/* Last, whatever the eye meets first: each of its lines is a stop of the Tab key, and there may be hundreds. */}
      <Exchange room={room} onPick={(made) => setOpen({ sheet: 'change', made })} />
      {open?.sheet === 'menu' && (
        <Menu room={room} onClose={close}>
          <button type="button" class="button main" onClick={() => setOpen({ sheet: 'accept' })}>
            Accept the alignment
          </button>
          {job.setup && !job.setup.practice && (
            <button type="button" class="button" onClick={() => setOpen({ sheet: 'watch' })}>
              {follows ? FOLLOW_THE_INDICATOR : WATCH_THE_METER}
            </button>
          )}
          <HandOverButton room={room} onOpen={() => setOpen({ sheet: 'hand-over' })} />
          <PhotosButton room={room} onOpen={() => setOpen({ sheet: 'photos' })} />
          {saved.site && (
            <a class="button" href={linkTo('board', { token: saved.site })} onClick={follow}>
              To the site's board
            </a>
          )}
          {!room.inPage && !saved.here && (
            <button type="button" class="button" onClick={() => setOpen({ sheet: 'keys' })}>
              Who has a key
            </button>
          )}
          {saved.watch && !job.setup?.practice && (
            <div>
              <h3>For a supervisor: watch, read only</h3>
              <ShareLink label="Link to watch" to={linkTo('review', { token: saved.watch })} />
            </div>
          )}
        </Menu>
      )}
      {open?.sheet === 'keys' && (
        <Sheet title="Who has a key" onClose={close}>
          <KeyList
            token={saved.token}
            onExchanged={(_, watch) => keep({ ...(savedSeat(browserStorage, 'panel') ?? saved), watch })}
          />
        </Sheet>
      )}
      {open?.sheet === 'accept' && <AcceptSheet room={room} onClose={close} />}
      {open?.sheet === 'hand-over' && <HandOverSheet room={room} onClose={close} />}
      {open?.sheet === 'photos' && <Photos room={room} onClose={close} />}
      {open?.sheet === 'change' && <ChangeSheet room={room} made={open.made} onClose={close} />}
    </main>
  );
}
