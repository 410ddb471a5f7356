import { useState } from 'preact/hooks';
import { browserStorage } from '../browser/storage.ts';
import { LadderScreen } from '../ladder/ladder-screen.tsx';
import { savedSeat } from '../saved/saved-seats.ts';
import { InPageSeat, NoSeat, SeatPage } from '../seat/seat-page.tsx';
import type { InPage } from '../seat/use-room.ts';

/** An open microphone can move the voice to the earpiece, so here it closes after every utterance. */
const KEEP_MICROPHONE_MS = 0;

/** `inPage`: practice on one phone. */
export function EmitterPage({ inPage }: Record<never, string> & { inPage?: InPage }) {
  const [saved] = useState(() => savedSeat(browserStorage, 'emitter'));
  if (inPage)
    return (
      <InPageSeat
        seat="emitter"
        keepMicrophoneMs={KEEP_MICROPHONE_MS}
        screen={LadderScreen}
        inPage={inPage}
      />
    );
  return saved ? (
    <SeatPage saved={saved} keepMicrophoneMs={KEEP_MICROPHONE_MS} screen={LadderScreen} />
  ) : (
    <NoSeat seat="emitter" />
  );
}
