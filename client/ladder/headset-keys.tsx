import { useEffect, useRef } from 'preact/hooks';
import { type HeadsetKeys as Keys, listenToHeadset } from '../audio/headset.ts';
import type { Room } from '../seat/use-room.ts';

/** On the ladder: the headset's key lets its person speak, also while the phone does; "next" says the order again. Never an answer. */
export function HeadsetKeys({ room, again }: { room: Room; again: string }) {
  const keys = useRef<Keys>(undefined);
  keys.current = {
    main() {
      const { talk, speaker } = room;
      speaker.hush();
      if (talk.handsFree !== 'off') return;
      // As a tap of the button: once to speak, once more to send.
      talk.feed({ on: 'press' });
      talk.feed({ on: 'release' });
    },
    next: () => room.say(again, 'button'),
  };
  useEffect(
    () => listenToHeadset({ main: () => keys.current?.main(), next: () => keys.current?.next() }),
    [],
  );
  return null;
}
