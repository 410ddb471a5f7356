import type { ComponentProps } from 'preact';
import { useState } from 'preact/hooks';
import { browserStorage } from '../browser/storage.ts';
import { savedSeat } from '../saved/saved-seats.ts';
import { Returning, ScreenToCome } from '../seat/returning.tsx';
import { InPageSeat, NoSeat, SeatPage } from '../seat/seat-page.tsx';
import type { InPage } from '../seat/use-room.ts';
import { lazy } from '../ui/lazy.tsx';

/** An open microphone can move the voice to the earpiece, so here it closes after every utterance. */
const KEEP_MICROPHONE_MS = 0;

/** Its code is fetched while the cautions are read. */
const LadderScreen = lazy(
  () => import('../ladder/ladder-screen.tsx').then((m) => m.LadderScreen),
  ScreenToCome,
);
const screenOf = () => LadderScreen;

/** The way to a room on the panel's phone is fetched by the few that have no server. */
const MetSeat = lazy(
  () =>
    import('../meeting/kept-line.ts').then(({ openLine }) => (props: ComponentProps<typeof SeatPage>) => (
      <SeatPage {...props} openHere={() => openLine} />
    )),
  ({ saved }) => <Returning seat={saved.seat} />,
);

/** `inPage`: practice on one phone. */
export function EmitterPage({ inPage }: Record<never, string> & { inPage?: InPage }) {
  const [saved] = useState(() => savedSeat(browserStorage, 'emitter'));
  if (inPage)
    return (
      <InPageSeat seat="emitter" keepMicrophoneMs={KEEP_MICROPHONE_MS} screenOf={screenOf} inPage={inPage} />
    );
  if (!saved) return <NoSeat seat="emitter" />;
  const Seat = saved.here ? MetSeat : SeatPage;
  return <Seat saved={saved} keepMicrophoneMs={KEEP_MICROPHONE_MS} screenOf={screenOf} />;
}
