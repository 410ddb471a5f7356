import { useEffect } from 'preact/hooks';

/** Keeps the screen on. A hidden page loses the lock, so it is requested again. */
export function useWakeLock(): void {
  useEffect(() => {
    let lock: WakeLockSentinel | undefined;
    const ask = () => {
      if (document.visibilityState !== 'visible' || !navigator.wakeLock) return;
      navigator.wakeLock.request('screen').then(
        (granted) => {
          lock = granted;
        },
        // A phone with a low battery refuses: its screen then goes dark as usual.
        () => undefined,
      );
    };
    ask();
    document.addEventListener('visibilitychange', ask);
    return () => {
      document.removeEventListener('visibilitychange', ask);
      void lock?.release();
    };
  }, []);
}
