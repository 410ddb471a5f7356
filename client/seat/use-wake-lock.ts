import { useEffect, useState } from 'preact/hooks';

/** Keeps the screen on; true while the phone refuses that. A hidden page loses the lock, so it is requested again. */
export function useWakeLock(): boolean {
  const [refused, setRefused] = useState(false);
  useEffect(() => {
    let lock: WakeLockSentinel | undefined;
    const ask = () => {
      if (document.visibilityState !== 'visible' || !navigator.wakeLock) return;
      if (lock && !lock.released) return;
      navigator.wakeLock.request('screen').then(
        (granted) => {
          lock = granted;
          setRefused(false);
        },
        // A phone with a low battery refuses: its screen then goes dark as usual.
        () => setRefused(true),
      );
    };
    ask();
    // What refused it may be over by the next touch: the battery is charged, or saves no more.
    const moments = ['visibilitychange', 'pointerup'];
    for (const moment of moments) document.addEventListener(moment, ask);
    return () => {
      for (const moment of moments) document.removeEventListener(moment, ask);
      void lock?.release();
    };
  }, []);
  return refused;
}
