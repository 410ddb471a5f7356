import type { ComponentProps } from 'preact';
import { useState } from 'preact/hooks';
import { AloneWay, isOnePhone } from '../../src/model/alone.ts';
import type { JobSetup } from '../../src/model/setup.ts';
import { go, linkTo } from '../browser/route.ts';
import { browserStorage } from '../browser/storage.ts';
import { type SavedSeat, savedSeat, saveSeat } from '../saved/saved-seats.ts';
import { Returning, ScreenToCome } from '../seat/returning.tsx';
import { InPageSeat, SeatPage } from '../seat/seat-page.tsx';
import type { InPage } from '../seat/use-room.ts';
import { lazy } from '../ui/lazy.tsx';
import { Keep } from './keep.ts';

/** The panel says many readings: the microphone stays open for a time, so that no first word is cut. */
const KEEP_MICROPHONE_MS = 20_000;

/**
 * The seat at the panel; or the form that opens a job, if this phone has no seat or a new job is wanted. `inPage`: practice
 * on one phone.
 */
export function PanelPage({ fresh, alone, inPage }: { fresh: string; alone: string; inPage?: InPage }) {
  const [saved, setSaved] = useState(() => savedSeat(browserStorage, 'panel'));
  if (inPage)
    return (
      <InPageSeat seat="panel" keepMicrophoneMs={KEEP_MICROPHONE_MS} screenOf={screenOf} inPage={inPage} />
    );
  if (!saved || fresh === 'new') {
    const opened = () => {
      setSaved(savedSeat(browserStorage, 'panel'));
      go(linkTo('panel', {}));
    };
    return <StartPage alone={AloneWay.safeParse(alone).data} onOpened={opened} />;
  }
  const keep = (changed: SavedSeat) => {
    saveSeat(browserStorage, changed);
    setSaved(changed);
  };
  const Seat = saved.here ? HereSeat : SeatPage;
  return (
    <Keep.Provider value={keep}>
      <Seat key={saved.token} saved={saved} keepMicrophoneMs={KEEP_MICROPHONE_MS} screenOf={screenOf} />
    </Keep.Provider>
  );
}

/** The code of these is fetched while the cautions are read. */
const PanelScreen = lazy(() => import('./panel-screen.tsx').then((m) => m.PanelScreen), ScreenToCome);
/** The one phone of a person alone is carried up the ladder. */
const LadderScreen = lazy(
  () => import('../ladder/ladder-screen.tsx').then((m) => m.LadderScreen),
  ScreenToCome,
);
const screenOf = (setup: JobSetup | undefined) => (isOnePhone(setup?.alone) ? LadderScreen : PanelScreen);

/** The way to a room on this phone is fetched by the few that keep one. */
const HereSeat = lazy(
  () =>
    import('../here/socket-here.ts').then(({ openHere }) => (props: ComponentProps<typeof SeatPage>) => (
      <SeatPage {...props} openHere={openHere} />
    )),
  ({ saved }) => <Returning seat={saved.seat} />,
);

const StartPage = lazy(() => import('../start/start-page.tsx').then((m) => m.StartPage));
