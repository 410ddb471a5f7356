/**
 * The keys of a headset, where a browser gives them to a page (Media Session): only to one that plays something, so it plays
 * silence. It takes the sound from other players of the phone meanwhile.
 */

export interface HeadsetKeys {
  /** The one key that every headset has. */
  main(): void;
  /** "Next": two presses of it on most. */
  next(): void;
}

const MAIN = ['play', 'pause'] as const;

/** Gives back what ends it. Nothing happens where the browser has no such keys. */
export function listenToHeadset(keys: HeadsetKeys): () => void {
  const { mediaSession } = navigator;
  if (!mediaSession) return () => {};
  const silence = new Audio(URL.createObjectURL(new Blob([silentWave()], { type: 'audio/wav' })));
  silence.loop = true;
  const set = (action: MediaSessionAction, handler: (() => void) | null) => {
    try {
      mediaSession.setActionHandler(action, handler);
    } catch {
      // This browser does not know it.
    }
  };
  const play = () =>
    silence.play().then(
      () => {
        mediaSession.playbackState = 'playing';
      },
      // Not before the first touch: it is tried at each, until one allows it.
      () => undefined,
    );
  const touched = () => {
    if (silence.paused) void play();
  };
  for (const action of MAIN)
    set(action, () => {
      // A browser has stopped it by itself, or is about to.
      void play();
      keys.main();
    });
  set('nexttrack', () => keys.next());
  addEventListener('pointerup', touched);
  void play();
  return () => {
    removeEventListener('pointerup', touched);
    for (const action of [...MAIN, 'nexttrack'] as const) set(action, null);
    mediaSession.playbackState = 'none';
    silence.pause();
    URL.revokeObjectURL(silence.src);
  };
}

const RATE = 8_000;
/** Chromium gives keys only to what lasts five seconds. */
const SECONDS = 10;

/** RIFF, PCM, one channel, eight bits: 128 is silence there. */
function silentWave(): ArrayBuffer {
  const length = RATE * SECONDS;
  const wave = new DataView(new ArrayBuffer(44 + length));
  const text = (at: number, letters: string) =>
    [...letters].forEach((letter, i) => {
      wave.setUint8(at + i, letter.charCodeAt(0));
    });
  text(0, 'RIFF');
  wave.setUint32(4, 36 + length, true);
  text(8, 'WAVEfmt ');
  wave.setUint32(16, 16, true);
  wave.setUint16(20, 1, true);
  wave.setUint16(22, 1, true);
  wave.setUint32(24, RATE, true);
  wave.setUint32(28, RATE, true);
  wave.setUint16(32, 1, true);
  wave.setUint16(34, 8, true);
  text(36, 'data');
  wave.setUint32(40, length, true);
  new Uint8Array(wave.buffer, 44).fill(128);
  return wave.buffer;
}
