const FROZEN_MS = 1_000;

/** Where the page's own sounds go. */
export interface SoundOut {
  /** Must be called once during a tap. */
  unlock(): void;
  /** Undefined before the first tap. */
  context(): AudioContext | undefined;
}

/** After a call or a locked screen the audio clock may stop, and still say that it runs. Then it is made again. */
export function soundOut(): SoundOut {
  let context: AudioContext | undefined;
  let seen = { audio: -1, wall: 0 };
  return {
    unlock() {
      context ??= new AudioContext();
      void context.resume();
    },
    context() {
      if (!context) return undefined;
      const frozen = context.currentTime === seen.audio && performance.now() - seen.wall > FROZEN_MS;
      if (frozen) {
        void context.close();
        context = new AudioContext();
      }
      void context.resume();
      seen = { audio: context.currentTime, wall: performance.now() };
      return context;
    },
  };
}
